package dev.stayfixed.bench;

import dev.stayfixed.StayfixedApplication;
import dev.stayfixed.web.Answer;
import dev.stayfixed.web.Client;
import dev.stayfixed.web.Shop;
import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.util.FileSystemUtils;

/**
 * Drives that 64 clients post, each for a vehicle of its own, against the same bodies posted to an application that only inserts them,
 * with the same durability; on H2 and on PostgreSQL.
 */
final class DatabaseCosts {

    private static final int CLIENTS = Integer.getInteger("stayfixed.clients", 64);
    private static final int ROUNDS = 3;
    private static final long A_ROUND = 5_000_000_000L;
    private static final Instant FIRST = Instant.parse("2010-01-02T08:00:00Z");

    private DatabaseCosts() {}

    static void run() throws Exception {
        Path folder = Files.createTempDirectory("stayfixed-database");
        try {
            String h2 = "jdbc:h2:file:%s;WRITE_DELAY=0;DB_CLOSE_ON_EXIT=FALSE;MODE=PostgreSQL";
            compare("H2", h2.formatted(folder.resolve("bare")), h2.formatted(folder.resolve("whole")), "stayfixed");
        } finally {
            FileSystemUtils.deleteRecursively(folder);
        }
        try (EmbeddedPostgres bare = syncing();
                EmbeddedPostgres whole = syncing()) {
            String address = "jdbc:postgresql://localhost:%d/postgres";
            compare("PostgreSQL", address.formatted(bare.getPort()), address.formatted(whole.getPort()), "postgres");
        }
    }

    /** The package for tests syncs nothing unless it is told to. */
    private static EmbeddedPostgres syncing() throws IOException {
        return EmbeddedPostgres.builder()
                .setServerConfig("synchronous_commit", "on")
                .setServerConfig("fsync", "on")
                .setServerConfig("full_page_writes", "on")
                .start();
    }

    private static void compare(String database, String bareUrl, String wholeUrl, String user) throws Exception {
        try (ConfigurableApplicationContext bare =
                        started(OneInsert.class, bareUrl, user, "--spring.flyway.enabled=false");
                ConfigurableApplicationContext whole = started(StayfixedApplication.class, wholeUrl, user)) {
            Client inserting = new Client(port(bare));
            Client serving = new Client(port(whole));
            List<String> drives = vehicles(serving);
            Kind one = new Kind(client -> "/kept");
            Kind all = new Kind(client -> "/api/v1/vehicles/" + drives.get(client) + "/drives");
            for (int round = 0; round <= ROUNDS; round++) {
                one.round(inserting, round);
                all.round(serving, round);
            }
            System.out.printf("%n## durable POST, %d clients, %s%n", CLIENTS, database);
            System.out.println(
                    "| what | answered/s | median ms | 99 % within ms | that / median | refused |\n|---|---|---|---|---|---|");
            one.print("one insert");
            all.print("a drive");
            System.out.printf("a drive against one insert: %.2f%n", all.rate() / one.rate());
        }
    }

    private static List<String> vehicles(Client client) {
        Shop shop = new Shop(client);
        return IntStream.range(0, CLIENTS)
                .mapToObj(i -> {
                    Answer vehicle = shop.vehicle("car of client " + i);
                    shop.repair(shop.job(vehicle), "2010-01-01T08:00:00Z");
                    return vehicle.id();
                })
                .toList();
    }

    private static final class Kind {
        private final IntFunction<String> paths;
        private final int[] days = new int[CLIENTS];
        private final List<Double> rates = new ArrayList<>();
        private final List<Long> micros = new ArrayList<>();
        private int refused;

        Kind(IntFunction<String> paths) {
            this.paths = paths;
        }

        /** The first round warms up. */
        void round(Client client, int number) {
            ConcurrentLinkedQueue<Long> took = new ConcurrentLinkedQueue<>();
            ConcurrentLinkedQueue<Integer> others = new ConcurrentLinkedQueue<>();
            long begin = System.nanoTime();
            ExecutorService threads = Executors.newFixedThreadPool(CLIENTS);
            try {
                CompletableFuture.allOf(IntStream.range(0, CLIENTS)
                                .mapToObj(i -> CompletableFuture.runAsync(
                                        () -> {
                                            while (System.nanoTime() - begin < A_ROUND) {
                                                post(client, i, took, others);
                                            }
                                        },
                                        threads))
                                .toArray(CompletableFuture[]::new))
                        .join();
            } finally {
                threads.shutdown();
            }
            if (number > 0) {
                rates.add(took.size() / ((System.nanoTime() - begin) / 1e9));
                micros.addAll(took);
                refused += others.size();
            }
        }

        private void post(
                Client client, int i, ConcurrentLinkedQueue<Long> took, ConcurrentLinkedQueue<Integer> others) {
            String body = Shop.body(
                    FIRST.plus(days[i]++, ChronoUnit.DAYS).toString(),
                    days[i] % 3 == 0 ? Shop.RAN_CLEAN : Shop.DID_NOT_RUN);
            long sent = System.nanoTime();
            Answer answer = client.post(paths.apply(i), body);
            if (answer.status() == 201) {
                took.add((System.nanoTime() - sent) / 1_000);
            } else {
                others.add(answer.status());
            }
        }

        double rate() {
            List<Double> sorted = new ArrayList<>(rates);
            Collections.sort(sorted);
            return sorted.get(sorted.size() / 2);
        }

        void print(String name) {
            Collections.sort(micros);
            double median = micros.get(micros.size() / 2) / 1e3;
            double slow = micros.get(micros.size() * 99 / 100) / 1e3;
            System.out.printf(
                    "| %s | %.0f | %.1f | %.1f | %.1f | %d |%n", name, rate(), median, slow, slow / median, refused);
        }
    }

    private static ConfigurableApplicationContext started(
            Class<?> application, String url, String user, String... more) {
        List<String> arguments = new ArrayList<>(List.of(
                "--server.port=0",
                "--stayfixed.background=false",
                "--spring.profiles.active=",
                "--spring.main.banner-mode=off",
                "--logging.level.root=error",
                "--spring.datasource.url=" + url,
                "--spring.datasource.username=" + user));
        arguments.addAll(List.of(more));
        return new SpringApplicationBuilder(application).run(arguments.toArray(String[]::new));
    }

    private static int port(ConfigurableApplicationContext service) {
        return service.getEnvironment().getRequiredProperty("local.server.port", Integer.class);
    }
}
