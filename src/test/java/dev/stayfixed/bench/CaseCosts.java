package dev.stayfixed.bench;

import dev.stayfixed.StayfixedApplication;
import dev.stayfixed.web.Answer;
import dev.stayfixed.web.Client;
import dev.stayfixed.web.Shop;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import javax.sql.DataSource;
import org.springframework.beans.factory.config.BeanPostProcessor;
import org.springframework.boot.SpringApplication;
import org.springframework.context.ApplicationContextInitializer;
import org.springframework.context.ConfigurableApplicationContext;

/** What the pages of one vehicle ask of the database, with one fault and three drives and with many of both. */
final class CaseCosts {

    private static final AtomicInteger STATEMENTS = new AtomicInteger();

    private CaseCosts() {}

    private static final class Counting implements BeanPostProcessor {
        @Override
        public Object postProcessAfterInitialization(Object bean, String name) {
            return bean instanceof DataSource source && !(bean instanceof CountedStatements)
                    ? new CountedStatements(source, STATEMENTS)
                    : bean;
        }
    }

    static void run() throws Exception {
        SpringApplication application = new SpringApplication(StayfixedApplication.class);
        application.addInitializers((ApplicationContextInitializer<ConfigurableApplicationContext>)
                context -> context.getBeanFactory().addBeanPostProcessor(new Counting()));
        try (ConfigurableApplicationContext service = application.run(
                "--server.port=0",
                "--stayfixed.background=false",
                "--spring.profiles.active=",
                "--logging.level.root=WARN",
                "--spring.datasource.url=jdbc:h2:mem:case;DB_CLOSE_DELAY=-1;MODE=PostgreSQL")) {
            Client client =
                    new Client(service.getEnvironment().getRequiredProperty("local.server.port", Integer.class));
            Answer small = job(client, 1, 3);
            Answer large = job(client, 5, 40);
            Rounds rounds = new Rounds("one vehicle, read", 15);
            Map<String, Integer> counts = new LinkedHashMap<>();
            for (String path : new String[] {"/jobs/%s", "/api/v1/jobs/%s", "/api/v1/jobs/%s/verdicts"}) {
                read(client, path, "1 fault, 3 drives", small, rounds, counts);
                read(client, path, "5 faults, 40 drives", large, rounds, counts);
            }
            count(
                    counts,
                    "report, 5 faults, 40 drives",
                    () -> client.post("/api/v1/jobs/" + large.id() + "/report", ""));
            count(counts, "one more drive, 41st", () -> drive(client, large, 41));
            count(counts, "one more drive, 4th", () -> drive(client, small, 4));
            rounds.run();
            System.out.println("\n| read | statements |\n|---|---|");
            counts.forEach((what, statements) -> System.out.printf("| %s | %d |%n", what, statements));
        }
    }

    private static void read(
            Client client, String path, String size, Answer job, Rounds rounds, Map<String, Integer> counts)
            throws Exception {
        String at = path.formatted(job.id());
        String name = path.replace("%s", "…") + ", " + size;
        client.get(at).is(200);
        count(counts, name, () -> client.get(at));
        rounds.with(name, 5, () -> client.get(at).body().length());
    }

    private static void count(Map<String, Integer> counts, String name, Rounds.Work work) throws Exception {
        STATEMENTS.set(0);
        work.run();
        counts.put(name, STATEMENTS.get());
    }

    private static Answer job(Client client, int faults, int drives) {
        Shop shop = new Shop(client);
        Answer vehicle = shop.vehicle("benchmark " + faults);
        Answer job = shop.job(
                vehicle,
                IntStream.range(0, faults)
                        .mapToObj("{\"code\":\"P042%d\"}"::formatted)
                        .collect(Collectors.joining(",")));
        shop.repair(job, "2026-06-01T10:00:00Z");
        for (int i = 0; i < drives; i++) {
            drive(client, job, i).is(201);
        }
        return job;
    }

    private static Answer drive(Client client, Answer job, int place) {
        return client.post(
                "/api/v1/vehicles/" + job.at("/vehicleId") + "/drives",
                Shop.body(
                        Instant.parse("2026-06-02T08:00:00Z")
                                .plus(place, ChronoUnit.DAYS)
                                .toString(),
                        place % 3 == 0 ? Shop.RAN_CLEAN : Shop.DID_NOT_RUN));
    }
}
