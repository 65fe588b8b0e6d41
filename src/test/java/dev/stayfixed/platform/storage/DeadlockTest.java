package dev.stayfixed.platform.storage;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.platform.CurrentShop;
import dev.stayfixed.platform.OnPostgres;
import dev.stayfixed.web.Client;
import dev.stayfixed.web.Shop;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Two writes that wait for each other: PostgreSQL ends one of them, which then runs once more. */
@OnPostgres
@Timeout(60)
class DeadlockTest {

    @LocalServerPort
    int port;

    @Autowired
    Durably durably;

    @Autowired
    JdbcClient jdbc;

    @Test
    void bothEndWell() {
        Shop shop = new Shop(new Client(port));
        UUID one = UUID.fromString(shop.vehicle("one").id());
        UUID other = UUID.fromString(shop.vehicle("other").id());
        CountDownLatch both = new CountDownLatch(2);
        AtomicInteger runs = new AtomicInteger();
        List.of(crossing(one, other, both, runs), crossing(other, one, both, runs))
                .forEach(CompletableFuture::join);
        assertThat(runs).hasValue(3);
        assertThat(jdbc.sql("select plate from vehicle where id in (?, ?)")
                        .params(one, other)
                        .query(String.class)
                        .set())
                .hasSize(1);
    }

    private CompletableFuture<Void> crossing(UUID first, UUID second, CountDownLatch both, AtomicInteger runs) {
        return CompletableFuture.runAsync(
                () -> new CurrentShop()
                        .in(
                                CurrentShop.DEFAULT,
                                () -> durably.write(() -> {
                                    int run = runs.incrementAndGet();
                                    mark(first, "run " + run);
                                    both.countDown();
                                    await(both);
                                    mark(second, "run " + run);
                                })),
                task -> new Thread(task).start());
    }

    private void mark(UUID vehicle, String plate) {
        jdbc.sql("update vehicle set plate = ? where id = ?")
                .params(plate, vehicle)
                .update();
    }

    private static void await(CountDownLatch latch) {
        try {
            latch.await();
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }
}
