package dev.stayfixed.bench;

import dev.stayfixed.StayfixedApplication;
import dev.stayfixed.web.Answer;
import dev.stayfixed.web.Client;
import dev.stayfixed.web.Shop;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.util.FileSystemUtils;

/**
 * A start with many vehicles of one job and three drives each, against one with none: where this program has judged them, and where
 * another one has, so that all are judged again beside the service, which takes drives in meanwhile. {@code -Dstayfixed.vehicles=20000}
 * for more than 5,000.
 */
final class RestartCosts {

    private static final int VEHICLES = Integer.getInteger("stayfixed.vehicles", 5_000);
    private static final int ROUNDS = 3;
    private static final String NOT_JUDGED =
            "select count(*) from vehicle where judged_by is null or judged_by = 'another program'";

    private final Path folder;

    private RestartCosts(Path folder) {
        this.folder = folder;
    }

    static void run() throws Exception {
        Path folder = Files.createTempDirectory("stayfixed-restart");
        try {
            new RestartCosts(folder).measure();
        } finally {
            FileSystemUtils.deleteRecursively(folder);
        }
    }

    private void measure() throws Exception {
        try (ConfigurableApplicationContext service = started("many")) {
            JdbcClient jdbc = service.getBean(JdbcClient.class);
            fill(new Client(port(service)), jdbc);
        }
        try (ConfigurableApplicationContext service = started("many")) {
            awaitAll(service);
        }
        judgeAgain();
        new Rounds("start to first answer, %,d vehicles".formatted(VEHICLES), ROUNDS)
                .with("none", 1, () -> answer("none"))
                .with("%,d vehicles".formatted(VEHICLES), 1, () -> answer("many"))
                .run();
    }

    private int answer(String database) {
        try (ConfigurableApplicationContext service = started(database)) {
            return new Client(port(service)).get("/api/v1/jobs").is(200).body().length();
        }
    }

    private void judgeAgain() throws InterruptedException {
        try (ConfigurableApplicationContext service = started("many")) {
            awaitAll(service);
            service.getBean(JdbcClient.class)
                    .sql("update vehicle set judged_by = 'another program'")
                    .update();
        }
        try (ConfigurableApplicationContext service = started("many")) {
            Shop shop = new Shop(new Client(port(service)));
            Answer vehicle = shop.vehicle("beside");
            shop.repair(shop.job(vehicle), "2026-01-01T10:00:00Z");
            JdbcClient jdbc = service.getBean(JdbcClient.class);
            List<Long> millis = new ArrayList<>();
            long begin = System.nanoTime();
            int first = left(jdbc);
            while (left(jdbc) > 0) {
                long sent = System.nanoTime();
                shop.drive(
                                vehicle,
                                "2026-%02d-%02dT08:00:00Z"
                                        .formatted(1 + millis.size() / 28 % 8, 1 + millis.size() % 28),
                                Shop.RAN_CLEAN)
                        .body();
                millis.add(TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - sent));
                TimeUnit.MILLISECONDS.sleep(50);
            }
            double seconds = (System.nanoTime() - begin) / 1e9;
            Collections.sort(millis);
            System.out.printf(
                    "%n%,d vehicles judged again within %.1f s: %.0f/s; %d drives came in meanwhile, median %d ms, longest %d ms%n",
                    first,
                    seconds,
                    first / seconds,
                    millis.size(),
                    millis.get(millis.size() / 2),
                    millis.get(millis.size() - 1));
        }
    }

    private ConfigurableApplicationContext started(String database) {
        return new SpringApplicationBuilder(StayfixedApplication.class)
                .run(
                        "--server.port=0",
                        "--stayfixed.background=false",
                        "--spring.profiles.active=",
                        "--spring.main.banner-mode=off",
                        "--logging.level.root=error",
                        "--spring.datasource.url=jdbc:h2:file:" + folder.resolve(database)
                                + ";WRITE_DELAY=0;DB_CLOSE_ON_EXIT=FALSE;MODE=PostgreSQL");
    }

    private static int port(ConfigurableApplicationContext service) {
        return service.getEnvironment().getRequiredProperty("local.server.port", Integer.class);
    }

    private static int left(JdbcClient jdbc) {
        return jdbc.sql(NOT_JUDGED).query(Integer.class).single();
    }

    private static void awaitAll(ConfigurableApplicationContext service) throws InterruptedException {
        while (left(service.getBean(JdbcClient.class)) > 0) {
            TimeUnit.MILLISECONDS.sleep(100);
        }
    }

    /** One vehicle comes in over HTTP; the rows that nothing else can be made of are copied. */
    private static void fill(Client client, JdbcClient jdbc) {
        Shop shop = new Shop(client);
        Answer vehicle = shop.vehicle("one of many");
        shop.repair(shop.job(vehicle), "2026-06-01T10:00:00Z");
        for (int day = 2; day <= 4; day++) {
            shop.drive(vehicle, "2026-06-0%dT08:00:00Z".formatted(day), day == 3 ? Shop.DID_NOT_RUN : Shop.RAN_CLEAN)
                    .is(201);
        }
        jdbc.sql(
                        "create table copy_of_vehicle as select random_uuid() v, random_uuid() j, random_uuid() f, random_uuid() r"
                                + " from system_range(1, ?)")
                .param(VEHICLES)
                .update();
        jdbc.sql("create table copy_of_drive as select c.v, s.id of_submission, random_uuid() s, random_uuid() d"
                        + " from copy_of_vehicle c cross join submission s")
                .update();
        String copies = " cross join copy_of_vehicle c";
        copy(jdbc, "vehicle", copies, Map.of("ID", "c.v", "JUDGED_BY", "null"));
        copy(jdbc, "job", copies, Map.of("ID", "c.j", "VEHICLE_ID", "c.v"));
        copy(jdbc, "fault", copies, Map.of("ID", "c.f", "JOB_ID", "c.j"));
        copy(jdbc, "repair", copies, Map.of("ID", "c.r", "JOB_ID", "c.j"));
        copy(jdbc, "repair_fault", copies, Map.of("REPAIR_ID", "c.r", "FAULT_ID", "c.f"));
        copy(
                jdbc,
                "submission",
                " join copy_of_drive c on c.of_submission = o.id",
                Map.of("ID", "c.s", "VEHICLE_ID", "c.v", "DRIVE_ID", "c.d"));
    }

    private static void copy(JdbcClient jdbc, String table, String copies, Map<String, String> others) {
        List<String> columns = jdbc.sql("""
                        select column_name from information_schema.columns
                        where table_schema = 'PUBLIC' and upper(table_name) = upper(?) order by ordinal_position""").param(table).query(String.class).list();
        String values = columns.stream()
                .map(column -> others.getOrDefault(column.toUpperCase(java.util.Locale.ROOT), "o." + column))
                .collect(Collectors.joining(", "));
        jdbc.sql("insert into %s (%s) select %s from %s o%s"
                        .formatted(table, String.join(", ", columns), values, table, copies))
                .update();
    }
}
