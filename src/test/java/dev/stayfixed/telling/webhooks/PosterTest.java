package dev.stayfixed.telling.webhooks;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.net.httpserver.HttpServer;
import dev.stayfixed.telling.Receiver;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(60)
class PosterTest {

    /** Elsewhere the tests give a receiver all the time it needs; here the wait is what is tested. */
    @Test
    void aReceiverThatNeverAnswersIsLeftWhenPatienceEnds() throws Exception {
        Poster poster = new Poster(new Targets(new WebhookSettings(true, 15_000)), new WebhookSettings(true, 300));
        try (Receiver receiver = new Receiver()) {
            receiver.answering(receiver.silent());
            assertThat(poster.post(receiver.url(), Map.of("webhook-id", "1"), "{}"))
                    .isEqualTo(new Poster.Unanswered("not within 300 ms"));
        } finally {
            poster.close();
        }
    }

    @Test
    void aConnectionIsKeptForTheNextMessage() throws Exception {
        Poster poster = new Poster(new Targets(new WebhookSettings(true, 15_000)), new WebhookSettings(true, 15_000));
        Set<Integer> ports = ConcurrentHashMap.newKeySet();
        HttpServer server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 10);
        server.createContext("/", exchange -> {
            ports.add(exchange.getRemoteAddress().getPort());
            exchange.getRequestBody().readAllBytes();
            exchange.sendResponseHeaders(200, 2);
            exchange.getResponseBody().write(new byte[] {'o', 'k'});
            exchange.close();
        });
        server.start();
        try {
            String url = "http://127.0.0.1:" + server.getAddress().getPort() + "/";
            for (int i = 0; i < 3; i++) {
                assertThat(poster.post(url, Map.of("webhook-id", "1"), "{}"))
                        .isEqualTo(new Poster.Answered(200, "ok", null));
            }
            assertThat(ports).hasSize(1);
        } finally {
            server.stop(0);
            poster.close();
        }
    }

    /** The receiver of the tests closes each connection after one answer, and does not say so. */
    @Test
    void aConnectionThatWasClosedInSilenceIsNoFailure() throws Exception {
        Poster poster = new Poster(new Targets(new WebhookSettings(true, 15_000)), new WebhookSettings(true, 15_000));
        try (Receiver receiver = new Receiver()) {
            for (int i = 0; i < 5; i++) {
                assertThat(poster.post(receiver.url(), Map.of("webhook-id", "1"), "{}"))
                        .isEqualTo(new Poster.Answered(200, "ok", null));
            }
            assertThat(receiver.requests()).hasSize(5);
        } finally {
            poster.close();
        }
    }
}
