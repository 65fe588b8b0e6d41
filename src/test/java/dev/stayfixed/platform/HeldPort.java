package dev.stayfixed.platform;

import java.io.IOException;
import java.net.BindException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.time.Duration;

/** A port of this machine at which nobody listens, kept from everybody else until its server comes back. */
public final class HeldPort implements AutoCloseable {

    private static final Duration LET_GO = Duration.ofMinutes(1);

    private final Socket socket;

    /** As soon as the server has let go of it: a thread that was accepting keeps the port until it has woken up. */
    public HeldPort(int port) throws IOException {
        socket = bound(port, System.nanoTime() + LET_GO.toNanos());
    }

    private static Socket bound(int port, long end) throws IOException {
        while (true) {
            Socket held = new Socket();
            try {
                held.setReuseAddress(true);
                held.bind(new InetSocketAddress(InetAddress.getLoopbackAddress(), port));
                return held;
            } catch (BindException e) {
                held.close();
                if (System.nanoTime() - end > 0) {
                    throw e;
                }
                Thread.onSpinWait();
            }
        }
    }

    @Override
    public void close() throws IOException {
        socket.close();
    }
}
