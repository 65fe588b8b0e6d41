package dev.stayfixed.web;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.platform.OnPostgres;
import dev.stayfixed.platform.OtherInstance;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.Timeout;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.boot.test.web.server.LocalServerPort;

/** Three instances of the service on one PostgreSQL, and many people who write at the same time: everybody is answered. */
@OnPostgres
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@Timeout(120)
class SeveralInstancesTest {

    private static final String API = "/api/v1";
    private static final int PEOPLE = 8;

    @LocalServerPort
    int port;

    @Autowired
    JdbcConnectionDetails database;

    private final List<OtherInstance> others = new ArrayList<>();
    private final List<Client> clients = new ArrayList<>();
    private final AtomicInteger turn = new AtomicInteger();

    @BeforeAll
    void startOthers() {
        clients.add(new Client(port));
        for (int i = 0; i < 2; i++) {
            OtherInstance other = new OtherInstance(database, "spring.mail.host=127.0.0.1");
            others.add(other);
            clients.add(new Client(other.port()));
        }
    }

    @AfterAll
    void endOthers() {
        others.forEach(OtherInstance::close);
    }

    @Test
    void everyKindOfWriteAtTheSameTime() throws Exception {
        List<Answer> answers = atOnce(
                        IntStream.range(0, PEOPLE).mapToObj(this::person).toList())
                .stream()
                .flatMap(List::stream)
                .toList();
        assertThat(answers).allSatisfy(a -> assertThat(a.status()).as(a.body()).isIn(200, 201, 302));
    }

    @Test
    void oneVehicleAndOneReportAskedForByAll() throws Exception {
        String vin = "1M8GDM9AXKP042787";
        List<Answer> vehicles =
                atOnce(same(PEOPLE, () -> post("/vehicles", "{\"description\":\"v\",\"vin\":\"" + vin + "\"}")));
        assertThat(vehicles).allSatisfy(a -> assertThat(a.status()).as(a.body()).isIn(201, 409));
        Answer vehicle =
                vehicles.stream().filter(a -> a.status() == 201).findFirst().orElseThrow();
        Answer job = post("/jobs", "{\"vehicleId\":\"%s\",\"faults\":[{\"code\":\"P0420\"}]}".formatted(vehicle.id()));
        List<Answer> reports = atOnce(same(clients.size(), () -> post("/jobs/" + job.id() + "/report", "")));
        assertThat(reports).allSatisfy(a -> assertThat(a.status()).as(a.body()).isIn(200, 201));
        assertThat(reports.stream().map(a -> a.at("/fingerprint")).distinct()).hasSize(1);
        List<Answer> links = atOnce(same(PEOPLE, () -> post("/calendar-link", "")));
        assertThat(links).allSatisfy(a -> assertThat(a.status()).as(a.body()).isIn(200, 201));
    }

    /** Whoever comes second waits for the first, and gets its answer. */
    @Test
    void oneKeyAtAllInstancesIsOneRequest() throws Exception {
        Answer vehicle = new Shop(clients.get(0)).vehicle("sent to every instance");
        String key = UUID.randomUUID().toString();
        List<Answer> answers = atOnce(clients.stream()
                .map(client -> (Callable<Answer>) () -> client.post(
                        API + "/vehicles/" + vehicle.id() + "/drives",
                        Shop.body("2026-06-02T08:00:00Z", Shop.RAN_CLEAN),
                        "Idempotency-Key",
                        key))
                .toList());
        assertThat(answers).allSatisfy(a -> a.is(201));
        assertThat(answers.stream().map(Answer::body).distinct()).hasSize(1);
        assertThat(answers.stream().map(a -> a.header("Idempotency-Replayed")))
                .containsExactlyInAnyOrder("", "true", "true");
    }

    /** The same drive under several keys is taken once, and the others are told so. */
    @Test
    void oneDriveUnderSeveralKeysIsOneDrive() throws Exception {
        Answer vehicle = new Shop(clients.get(0)).vehicle("recorded once, sent by all");
        List<Answer> answers = atOnce(same(
                PEOPLE,
                () -> post(
                        "/vehicles/" + vehicle.id() + "/drives", Shop.body("2026-06-02T08:00:00Z", Shop.RAN_CLEAN))));
        assertThat(answers).allSatisfy(a -> assertThat(a.status()).as(a.body()).isIn(200, 201));
        assertThat(answers.stream().filter(a -> a.status() == 201)).hasSize(1);
        assertThat(answers.stream().map(Answer::id).distinct()).hasSize(1);
    }

    /** From the vehicle to the drives that prove the repair, each step at another instance. */
    private Callable<List<Answer>> person(int number) {
        return () -> {
            List<Answer> all = new ArrayList<>();
            Answer vehicle = kept(all, post("/vehicles", details("person " + number, number)));
            Answer job = kept(
                    all,
                    post("/jobs", "{\"vehicleId\":\"%s\",\"faults\":[{\"code\":\"P0420\"}]}".formatted(vehicle.id())));
            String jobPath = "/jobs/" + job.id();
            kept(
                    all,
                    next().put(
                                    API + jobPath + "/notifications",
                                    "{\"technicianEmail\":\"t%1$d@shop.example\",\"driverEmail\":\"d%1$d@shop.example\"}"
                                            .formatted(number % 5),
                                    "If-Match",
                                    "*"));
            kept(
                    all,
                    post(
                            jobPath + "/repairs",
                            "{\"performedAt\":\"2026-06-01T10:00:00Z\",\"description\":\"catalyst\",\"codesCleared\":true}"));
            kept(all, form("by form " + number, number));
            for (int day = 2; day < 4; day++) {
                kept(
                        all,
                        post(
                                "/vehicles/" + vehicle.id() + "/drives",
                                Shop.body("2026-06-0" + day + "T08:00:00Z", Shop.RAN_CLEAN)));
            }
            kept(all, post("/log-mappings", mapping("column " + number)));
            kept(all, post(jobPath + "/follow-ups", "{\"dueAt\":\"2026-09-01T10:00:00Z\",\"note\":\"call\"}"));
            kept(all, post(jobPath + "/driver-link", ""));
            kept(all, post("/calendar-link", ""));
            kept(all, next().put(API + "/vehicles/" + vehicle.id(), details("changed", number + 200), "If-Match", "*"));
            return all;
        };
    }

    private static Answer kept(List<Answer> all, Answer answer) {
        all.add(answer);
        return answer;
    }

    private static String details(String description, int number) {
        return "{\"description\":\"%s\",\"vin\":\"WVWZZZ1KZ7M%06d\"}".formatted(description, number);
    }

    private static String mapping(String header) {
        return """
                {"name": "m", "headers": ["t", "%1$s"], "mapping": {"timeColumn": "t", "timeFormat": "ISO_WITH_OFFSET",
                 "decimalMark": "POINT",
                 "columns": [{"header": "%1$s", "signal": "ENGINE_SPEED", "unit": "REVOLUTIONS_PER_MINUTE"}]}}""".formatted(header);
    }

    private Answer form(String name, int number) {
        Client client = next();
        String page = client.get("/jobs/new").is(200).body();
        String token = Repetition.hidden(page, "formToken");
        String fields = "formToken=%s&once=%s&description=%s&vin=WVWZZZ1KZ7M%06d&faults[0].code=P0420"
                .formatted(token, Repetition.hidden(page, "once"), name.replace(' ', '+'), number + 100);
        return client.send(
                "POST",
                "/jobs/new",
                "application/x-www-form-urlencoded",
                fields.getBytes(StandardCharsets.US_ASCII),
                "Cookie",
                "stayfixed-form=" + token);
    }

    /** With a key of its own, at the next instance. */
    private Answer post(String path, String json) {
        return next().post(
                        API + path, json, "Idempotency-Key", UUID.randomUUID().toString());
    }

    private Client next() {
        return clients.get(turn.getAndIncrement() % clients.size());
    }

    private static <T> List<Callable<T>> same(int times, Callable<T> request) {
        return Collections.nCopies(times, request);
    }

    private static <T> List<T> atOnce(List<Callable<T>> requests) throws Exception {
        CyclicBarrier start = new CyclicBarrier(requests.size());
        ExecutorService pool = Executors.newFixedThreadPool(requests.size());
        try {
            List<Future<T>> running = requests.stream()
                    .map(request -> pool.submit(() -> {
                        start.await(60, TimeUnit.SECONDS);
                        return request.call();
                    }))
                    .toList();
            List<T> answers = new ArrayList<>();
            for (Future<T> one : running) {
                answers.add(one.get());
            }
            return answers;
        } finally {
            pool.shutdownNow();
        }
    }
}
