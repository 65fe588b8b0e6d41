package dev.stayfixed.bench;

import dev.stayfixed.StayfixedApplication;
import dev.stayfixed.web.Answer;
import dev.stayfixed.web.Client;
import dev.stayfixed.web.Shop;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import javax.sql.DataSource;
import org.springframework.beans.factory.config.BeanPostProcessor;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ConfigurableApplicationContext;

/**
 * What a drive more costs over HTTP, for a vehicle with many drives against one with ten: at the end, a day late, and once again.
 * {@code -Dstayfixed.intake=1000} for fewer than 5,000.
 */
final class IntakeCosts {

    private static final int FEW = 10;
    private static final int MANY = Integer.getInteger("stayfixed.intake", 5_000);
    private static final int ROUNDS = 21;
    private static final Instant FIRST = Instant.parse("2009-06-02T08:00:00Z");

    private static final AtomicInteger STATEMENTS = new AtomicInteger();

    private final Client client;
    private final Answer vehicle;
    private int drives;

    private IntakeCosts(Client client, int drives) {
        this.client = client;
        Shop shop = new Shop(client);
        this.vehicle = shop.vehicle(drives + " drives");
        Answer job = shop.job(vehicle);
        shop.repair(job, FIRST.minus(1, ChronoUnit.HOURS).toString());
        while (this.drives < drives) {
            next().is(201);
        }
    }

    static void run() throws Exception {
        try (ConfigurableApplicationContext service = new SpringApplicationBuilder(StayfixedApplication.class)
                .initializers(context -> context.getBeanFactory().addBeanPostProcessor(new BeanPostProcessor() {
                    @Override
                    public Object postProcessAfterInitialization(Object bean, String name) {
                        return bean instanceof DataSource source && !(bean instanceof CountedStatements)
                                ? new CountedStatements(source, STATEMENTS)
                                : bean;
                    }
                }))
                .run(
                        "--server.port=0",
                        "--stayfixed.background=false",
                        "--spring.profiles.active=",
                        "--logging.level.root=WARN",
                        "--spring.datasource.url=jdbc:h2:mem:intake;DB_CLOSE_DELAY=-1;MODE=PostgreSQL")) {
            Client client =
                    new Client(service.getEnvironment().getRequiredProperty("local.server.port", Integer.class));
            IntakeCosts few = new IntakeCosts(client, FEW);
            long begin = System.nanoTime();
            IntakeCosts many = new IntakeCosts(client, MANY);
            System.out.printf("%n%,d drives came in within %.0f s%n", MANY, (System.nanoTime() - begin) / 1e9);
            Map<String, Integer> counts = new LinkedHashMap<>();
            for (IntakeCosts one : List.of(few, many)) {
                String at = ", at %,d drives".formatted(one.drives);
                count(counts, "one more" + at, one::next);
                count(counts, "one more and a late one" + at, one::late);
                count(counts, "the same again" + at, one::again);
            }
            side("one more drive", few, many, IntakeCosts::next);
            side("one that is a day late", few, many, IntakeCosts::late);
            side("the same drive again", few, many, IntakeCosts::again);
            System.out.println("\n| what | statements |\n|---|---|");
            counts.forEach((what, statements) -> System.out.printf("| %s | %d |%n", what, statements));
        }
    }

    private interface Send {
        Answer of(IntakeCosts vehicle);
    }

    private static void side(String what, IntakeCosts few, IntakeCosts many, Send send) throws Exception {
        new Rounds(what, ROUNDS)
                .with("at %d drives".formatted(FEW), 1, () -> send.of(few).body())
                .with("at %,d drives".formatted(MANY), 1, () -> send.of(many).body())
                .run();
    }

    private static void count(Map<String, Integer> counts, String name, Rounds.Work work) throws Exception {
        STATEMENTS.set(0);
        work.run();
        counts.put(name, STATEMENTS.get());
    }

    private Answer next() {
        return send(drives++, 0);
    }

    /** On the day before, in the evening. */
    private Answer late() {
        next().is(201);
        return send(drives - 2, 9).is(201);
    }

    private Answer again() {
        return send(drives - 1, 0).is(200);
    }

    private Answer send(int day, int hours) {
        return client.post(
                "/api/v1/vehicles/" + vehicle.id() + "/drives",
                Shop.body(
                        FIRST.plus(day, ChronoUnit.DAYS)
                                .plus(hours, ChronoUnit.HOURS)
                                .toString(),
                        day % 3 == 0 ? Shop.RAN_CLEAN : Shop.DID_NOT_RUN));
    }
}
