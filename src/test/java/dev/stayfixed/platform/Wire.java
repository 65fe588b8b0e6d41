package dev.stayfixed.platform;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/** A wire to a server on this machine that a test can cut, and that can fall silent: connected, and not a byte comes through. */
public final class Wire implements AutoCloseable {

    private enum State {
        WHOLE,
        SILENT,
        CUT,
        CLOSED
    }

    private final ServerSocket entrance;
    private final int server;
    private final Set<Socket> sockets = ConcurrentHashMap.newKeySet();
    private State state = State.WHOLE;

    /** @param server the port at the other end */
    public Wire(int server) throws IOException {
        this.entrance = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
        this.server = server;
        start(this::accept);
    }

    public int port() {
        return entrance.getLocalPort();
    }

    /** Ends all connections; new ones end at once. */
    public void cut() throws IOException {
        become(State.CUT);
        drop();
    }

    /** Keeps all bytes back until the wire is mended. */
    public void silence() {
        become(State.SILENT);
    }

    public void mend() {
        become(State.WHOLE);
    }

    @Override
    public void close() throws IOException {
        become(State.CLOSED);
        entrance.close();
        drop();
    }

    private synchronized void become(State next) {
        state = next;
        notifyAll();
    }

    private synchronized State audible() {
        while (state == State.SILENT) {
            try {
                wait();
            } catch (InterruptedException e) {
                throw new IllegalStateException(e);
            }
        }
        return state;
    }

    private void drop() throws IOException {
        for (Socket socket : sockets) {
            socket.close();
        }
        sockets.clear();
    }

    private void accept() {
        while (!entrance.isClosed()) {
            try {
                Socket near = entrance.accept();
                sockets.add(near);
                start(() -> connect(near));
            } catch (IOException closed) {
                return;
            }
        }
    }

    private void connect(Socket near) {
        try (near) {
            if (audible() == State.WHOLE) {
                try (Socket far = new Socket(InetAddress.getLoopbackAddress(), server)) {
                    sockets.add(far);
                    start(() -> copy(far, near));
                    copy(near, far);
                }
            }
        } catch (IOException ended) {
            sockets.remove(near);
        }
    }

    private void copy(Socket from, Socket to) {
        try (from;
                to) {
            InputStream in = from.getInputStream();
            OutputStream out = to.getOutputStream();
            byte[] buffer = new byte[1 << 14];
            for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
                if (audible() != State.WHOLE) {
                    return;
                }
                out.write(buffer, 0, n);
            }
        } catch (IOException ended) {
            sockets.remove(from);
        }
    }

    private static void start(Runnable work) {
        Thread thread = new Thread(work, "wire");
        thread.setDaemon(true);
        thread.start();
    }
}
