package dev.stayfixed.web;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.platform.storage.Durably;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;

/** Requests that come twice, one after the other or at the same time, take effect once. */
abstract class Repetition extends OverHttp {

    @Autowired
    Durably durably;

    private static final String V = "/api/v1/vehicles";

    @Test
    void theSameKeyGivesTheSameAnswer() {
        String key = "\"" + UUID.randomUUID() + "\"";
        String body = "{\"description\":\"sent twice, citroën\"}";
        Answer first = client.post(V, body, "Idempotency-Key", key).is(201);
        Answer second = client.post(V, body, "Idempotency-Key", key).is(201);
        assertThat(second.body()).isEqualTo(first.body());
        assertThat(second.header("Location")).isEqualTo(first.header("Location"));
        assertThat(second.etag()).isEqualTo(first.etag());
        assertThat(second.header("Content-Type")).isEqualTo(first.header("Content-Type"));
        assertThat(first.header("Idempotency-Replayed")).isEmpty();
        assertThat(second.header("Idempotency-Replayed")).isEqualTo("true");
        assertThat(client.post(V, body, "Idempotency-Key", key.replace("\"", ""))
                        .id())
                .as("quotes are no part of the key")
                .isEqualTo(first.id());
        client.post(V, "{\"description\":\"another\"}", "Idempotency-Key", key)
                .isProblem(422, "idempotency-key-reused");
        client.post("/api/v1/scans", body, "Idempotency-Key", key).isProblem(422, "idempotency-key-reused");
    }

    @Test
    void anAnswerSealedWithALostKeyIsSaidToBeLostAndNothingIsDoneTwice() {
        String key = UUID.randomUUID().toString();
        String body = "{\"description\":\"sealed " + key + "\"}";
        client.post(V, body, "Idempotency-Key", key).is(201);
        assertThat(jdbc.sql("update idempotency_key set body = replace(body, 'sealed:1:', 'sealed:1:0') where name = ?")
                        .param(key)
                        .update())
                .isOne();
        assertThat(client.post(V, body, "Idempotency-Key", key)
                        .isProblem(409, "answer-lost")
                        .at("/detail"))
                .contains(key, "was carried out and is not repeated", "stayfixed.secret-key");
        client.post(V, "{\"description\":\"another\"}", "Idempotency-Key", key)
                .isProblem(422, "idempotency-key-reused");
        assertThat(client.get(V + "?q=" + key).json().at("/items")).hasSize(1);
    }

    @Test
    void whoIsSlowerThanOthersIsServedAllTheSame() {
        String path = "/planted-failure/conflict?times=%d&name=" + UUID.randomUUID();
        assertThat(client.post(path.formatted(3) + "alone", "").is(200).body()).isEqualTo("try 4");
        String key = UUID.randomUUID().toString();
        for (int i = 0; i < 2; i++) {
            assertThat(client.post(path.formatted(3) + "keyed", "", "Idempotency-Key", key)
                            .is(200)
                            .body())
                    .isEqualTo("try 4");
        }
    }

    @Test
    void whoIsSlowerEachTimeIsAskedToComeBack() {
        String path = "/planted-failure/conflict?times=99&name=" + UUID.randomUUID();
        Answer alone = client.post(path, "").isProblem(503, "busy");
        Answer keyed = client.post(
                        path, "", "Idempotency-Key", UUID.randomUUID().toString())
                .isProblem(503, "busy");
        assertThat(List.of(alone.header("Retry-After"), keyed.header("Retry-After")))
                .containsOnly("1");
    }

    @Test
    void aFormOfThePagesSentSeveralTimesAtOnceOpensOneJob() throws Exception {
        String page = client.get("/jobs/new").is(200).body();
        String token = hidden(page, "formToken");
        String once = hidden(page, "once");
        String name = "Coach " + once;
        byte[] fields = "formToken=%s&once=%s&description=%s&faults[0].code=P0420"
                .formatted(token, once, name.replace(' ', '+'))
                .getBytes(StandardCharsets.US_ASCII);
        Callable<Answer> send = () -> client.send(
                "POST", "/jobs/new", "application/x-www-form-urlencoded", fields, "Cookie", "stayfixed-form=" + token);
        List<Answer> answers = new ArrayList<>(atOnce(5, send));
        answers.add(send.call());
        assertThat(answers)
                .allSatisfy(a -> assertThat(a.is(302).header("Location")).contains("/jobs/"));
        assertThat(answers.stream().map(a -> a.header("Location")))
                .containsOnly(answers.get(0).header("Location"));
        assertThat(client.get(V + "?q=" + once).json().at("/items")).hasSize(1);
    }

    static String hidden(String page, String field) {
        Matcher value = Pattern.compile("name=\"" + field + "\" value=\"([0-9a-f]{32})\"")
                .matcher(page);
        assertThat(value.find()).as(field).isTrue();
        return value.group(1);
    }

    @Test
    void aRefusedRequestLeavesItsKeyFree() {
        String key = UUID.randomUUID().toString();
        client.post(V, "{}", "Idempotency-Key", key).isProblem(422, "invalid-content");
        client.post(V, "{\"description\":\"now right\"}", "Idempotency-Key", key)
                .is(201);
    }

    @Test
    void theSameKeyAtTheSameTimeTakesEffectOnce() throws Exception {
        String key = UUID.randomUUID().toString();
        String description = "at once " + key;
        List<Answer> answers =
                atOnce(6, () -> client.post(V, "{\"description\":\"" + description + "\"}", "Idempotency-Key", key));
        assertThat(answers).allSatisfy(a -> assertThat(a.status()).isIn(201, 409));
        assertThat(answers).anySatisfy(a -> assertThat(a.status()).isEqualTo(201));
        answers.stream().filter(a -> a.status() == 409).forEach(a -> a.isProblem(409, "idempotency-key-in-use"));
        assertThat(client.get(V + "?q=" + key).json().at("/items")).hasSize(1);
    }

    @Test
    void theSameKeyWhileTheFirstRequestStillRunsIsToldToWait() throws Exception {
        Answer vehicle = shop.vehicle("locked for a while");
        String key = UUID.randomUUID().toString();
        Supplier<Answer> request = () -> client.post(
                V + "/" + vehicle.id() + "/drives",
                Shop.body("2026-06-02T08:00:00Z", Shop.RAN_CLEAN),
                "Idempotency-Key",
                key);
        List<CompletableFuture<Answer>> both = new ArrayList<>();
        Answer told = durably.write(() -> {
            jdbc.sql("select id from vehicle where id = ? for update")
                    .param(UUID.fromString(vehicle.id()))
                    .query(UUID.class)
                    .single();
            both.add(CompletableFuture.supplyAsync(request, r -> new Thread(r).start()));
            both.add(CompletableFuture.supplyAsync(request, r -> new Thread(r).start()));
            return (Answer) CompletableFuture.anyOf(both.get(0), both.get(1)).join();
        });
        told.isProblem(409, "idempotency-key-in-use");
        assertThat(both.stream().map(CompletableFuture::join).map(Answer::status))
                .containsExactlyInAnyOrder(201, 409);
        assertThat(request.get().header("Idempotency-Replayed")).isEqualTo("true");
    }

    @Test
    void theSameDriveAtTheSameTimeIsStoredOnce() throws Exception {
        Answer vehicle = shop.vehicle("sent by two phones");
        Answer job = shop.job(vehicle);
        shop.repair(job, "2026-06-01T10:00:00Z");
        List<Answer> answers = atOnce(6, () -> shop.drive(vehicle, "2026-06-02T08:00:00Z", Shop.RAN_CLEAN));
        assertThat(answers).allSatisfy(a -> assertThat(a.status()).as(a.body()).isIn(200, 201));
        assertThat(answers.stream().filter(a -> a.status() == 201)).hasSize(1);
        assertThat(answers.stream().map(Answer::id).distinct()).hasSize(1);
        assertThat(shop.standing(job)).isEqualTo("1 of 2 clean trips");
    }

    @Test
    void differentDrivesAtTheSameTimeAllCount() throws Exception {
        Answer vehicle = shop.vehicle("busy");
        Answer job = shop.job(vehicle, "{\"code\":\"P0420\",\"requiredPasses\":20}");
        shop.repair(job, "2026-06-01T10:00:00Z");
        java.util.concurrent.atomic.AtomicInteger day = new java.util.concurrent.atomic.AtomicInteger(10);
        List<Answer> answers =
                atOnce(8, () -> shop.drive(vehicle, "2026-06-" + day.getAndIncrement() + "T08:00:00Z", Shop.RAN_CLEAN));
        assertThat(answers).allSatisfy(a -> a.is(201));
        assertThat(shop.standing(job)).isEqualTo("8 of 20 clean trips");
    }

    @Test
    void theSameChangeAtTheSameTimeIsMadeOnce() throws Exception {
        Answer vehicle = shop.vehicle("changed by two");
        List<Answer> answers = atOnce(
                4,
                () -> client.put(V + "/" + vehicle.id(), "{\"description\":\"changed\"}", "If-Match", vehicle.etag()));
        assertThat(answers.stream().filter(a -> a.status() == 200)).hasSize(1);
        answers.stream().filter(a -> a.status() != 200).forEach(a -> a.isProblem(412, "version-changed"));
    }

    @Test
    void oneVinIsOneVehicle() throws Exception {
        // The worked example of 49 CFR 565.15: check digit X.
        String body = "{\"description\":\"by VIN\",\"vin\":\"1M8GDM9AXKP042788\"}";
        List<Answer> answers = atOnce(4, () -> client.post(V, body));
        assertThat(answers.stream().filter(a -> a.status() == 201)).hasSize(1);
        String id = answers.stream()
                .filter(a -> a.status() == 201)
                .findFirst()
                .orElseThrow()
                .id();
        answers.stream()
                .filter(a -> a.status() != 201)
                .forEach(a -> assertThat(a.isProblem(409, "vehicle-exists").at("/existingId"))
                        .isEqualTo(id));
        // $09 02 answer of another vehicle, ISO 15765-4 multi-frame
        Answer other = client.post(
                V + "/" + id + "/drives",
                "{\"start\":\"2026-06-02T08:00:00Z\",\"scans\":[{\"text\":\"49 02 01 57 56 57 5A 5A 5A 31 4B 5A 36 57 30 30 30"
                        + " 30 30 31\"}]}");
        other.isProblem(422, "other-vehicle");
    }

    @Test
    void twoDrivesAtTheSameHourAreRefused() {
        Answer vehicle = shop.vehicle("in two places");
        Answer drive =
                shop.drive(vehicle, "2026-06-02T08:00:00Z", Shop.RAN_CLEAN).is(201);
        Answer refused =
                shop.drive(vehicle, "2026-06-02T08:10:00Z", Shop.RAN_AND_FAILED).isProblem(409, "drive-overlaps");
        assertThat(refused.at("/existingId")).isEqualTo(drive.id());
        shop.drive(vehicle, "2026-06-02T08:30:00Z", Shop.DID_NOT_RUN).is(201);
        shop.drive(vehicle, "2026-06-02T07:30:00Z", Shop.DID_NOT_RUN).is(201);
        shop.correct(drive, "2026-06-02T08:10:00Z", Shop.RAN_CLEAN).isProblem(409, "drive-overlaps");
    }

    private static List<Answer> atOnce(int times, Callable<Answer> request) throws Exception {
        CyclicBarrier start = new CyclicBarrier(times);
        ExecutorService pool = Executors.newFixedThreadPool(times);
        try {
            List<Callable<Answer>> all = java.util.Collections.nCopies(times, () -> {
                start.await(60, TimeUnit.SECONDS);
                return request.call();
            });
            List<Answer> answers = new ArrayList<>();
            for (Future<Answer> answer : pool.invokeAll(all, 120, TimeUnit.SECONDS)) {
                answers.add(answer.get());
            }
            return answers;
        } finally {
            pool.shutdownNow();
        }
    }
}
