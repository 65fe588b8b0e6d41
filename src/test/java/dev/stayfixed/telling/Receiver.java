package dev.stayfixed.telling;

import static java.util.Objects.requireNonNull;

import dev.stayfixed.platform.HeldPort;
import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** A receiver of webhooks on a real socket, which answers as a test wants, honestly or not. */
public final class Receiver implements AutoCloseable {

    /** What came in. */
    public record Request(String path, Map<String, String> headers, String body) {
        public JsonNode json() {
            return JsonMapper.shared().readTree(body);
        }

        public String header(String name) {
            return headers.getOrDefault(name, "");
        }

        public String id() {
            return header("webhook-id");
        }
    }

    /** How it answers. */
    public interface Manner {
        void answer(OutputStream out) throws IOException;
    }

    private final int port;
    private final List<Request> requests = new CopyOnWriteArrayList<>();
    private final CountDownLatch closed = new CountDownLatch(1);
    private volatile Manner manner = status(200);
    private ServerSocket server;
    private @Nullable HeldPort held;

    public Receiver() throws IOException {
        server = listen(0);
        port = server.getLocalPort();
    }

    private ServerSocket listen(int wanted) throws IOException {
        ServerSocket listening = new ServerSocket(wanted, 50, InetAddress.getLoopbackAddress());
        Thread thread = new Thread(() -> accept(listening), "receiver");
        thread.setDaemon(true);
        thread.start();
        return listening;
    }

    /** From now on whoever connects is refused. */
    public void stop() throws IOException {
        server.close();
        held = new HeldPort(port);
    }

    /** Listens again where it did before. */
    public Receiver startAgain() throws IOException {
        requireNonNull(held).close();
        server = listen(port);
        return this;
    }

    public static Manner status(int status, String... headers) {
        String lines = headers.length == 0 ? "" : String.join("\r\n", headers) + "\r\n";
        return raw("HTTP/1.1 " + status + " Some Words\r\n" + lines + "Content-Length: 2\r\n\r\nok");
    }

    public static Manner raw(String text) {
        return out -> out.write(text.getBytes(StandardCharsets.UTF_8));
    }

    /** Status 200, and a body without end. */
    public static Manner endless() {
        return out -> {
            out.write("HTTP/1.1 200 OK\r\n\r\n".getBytes(StandardCharsets.UTF_8));
            byte[] much = "all work and no play ".repeat(400).getBytes(StandardCharsets.UTF_8);
            while (true) {
                out.write(much);
            }
        };
    }

    /** Takes the request, and never says anything. */
    public Manner silent() {
        return out -> {
            try {
                closed.await();
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        };
    }

    public Receiver answering(Manner wanted) {
        manner = wanted;
        return this;
    }

    public List<Request> requests() {
        return List.copyOf(requests);
    }

    public String url() {
        return "http://127.0.0.1:" + port() + "/hook";
    }

    public int port() {
        return port;
    }

    private void accept(ServerSocket listening) {
        while (!listening.isClosed()) {
            try {
                Socket socket = listening.accept();
                Thread thread = new Thread(() -> serve(socket), "receiver-connection");
                thread.setDaemon(true);
                thread.start();
            } catch (IOException e) {
                return;
            }
        }
    }

    private void serve(Socket socket) {
        try (socket) {
            requests.add(read(new BufferedInputStream(socket.getInputStream())));
            manner.answer(socket.getOutputStream());
            socket.getOutputStream().flush();
        } catch (IOException theOtherSideLeft) {
            assert theOtherSideLeft != null;
        }
    }

    private static Request read(InputStream in) throws IOException {
        String first = line(in);
        Map<String, String> headers = new TreeMap<>();
        for (String line = line(in); !line.isEmpty(); line = line(in)) {
            int colon = line.indexOf(':');
            headers.put(
                    line.substring(0, colon).toLowerCase(Locale.ROOT),
                    line.substring(colon + 1).strip());
        }
        int length = Integer.parseInt(headers.getOrDefault("content-length", "0"));
        return new Request(first.split(" ", 3)[1], headers, new String(in.readNBytes(length), StandardCharsets.UTF_8));
    }

    private static String line(InputStream in) throws IOException {
        ByteArrayOutputStream line = new ByteArrayOutputStream();
        for (int c = in.read(); c != '\n'; c = in.read()) {
            if (c < 0) {
                throw new IOException("the request broke off");
            }
            if (c != '\r') {
                line.write(c);
            }
        }
        return line.toString(StandardCharsets.UTF_8);
    }

    @Override
    public void close() throws IOException {
        closed.countDown();
        server.close();
    }
}
