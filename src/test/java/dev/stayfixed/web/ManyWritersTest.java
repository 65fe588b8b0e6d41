package dev.stayfixed.web;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.platform.OnH2;
import dev.stayfixed.platform.storage.Durably;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;

/** More who want to write than the service lets wait. */
@OnH2
@Timeout(60)
class ManyWritersTest {

    private static final int PLACES = 64;
    private static final int TOO_MANY = 10;
    private static final String V = "/api/v1/vehicles";

    @LocalServerPort
    int port;

    @Autowired
    Durably durably;

    @Test
    void whoFindsNoPlaceIsToldAtOnceAndNothingIsStored() {
        Client client = new Client(port);
        CountDownLatch turnedAway = new CountDownLatch(TOO_MANY);
        List<CompletableFuture<Answer>> all = new ArrayList<>();
        durably.write(() -> {
            for (int i = 0; i < PLACES + TOO_MANY; i++) {
                String body = "{\"description\":\"one of many\"}";
                all.add(CompletableFuture.supplyAsync(() -> client.post(V, body), task -> new Thread(task).start())
                        .thenApply(answer -> {
                            turnedAway.countDown();
                            return answer;
                        }));
            }
            await(turnedAway);
            client.get(V).is(200);
        });
        List<Answer> answers = all.stream().map(CompletableFuture::join).toList();
        List<Answer> away = answers.stream().filter(a -> a.status() != 201).toList();
        assertThat(away)
                .hasSize(TOO_MANY)
                .allSatisfy(a -> assertThat(a.isProblem(503, "busy").header("Retry-After"))
                        .isEqualTo("1"));
        assertThat(client.get(V + "?limit=200&q=one+of+many").json().at("/items"))
                .hasSize(PLACES);
    }

    private static void await(CountDownLatch latch) {
        try {
            latch.await();
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }
}
