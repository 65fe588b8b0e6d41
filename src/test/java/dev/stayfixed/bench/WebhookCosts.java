package dev.stayfixed.bench;

import com.sun.net.httpserver.HttpServer;
import dev.stayfixed.English;
import dev.stayfixed.StayfixedApplication;
import dev.stayfixed.platform.CurrentShop;
import dev.stayfixed.platform.RealPostgres;
import dev.stayfixed.platform.storage.Durably;
import dev.stayfixed.telling.Announcer;
import dev.stayfixed.telling.Event;
import dev.stayfixed.telling.EventKind;
import dev.stayfixed.telling.delivery.Delivery;
import dev.stayfixed.telling.delivery.Outbox;
import dev.stayfixed.telling.webhooks.Endpoint;
import dev.stayfixed.telling.webhooks.Webhooks;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.ToDoubleFunction;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.context.annotation.AnnotationConfigApplicationContext;

/**
 * A backlog of webhooks, five for each job, sent to receivers in this very process: from the first that arrives to the last. Each
 * round is a new database and a new start of the service. {@code -Dstayfixed.webhooks=10000} says how many.
 */
final class WebhookCosts {

    private static final int BACKLOG = Integer.getInteger("stayfixed.webhooks", 10_000);
    private static final int EACH_JOB = 5;
    private static final int ROUNDS = Integer.getInteger("stayfixed.webhooks.rounds", 3);

    private WebhookCosts() {}

    private record Way(String name, boolean postgres, int endpoints, List<Sent> sent) {
        Way(String name, boolean postgres, int endpoints) {
            this(name, postgres, endpoints, new ArrayList<>());
        }
    }

    /** @param cpuMicros processor time of the whole process for one message, its receivers with it */
    private record Sent(double perSecond, double cpuMicros) {}

    static void run() throws Exception {
        // The server of the JDK else holds each answer back for 40 ms, until what it sent before was acknowledged.
        System.setProperty("sun.net.httpserver.nodelay", "true");
        List<Way> ways = List.of(
                new Way("H2 file, 1 endpoint", false, 1),
                new Way("H2 file, 5 endpoints", false, 5),
                new Way("PostgreSQL, 1 endpoint", true, 1),
                new Way("PostgreSQL, 5 endpoints", true, 5));
        for (int round = 0; round < ROUNDS; round++) {
            for (Way way : ways) {
                way.sent().add(sent(way));
            }
        }
        System.out.printf("%n## %,d webhooks from a backlog (%d rounds)%n", BACKLOG, ROUNDS);
        System.out.println("| where | median, each second | CPU µs each |\n|---|---|---|");
        ways.forEach(way -> System.out.printf(
                "| %s | %.0f | %.0f |%n", way.name(), median(way, Sent::perSecond), median(way, Sent::cpuMicros)));
    }

    private static double median(Way way, ToDoubleFunction<Sent> value) {
        double[] sorted = way.sent().stream().mapToDouble(value).sorted().toArray();
        return sorted[sorted.length / 2];
    }

    private static Sent sent(Way way) throws Exception {
        try (AnnotationConfigApplicationContext postgres = new AnnotationConfigApplicationContext();
                Receivers receivers = new Receivers(way.endpoints())) {
            List<String> settings = new ArrayList<>(List.of(
                    "--server.port=0",
                    "--spring.profiles.active=",
                    "--spring.main.banner-mode=off",
                    "--logging.level.root=warn",
                    "--stayfixed.webhooks.private-targets=true"));
            if (way.postgres()) {
                postgres.registerBean("server", RealPostgres.class);
                postgres.refresh();
                JdbcConnectionDetails database = postgres.getBean(JdbcConnectionDetails.class);
                settings.add("--spring.datasource.url=" + database.getJdbcUrl());
                settings.add("--spring.datasource.username=" + database.getUsername());
                settings.add("--spring.datasource.password=" + database.getPassword());
            } else {
                settings.add("--spring.datasource.url=jdbc:h2:file:"
                        + Files.createTempDirectory("stayfixed-bench").resolve("shop")
                        + ";WRITE_DELAY=0;DB_CLOSE_ON_EXIT=FALSE;MODE=PostgreSQL");
            }
            try (ConfigurableApplicationContext quiet = start(settings, "--stayfixed.background=false")) {
                quiet.getBean(CurrentShop.class).in(CurrentShop.DEFAULT, () -> fill(quiet, receivers.urls()));
            }
            try (ConfigurableApplicationContext sending = start(settings)) {
                return receivers.sent(sending.isActive());
            }
        }
    }

    private static ConfigurableApplicationContext start(List<String> settings, String... more) {
        List<String> all = new ArrayList<>(settings);
        all.addAll(List.of(more));
        return new SpringApplicationBuilder(StayfixedApplication.class).run(all.toArray(String[]::new));
    }

    private static void fill(ConfigurableApplicationContext service, List<String> urls) {
        Outbox outbox = service.getBean(Outbox.class);
        List<UUID> endpoints = urls.stream()
                .map(url -> service.getBean(Webhooks.class)
                        .add(new Endpoint.Details(url, Optional.empty(), Set.of(EventKind.CONFIRMED_FIXED)))
                        .endpoint()
                        .id())
                .toList();
        Event event = service.getBean(Announcer.class).test(English.reason("a backlog"));
        int jobs = BACKLOG / EACH_JOB;
        for (int place = 0; place < EACH_JOB; place++) {
            int number = place;
            service.getBean(Durably.class).write(() -> {
                for (int job = 0; job < jobs; job++) {
                    UUID endpoint = endpoints.get(job % endpoints.size());
                    outbox.add(new Delivery.Draft(
                            "webhook",
                            endpoint,
                            "w:" + endpoint + ":" + job,
                            event.id(),
                            Optional.empty(),
                            EventKind.CONFIRMED_FIXED.name(),
                            "{\"about\":\"%s\"}".formatted("x".repeat(600)) + "/" + job + "/" + number,
                            false));
                }
            });
        }
    }

    /** They take everything at once, and look at the order. */
    private static final class Receivers implements AutoCloseable {

        private final ExecutorService threads = Executors.newCachedThreadPool();
        private final List<HttpServer> servers = new ArrayList<>();
        private final Map<String, Integer> last = new ConcurrentHashMap<>();
        private final AtomicInteger wrong = new AtomicInteger();
        private final CountDownLatch first = new CountDownLatch(1);
        private final CountDownLatch all = new CountDownLatch(BACKLOG);

        Receivers(int count) throws IOException {
            for (int i = 0; i < count; i++) {
                HttpServer server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 50);
                server.setExecutor(threads);
                server.createContext("/", exchange -> {
                    String body = new String(exchange.getRequestBody().readAllBytes(), StandardCharsets.UTF_8);
                    took(body.split("/", -1));
                    byte[] ok = "ok".getBytes(StandardCharsets.UTF_8);
                    exchange.sendResponseHeaders(200, ok.length);
                    exchange.getResponseBody().write(ok);
                    exchange.close();
                });
                server.start();
                servers.add(server);
            }
        }

        private void took(String[] parts) {
            int number = Integer.parseInt(parts[2]);
            int before = last.getOrDefault(parts[1], -1);
            last.put(parts[1], number);
            if (before != number - 1) {
                wrong.incrementAndGet();
            }
            first.countDown();
            all.countDown();
        }

        List<String> urls() {
            return servers.stream()
                    .map(s -> "http://127.0.0.1:" + s.getAddress().getPort() + "/")
                    .toList();
        }

        Sent sent(boolean serving) throws InterruptedException {
            first.await();
            long begin = System.nanoTime();
            long cpu = Rounds.cpuNanos();
            all.await();
            double seconds = (System.nanoTime() - begin) / 1e9;
            double micros = (Rounds.cpuNanos() - cpu) / 1e3;
            if (!serving || wrong.get() > 0) {
                throw new IllegalStateException(wrong + " messages came out of their order");
            }
            return new Sent(BACKLOG / seconds, micros / BACKLOG);
        }

        @Override
        public void close() {
            servers.forEach(server -> server.stop(0));
            threads.shutdownNow();
        }
    }
}
