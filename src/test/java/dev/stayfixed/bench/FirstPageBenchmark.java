package dev.stayfixed.bench;

import dev.stayfixed.StayfixedApplication;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Timestamp;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.UUID;
import org.springframework.boot.SpringApplication;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.jdbc.core.JdbcTemplate;

/** How long the first page takes with 10,000 open jobs, 10,000 closed ones and three drives each, over HTTP, warm. */
public final class FirstPageBenchmark {

    private static final UUID SHOP = UUID.fromString("00000000-0000-4000-8000-000000000001");
    private static final int OPEN = 10_000;
    private static final int WARM_UP = 60;
    private static final int MEASURED = 60;
    private static final List<String> STATES = List.of(
            "AWAITING_REPAIR", "WAITING_FOR_FIRST_TRIP", "PASSING", "CONFIRMED_FIXED", "FAILED_ONCE", "RECURRED");

    private FirstPageBenchmark() {}

    public static void main(String[] args) throws IOException, InterruptedException {
        Path file = Files.createTempDirectory("stayfixed-bench").resolve("bench");
        try (ConfigurableApplicationContext service = SpringApplication.run(
                StayfixedApplication.class,
                "--server.port=0",
                "--spring.profiles.active=",
                "--spring.datasource.url=jdbc:h2:file:" + file
                        + ";WRITE_DELAY=0;DB_CLOSE_ON_EXIT=FALSE;MODE=PostgreSQL")) {
            fill(service.getBean(JdbcTemplate.class));
            int port = service.getEnvironment().getRequiredProperty("local.server.port", Integer.class);
            for (String path : List.of("/", "/?page=200", "/?need=stalled", "/?q=p0420", "/?q=1234")) {
                measure(port, path);
            }
        }
    }

    private static void fill(JdbcTemplate jdbc) {
        Random random = new Random(1);
        Instant now = Instant.now();
        List<Object[]> vehicles = new ArrayList<>();
        List<Object[]> jobs = new ArrayList<>();
        List<Object[]> faults = new ArrayList<>();
        List<Object[]> drives = new ArrayList<>();
        for (int i = 0; i < 2 * OPEN; i++) {
            UUID vehicle = new UUID(random.nextLong(), random.nextLong());
            UUID job = new UUID(random.nextLong(), random.nextLong());
            Timestamp opened = Timestamp.from(now.minus(Duration.ofHours(random.nextInt(24 * 20))));
            vehicles.add(new Object[] {vehicle, SHOP, "XY " + i, "Vehicle " + i, "SPARK", opened, 1});
            jobs.add(new Object[] {job, SHOP, vehicle, "Customer " + i, opened, i < OPEN ? "OPEN" : "CLOSED", 1});
            for (int f = 0; f < 1 + i % 2; f++) {
                String state = STATES.get(random.nextInt(STATES.size()));
                faults.add(new Object[] {
                    new UUID(random.nextLong(), random.nextLong()), SHOP, job, f, f == 0 ? "P0420" : "P0171", state
                });
            }
            for (int d = 0; d < 3; d++) {
                Timestamp start = Timestamp.from(now.minus(Duration.ofHours(random.nextInt(24 * 20))));
                drives.add(new Object[] {
                    new UUID(random.nextLong(), random.nextLong()), SHOP, vehicle, start, start, start, 1
                });
            }
        }
        jdbc.batchUpdate(
                "insert into vehicle (id, shop_id, plate, description, ignition, created_at, version) values (?,?,?,?,?,?,?)",
                vehicles);
        jdbc.batchUpdate(
                "insert into job (id, shop_id, vehicle_id, customer, opened_at, state, version) values (?,?,?,?,?,?,?)",
                jobs);
        jdbc.batchUpdate(
                "insert into fault (id, shop_id, job_id, position, code, standing_state, monitor_group, trips, required_passes,"
                        + " weakest_evidence, standing_words, standing_passes, standing_decided, standing_comeback)"
                        + " values (?,?,?,?,?,?,'CATALYST','TWO',2,'ENABLING_CONDITIONS','1 of 2 clean trips',1,false,false)",
                faults);
        jdbc.batchUpdate(
                "insert into drive (id, shop_id, vehicle_id, start_at, until_at, received_at, revision) values (?,?,?,?,?,?,?)",
                drives);
    }

    private static void measure(int port, String path) throws IOException, InterruptedException {
        HttpClient http = HttpClient.newHttpClient();
        HttpRequest request = HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path))
                .build();
        double[] millis = new double[MEASURED];
        for (int i = -WARM_UP; i < MEASURED; i++) {
            long begin = System.nanoTime();
            HttpResponse<String> answer = http.send(request, HttpResponse.BodyHandlers.ofString());
            if (answer.statusCode() != 200) {
                throw new IllegalStateException(path + " answered " + answer.statusCode());
            }
            if (i >= 0) {
                millis[i] = (System.nanoTime() - begin) / 1e6;
            }
        }
        Arrays.sort(millis);
        System.out.printf(
                "%-16s median %.0f ms, 95 %% within %.0f ms%n",
                path, millis[MEASURED / 2], millis[MEASURED * 95 / 100]);
    }
}
