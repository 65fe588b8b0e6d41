package dev.stayfixed.bench;

import dev.stayfixed.StayfixedApplication;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.sql.Timestamp;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.springframework.beans.factory.config.BeanPostProcessor;
import org.springframework.beans.factory.support.BeanDefinitionRegistry;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ConfigurableApplicationContext;

/**
 * The whole service over an H2 file with many jobs. They are written into the tables as they were before anything was kept for lists,
 * so that the later migrations do their work on them, too.
 */
final class FilledShop implements AutoCloseable {

    private static final String BEFORE_LISTS = "11";
    private static final UUID SHOP = UUID.fromString("00000000-0000-4000-8000-000000000001");
    private static final List<String> STATES = List.of(
            "AWAITING_REPAIR", "WAITING_FOR_FIRST_TRIP", "PASSING", "CONFIRMED_FIXED", "FAILED_ONCE", "RECURRED");
    private static final List<String> DONE = List.of(
            "Catalyst replaced", "Leak at the flange mended", "Coil replaced", "Connector cleaned", "Hose replaced");

    private final ConfigurableApplicationContext service;
    private final AtomicInteger statements;

    private FilledShop(ConfigurableApplicationContext service, AtomicInteger statements) {
        this.service = service;
        this.statements = statements;
    }

    static FilledShop of(int jobs) throws IOException, SQLException {
        Path file = Files.createTempDirectory("stayfixed-bench").resolve("shop");
        String url = "jdbc:h2:file:" + file + ";WRITE_DELAY=0;DB_CLOSE_ON_EXIT=FALSE;MODE=PostgreSQL";
        long begin = System.nanoTime();
        Flyway.configure()
                .dataSource(url, "stayfixed", "")
                .locations("classpath:db-migrations")
                .placeholders(Map.of("bytes", "binary large object"))
                .target(BEFORE_LISTS)
                .load()
                .migrate();
        try (Connection connection = DriverManager.getConnection(url, "stayfixed", "")) {
            // Each table is written in batches of its own, whoever refers to it.
            run(connection, "set referential_integrity false");
            run(connection, "set write_delay 10000");
            fill(connection, jobs);
            run(connection, "set referential_integrity true");
            run(connection, "shutdown compact");
        }
        double filled = (System.nanoTime() - begin) / 1e9;
        AtomicInteger statements = new AtomicInteger();
        ConfigurableApplicationContext service = new SpringApplicationBuilder(StayfixedApplication.class)
                .initializers(context -> {
                    context.getBeanFactory().addBeanPostProcessor(new BeanPostProcessor() {
                        @Override
                        public Object postProcessAfterInitialization(Object bean, String name) {
                            return bean instanceof DataSource source ? new CountedStatements(source, statements) : bean;
                        }
                    });
                    context.addBeanFactoryPostProcessor(
                            // The drives here have no submissions, so nothing may be judged again.
                            factory -> ((BeanDefinitionRegistry) factory).removeBeanDefinition("reconciliation"));
                })
                .run(
                        "--server.port=0",
                        "--spring.profiles.active=",
                        "--stayfixed.background=false",
                        "--spring.main.banner-mode=off",
                        "--logging.level.root=warn",
                        "--spring.datasource.url=" + url);
        System.out.printf(
                "%n%,d jobs: filled in %.0f s, served after %.0f s more, %,d MB%n",
                jobs,
                filled,
                (System.nanoTime() - begin) / 1e9 - filled,
                Files.size(file.resolveSibling("shop.mv.db")) >> 20);
        return new FilledShop(service, statements);
    }

    int port() {
        return service.getEnvironment().getRequiredProperty("local.server.port", Integer.class);
    }

    /** How many the service has prepared so far. */
    int statements() {
        return statements.get();
    }

    @Override
    public void close() {
        service.close();
    }

    /** One job of ten is open and at most 40 days old; the closed ones are spread over three years, repaired once and followed. */
    private static void fill(Connection connection, int count) throws SQLException {
        Random random = new Random(1);
        Instant now = Instant.now();
        try (Rows vehicles = new Rows(
                        connection,
                        "vehicle (id, shop_id, plate, vin, description, ignition, created_at, version)",
                        8);
                Rows jobs = new Rows(
                        connection,
                        "job (id, shop_id, vehicle_id, customer, reference, complaint, opened_at, state, closed_at, version)",
                        10);
                Rows faults = new Rows(
                        connection,
                        "fault (id, shop_id, job_id, position, code, standing_state, monitor_group, trips, required_passes,"
                                + " weakest_evidence, standing_words, standing_passes, standing_decided, standing_comeback)",
                        14);
                Rows drives = new Rows(
                        connection, "drive (id, shop_id, vehicle_id, start_at, until_at, received_at, revision)", 7);
                Rows repairs = new Rows(
                        connection,
                        "repair (id, shop_id, job_id, performed_at, recorded_at, description, codes_cleared)",
                        7);
                Rows repaired = new Rows(connection, "repair_fault (repair_id, fault_id)", 2);
                Rows attempts = new Rows(
                        connection,
                        "attempt_outcome (repair_id, fault_id, shop_id, vehicle_id, job_id, position, code, monitor_group, repair,"
                                + " performed_at, state, proven_at, drives_to_proof, failed_at, followed_until, km_followed,"
                                + " km_to_failure)",
                        17);
                Rows comebacks = new Rows(
                        connection,
                        "comeback (id, shop_id, job_id, fault_id, earlier_job_id, earlier_fault_id, seen_by, same_code, happened_at,"
                                + " days_since)",
                        10)) {
            for (int i = 0; i < count; i++) {
                boolean open = i % 10 == 0;
                UUID vehicle = id(random);
                UUID job = id(random);
                Instant opened = now.minus(Duration.ofMinutes(random.nextInt(1_440 * (open ? 40 : 1_000))));
                Timestamp at = Timestamp.from(opened);
                vehicles.add(
                        vehicle,
                        SHOP,
                        "ST %06d".formatted(i),
                        "WVWZZZ1KZ%08d".formatted(i),
                        i % 3 == 0 ? "Blue hatchback, 1.6 petrol" : "Grey estate, 2.0 diesel",
                        "SPARK",
                        at,
                        1);
                jobs.add(
                        job,
                        SHOP,
                        vehicle,
                        "Ilona %06d".formatted(i),
                        "R-" + (100_000 + i),
                        "Lamp on since Tuesday",
                        at,
                        open ? "OPEN" : "CLOSED",
                        open ? null : at,
                        1);
                for (int d = 0; d < 3; d++) {
                    Timestamp start = Timestamp.from(opened.plus(Duration.ofMinutes(random.nextInt(1_440 * 7))));
                    drives.add(id(random), SHOP, vehicle, start, start, start, 1);
                }
                UUID repair = id(random);
                String done = DONE.get(random.nextInt(DONE.size())) + (i % 4 == 0 ? ", as in job " + i : "");
                if (!open) {
                    repairs.add(repair, SHOP, job, at, at, done, true);
                }
                for (int f = 0; f < 1 + i % 2; f++) {
                    UUID fault = id(random);
                    String code = f == 0 ? "P0420" : "P0%03d".formatted(100 + random.nextInt(300));
                    String state = open ? STATES.get(random.nextInt(STATES.size())) : "CONFIRMED_FIXED";
                    faults.add(
                            fault,
                            SHOP,
                            job,
                            f,
                            code,
                            state,
                            "CATALYST",
                            "TWO",
                            2,
                            "ENABLING_CONDITIONS",
                            state.equals("CONFIRMED_FIXED") ? "confirmed fixed" : "1 of 2 clean trips",
                            1,
                            state.equals("CONFIRMED_FIXED"),
                            false);
                    if (open) {
                        continue;
                    }
                    repaired.add(repair, fault);
                    boolean failed = random.nextInt(20) == 0;
                    Timestamp followed = Timestamp.from(opened.plus(Duration.ofMinutes(random.nextInt(1_440 * 400))));
                    attempts.add(
                            repair,
                            fault,
                            SHOP,
                            vehicle,
                            job,
                            0,
                            code,
                            "CATALYST",
                            done,
                            at,
                            failed ? "RECURRED" : "CONFIRMED_FIXED",
                            Timestamp.from(opened.plus(Duration.ofMinutes(random.nextInt(1_440 * 10)))),
                            2 + random.nextInt(10),
                            failed ? followed : null,
                            followed,
                            random.nextInt(20_000) * 0.7,
                            failed ? random.nextInt(20_000) * 0.7 : null);
                    if (failed) {
                        comebacks.add(id(random), SHOP, job, fault, job, fault, "DRIVE", true, followed, 10.0);
                    }
                }
            }
        }
    }

    private static void run(Connection connection, String sql) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    private static UUID id(Random random) {
        return new UUID(random.nextLong(), random.nextLong());
    }

    /** Rows of one table, written in batches. */
    private static final class Rows implements AutoCloseable {

        private static final int BATCH = 5_000;

        private final PreparedStatement insert;
        private int waiting;

        Rows(Connection connection, String table, int columns) throws SQLException {
            this.insert =
                    connection.prepareStatement("insert into " + table + " values (" + "?,".repeat(columns - 1) + "?)");
        }

        void add(@org.jspecify.annotations.Nullable Object... values) throws SQLException {
            for (int i = 0; i < values.length; i++) {
                insert.setObject(i + 1, values[i]);
            }
            insert.addBatch();
            if (++waiting == BATCH) {
                write();
            }
        }

        private void write() throws SQLException {
            insert.executeBatch();
            waiting = 0;
        }

        @Override
        public void close() throws SQLException {
            write();
            insert.close();
        }
    }
}
