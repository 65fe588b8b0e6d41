package dev.stayfixed.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Who may open the driver's page, until when, and what it tells. */
abstract class DriverLinkStories extends OverHttp {

    private static final String DRIVE =
            "{\"start\":\"2026-06-03T08:00\",\"minutes\":\"35\",\"record\":\"41 41 00 07 65 00\\n47 00\\n43 00\"}";

    /** A vehicle identification number is registered once. */
    private static final AtomicInteger VEHICLES = new AtomicInteger();

    private Answer vehicle;
    private Answer job;

    @BeforeEach
    void aJob() {
        String vin = "1HGCM82633A%06d".formatted(VEHICLES.incrementAndGet());
        vehicle = client.post(
                        "/api/v1/vehicles",
                        "{\"description\":\"grey estate\",\"plate\":\"KB 4711\",\"vin\":\"%s\"}".formatted(vin))
                .is(201);
        job = client.post(
                        "/api/v1/jobs",
                        "{\"vehicleId\":\"%s\",\"reference\":\"W-77\",\"complaint\":\"rattles\",\"customer\":\"M. Okafor\",\"faults\":[{\"code\":\"P0420\"}]}"
                                .formatted(vehicle.id()))
                .is(201);
        shop.repair(job, "2026-06-01T10:00:00Z");
    }

    private String link() {
        String url = client.post("/api/v1/jobs/" + job.id() + "/driver-link", "")
                .is(201)
                .at("/url");
        return url.substring(url.indexOf("/d/"));
    }

    @Test
    void thePageNamesNoPersonNoVehicleAndNoJob() {
        String body = client.get(link()).is(200).body();
        assertThat(body).contains("catalytic converter", "P0420", "Only use this page when you are parked");
        assertThat(body)
                .doesNotContain("KB 4711", "1HGCM", "grey estate", "Okafor", "rattles", "W-77", job.id(), vehicle.id());
    }

    @Test
    void theTokenCannotBeGuessedAndIsNotKept() {
        String token = link().substring(3);
        assertThat(token).matches("[A-Za-z0-9_-]{24}");
        assertThat(jdbc.sql("select count(*) from driver_link where token_hash like ?")
                        .param("%" + token + "%")
                        .query(Long.class)
                        .single())
                .isZero();
        String other = (token.charAt(0) == 'A' ? 'B' : 'A') + token.substring(1);
        assertThat(client.get("/d/" + other).is(404).body()).doesNotContain("P0420");
        client.post("/d/" + other + "/drives", DRIVE).isProblem(404, "not-found");
    }

    @Test
    void aLinkOutlastsItsJobAndEndsWhenItIsRevoked() {
        String first = link();
        String second = link();
        client.get(first).is(200);
        Answer closed = shop.close(job, "{\"reason\":\"sold\"}").is(200);
        assertThat(client.get(first).is(200).body())
                .contains("before the repair was proven", "The lamp has come on")
                .doesNotContain("the repair is proven", "Nothing more");
        String report = client.post(first + "/drives", "{\"card\":\"lamp\",\"lamp\":\"on\"}")
                .is(200)
                .at("/driveId");
        assertThat(client.get("/api/v1/drives/" + report).is(200).body()).contains("LAMP_NEWLY_ON");
        assertThat(client.get("/").is(200).body()).contains("Have the codes read before anything is cleared.");
        assertThat(client.get(first + "?logged=lamp&drive=" + report).is(200).body())
                .contains("Your drive is logged.", "Since the repair the warning lamp or a code showed.");
        client.post("/api/v1/jobs/" + job.id() + "/driver-link", "").isProblem(409, "job-closed");
        client.post("/api/v1/jobs/" + job.id() + "/reopen", "{\"reason\":\"back\"}", "If-Match", closed.etag())
                .is(200);
        client.get(second).is(200);
        client.send("DELETE", "/api/v1/jobs/" + job.id() + "/driver-link", "", new byte[0])
                .is(204);
        assertThat(client.get(second).is(410).body()).contains("withdrawn");
        client.post(second + "/drives", DRIVE).isProblem(410, "link-ended");
    }

    @Test
    void aLinkThatIsRenewedWorksAgainAndOneThatWasEndedDoesNot() {
        String link = link();
        jdbc.sql("update driver_link set issued_at = ?, expires_at = ? where job_id = ?")
                .params(
                        OffsetDateTime.parse("2026-01-01T00:00:00Z"),
                        OffsetDateTime.parse("2026-01-02T00:00:00Z"),
                        UUID.fromString(job.id()))
                .update();
        assertThat(client.get(link).is(410).body()).contains("has run out");
        String renewal = "/api/v1/jobs/" + job.id() + "/driver-link/renewal";
        assertThat(client.post(renewal, "").is(200).at("/links")).isEqualTo("1");
        client.get(link).is(200);
        client.send("DELETE", "/api/v1/jobs/" + job.id() + "/driver-link", "", new byte[0])
                .is(204);
        assertThat(client.post(renewal, "").is(200).at("/links")).isEqualTo("0");
        client.get(link).is(410);
    }

    /** Two records less than an hour apart, without counters, may be one driving cycle, whatever is reported between them. */
    @Test
    void aLampThatIsReportedInBetweenMakesNoTwoTripsOfOneCycle() {
        for (String reported : List.of("on", "off")) {
            Answer car = shop.vehicle("stop and go " + reported);
            Answer proving = shop.job(car);
            shop.repair(proving, "2026-06-01T10:00:00Z");
            String url = client.post("/api/v1/jobs/" + proving.id() + "/driver-link", "")
                    .is(201)
                    .at("/url");
            shop.drive(car, "2026-06-03T08:00:00Z", Shop.RAN_CLEAN).is(201);
            client.post(
                            url.substring(url.indexOf("/d/")) + "/drives",
                            "{\"card\":\"lamp\",\"lamp\":\"%s\",\"end\":\"2026-06-03T08:40\"}".formatted(reported))
                    .is(200);
            shop.drive(car, "2026-06-03T08:50:00Z", Shop.RAN_CLEAN).is(201);
            assertThat(shop.standing(proving)).as(reported).isEqualTo("1 of 2 clean trips");
        }
    }

    /** Whether a record is of this vehicle is for the workshop to answer, whatever a paste says. */
    @Test
    void aPasteCannotVouchForTheVehicle() {
        String link = link();
        String drive =
                "{\\\"start\\\":\\\"2026-06-03T08:00:00Z\\\",%s\\\"scans\\\":[{\\\"text\\\":\\\"41 41 00 07 65 00\\\"}]}";
        Answer vouched = client.post(
                link + "/drives", "{\"record\":\"" + drive.formatted("\\\"sameVehicleConfirmed\\\":true,") + "\"}");
        assertThat(vouched.isProblem(422, "invalid-content").body()).contains("do not fit together");
        assertThat(client.get("/api/v1/vehicles/" + vehicle.id() + "/drives")
                        .json()
                        .at("/items"))
                .isEmpty();
        client.post(link + "/drives", "{\"record\":\"" + drive.formatted("") + "\"}")
                .is(200);
    }

    @Test
    void theAnswerSaysWhatTheDriveCountsFor() {
        String link = link();
        String counted = client.post(link + "/drives", DRIVE).is(200).at("/driveId");
        assertThat(client.get(link + "?logged=reading&drive=" + counted).is(200).body())
                .contains(
                        "Your drive is logged.", "counts, the car checked it and found it good", "The repair has held")
                .doesNotContain("What it counts for stands at the end");
        String other = shop.drive(vehicle, "2026-06-05T08:00:00Z", Shop.RAN_CLEAN)
                .is(201)
                .id();
        assertThat(client.get(link + "?logged=reading&drive=" + other).is(200).body())
                .contains("What it counts for stands at the end");
        for (String odd : List.of("what", "", "-".repeat(36), "0".repeat(4000))) {
            client.get(link + "?logged=reading&drive=" + odd).is(200);
        }
    }

    @Test
    void aDriveOfTheQueueIsTakenOnceAndJudgedLikeAnyOther() {
        String link = link();
        client.post(link + "/drives", DRIVE, "Idempotency-Key", "q-" + job.id()).is(200);
        Answer again = client.post(link + "/drives", DRIVE, "Idempotency-Key", "q-" + job.id())
                .is(200);
        assertThat(again.header("Idempotency-Replayed")).isEqualTo("true");
        assertThat(shop.standing(job)).isEqualTo("1 of 2 clean trips");
        assertThat(client.post("/api/v1/jobs/" + job.id() + "/report", "")
                        .is(201)
                        .at("/facts/faults/0/attempts/0/steps/0/by"))
                .isEqualTo("DRIVER");
    }

    @Test
    void aRefusalTellsTheDriverNothingOfTheVehicle() {
        String scan = "49 02 01 57 41 55 5A 5A 5A 38 4B 39 41 41 30 30 30 30 30 30";
        Answer refused = client.post(
                link() + "/drives", "{\"start\":\"2026-06-03T08:00\",\"minutes\":\"5\",\"record\":\"" + scan + "\"}");
        assertThat(refused.status()).isBetween(400, 499);
        assertThat(refused.body()).doesNotContain("1HGCM");
    }

    @Test
    void whoAsksTooOftenIsToldToWait() {
        String link = link();
        Answer slow = client.post(link + "/drives", "{}");
        for (int i = 0; i < 1_000 && slow.status() == 422; i++) {
            slow = client.post(link + "/drives", "{}");
        }
        slow.isProblem(429, "too-many-requests");
        assertThat(Integer.parseInt(slow.header("Retry-After"))).isPositive();
    }

    @Test
    void theManifestAndTheWorkerHaveTheirTypes() {
        String link = link();
        Answer manifest = client.get(link + "/app.webmanifest").is(200);
        assertThat(manifest.header("Content-Type")).startsWith("application/manifest+json");
        assertThat(manifest.at("/start_url")).isEqualTo(link);
        Answer worker = client.get("/d/worker.js").is(200);
        assertThat(worker.header("Content-Type")).startsWith("text/javascript");
        assertThat(worker.body().length()).isLessThan(800);
    }
}
