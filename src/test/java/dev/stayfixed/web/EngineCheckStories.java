package dev.stayfixed.web;

import static dev.stayfixed.web.RecordedDrive.CSV;
import static dev.stayfixed.web.RecordedDrive.bytes;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Checks with the engine running: stated for a fault, recorded before and after its repair, part of the bench proof. */
abstract class EngineCheckStories extends OverHttp {

    private static final String REPAIRED = "2026-06-01T10:00:00Z";

    private Answer vehicle;
    private Answer job;

    @BeforeEach
    void open() {
        vehicle = shop.vehicle("car with a thermostat");
        job = shop.job(vehicle, "{\"code\":\"P0128\"}");
    }

    private Answer drive(String start, double warmRate) {
        return client.send(
                        "POST",
                        "/api/v1/vehicles/" + vehicle.id() + "/drives",
                        CSV,
                        bytes(RecordedDrive.log(start, 100, warmRate)))
                .is(201);
    }

    private String checks() {
        return "/api/v1/jobs/" + job.id() + "/engine-checks";
    }

    private Answer state(String figures) {
        return client.post(checks(), "{\"faultId\":\"%s\"%s}".formatted(job.at("/faults/0/id"), figures));
    }

    private Answer choose(Answer check, String side, String driveId) {
        return client.post(
                checks() + "/" + check.id() + "/runs", "{\"side\":\"%s\",\"driveId\":\"%s\"}".formatted(side, driveId));
    }

    private Answer see(Answer check) {
        return client.get(checks() + "/" + check.id()).is(200);
    }

    private String bench() {
        return shop.verdicts(job).at("/faults/0/proofs/bench/result");
    }

    @Test
    void theWarmUpBeforeTheRepairStandsBesideTheOneAfterIt() {
        Answer slow = drive("2026-05-30T08:00:00Z", 0.03);
        Answer check = state(",\"preset\":\"WARM_UP\"").is(201);
        assertThat(check.header("Location")).endsWith(checks() + "/" + check.id());
        assertThat(check.at("/figures")).contains("common practice; service information overrides them");
        assertThat(check.at("/said")).isEqualTo("warm-up: before the repair not recorded; after it not recorded");
        Answer before = choose(check, "BEFORE", slow.id()).is(200);
        assertThat(before.at("/before/inside")).as(before.body()).isEqualTo("NO");
        assertThat(before.at("/before/reason"))
                .isEqualTo("did not reach 71 °C: 65 °C at most in 24 min 59 s, 15 min allowed");

        shop.repair(job, REPAIRED);
        assertThat(bench()).isEqualTo("INCOMPLETE");
        Answer fast = drive("2026-06-02T08:00:00Z", 0.15);
        choose(check, "AFTER", slow.id()).isProblem(422, "invalid-content");
        choose(check, "BEFORE", fast.id()).isProblem(422, "invalid-content");
        Answer after = choose(check, "AFTER", fast.id()).is(200);
        assertThat(after.at("/after/inside")).isEqualTo("YES");
        assertThat(after.at("/after/reason")).isEqualTo("reached 71 °C after 5 min 37 s, 15 min allowed");
        assertThat(bench()).isEqualTo("COMPLETE");
        assertThat(client.get(checks()).is(200).json()).hasSize(1);

        Answer report = client.post("/api/v1/jobs/" + job.id() + "/report", "").is(201);
        assertThat(report.at("/facts/faults/0/checks/0/said"))
                .contains("before the repair did not reach 71 °C", "after it reached 71 °C after 5 min 37 s");
        assertThat(report.json().at("/facts/faults/0/checks/0/picture/before").asString())
                .matches("(\\d+,\\d+ ?)+");
    }

    @Test
    void aRunCountsOnlyAsLongAsItsDriveAndTheRepairStandAsTheyDid() {
        shop.repair(job, REPAIRED);
        Answer check = state(",\"preset\":\"WARM_UP\"").is(201);
        Answer slow = drive("2026-06-02T08:00:00Z", 0.03);
        choose(check, "AFTER", slow.id()).is(200);
        assertThat(bench()).isEqualTo("CONTRADICTING");

        client.put("/api/v1/drives/" + slow.id() + "/left-out", "{\"reason\":\"another car\"}")
                .is(200);
        assertThat(see(check).at("/fallen/0")).contains("its drive was left out or its record corrected");
        assertThat(bench()).isEqualTo("INCOMPLETE");
        choose(check, "AFTER", slow.id()).isProblem(422, "invalid-content");
        client.send("DELETE", "/api/v1/drives/" + slow.id() + "/left-out", "", new byte[0])
                .is(200);
        assertThat(bench()).isEqualTo("CONTRADICTING");

        shop.repair(job, "2026-06-03T10:00:00Z");
        assertThat(see(check).at("/fallen/0")).contains("because the latest repair is of 3 June 2026");
        assertThat(bench()).isEqualTo("INCOMPLETE");
        choose(check, "BEFORE", slow.id()).is(200);
        Answer fast = drive("2026-06-04T08:00:00Z", 0.15);
        Answer mended = choose(check, "AFTER", fast.id()).is(200);
        assertThat(mended.json().at("/replaced")).hasSize(1);
        assertThat(mended.at("/replaced/0/inside")).isEqualTo("NO");
        assertThat(bench()).isEqualTo("COMPLETE");
    }

    @Test
    void figuresAreTypicalOrSomebodysAndAWithdrawnCheckStaysOnFile() {
        shop.repair(job, REPAIRED);
        state(",\"preset\":\"WARM_UP\",\"target\":82").isProblem(422, "invalid-content");
        state(",\"preset\":\"OWN_SIGNAL\",\"signal\":\"COOLANT\",\"min\":80,\"source\":\"section 4\"")
                .isProblem(422, "invalid-content");
        state(",\"preset\":\"WARM_UP\",\"target\":10,\"source\":\"section 4\"").isProblem(422, "invalid-content");
        state(",\"preset\":\"CHARGING_VOLTAGE\",\"min\":15,\"max\":12,\"source\":\"section 4\"")
                .isProblem(422, "invalid-content");
        state(",\"preset\":\"WARM_UP\",\"minutes\":0").isProblem(422, "invalid-content");
        client.post(checks(), "{\"faultId\":\"%s\",\"preset\":\"WARM_UP\"}".formatted(UUID.randomUUID()))
                .isProblem(404, "not-found");
        Answer own = state(",\"preset\":\"OWN_SIGNAL\",\"signal\":\"AMBIENT\",\"min\":20,\"state\":\"CRUISE\","
                        + "\"minutes\":0.5,\"source\":\"section 4\"")
                .is(201);
        assertThat(own.at("/wanted"))
                .isEqualTo("ambient temperature at least 20 °C at cruise for nine tenths of at least 30 s");
        Answer drive = drive("2026-06-02T08:00:00Z", 0.15);
        assertThat(choose(own, "AFTER", drive.id()).is(200).at("/after/reason"))
                .startsWith("inside at least 20 °C for only 0 % of");
        assertThat(bench()).isEqualTo("CONTRADICTING");

        Answer trims = state(",\"preset\":\"IDLE_TRIMS\"").is(201);
        assertThat(choose(trims, "AFTER", drive.id()).is(200).at("/after/reason"))
                .isEqualTo("long-term fuel trim, bank 1 was not recorded, so the run does not tell");

        String withdrawn = checks() + "/" + own.id() + "/withdrawn";
        client.put(withdrawn, "{\"reason\":\" \"}").isProblem(422, "invalid-content");
        client.put(withdrawn, "{\"reason\":\"the wrong section\"}").is(200);
        client.put(withdrawn, "{\"reason\":\"once more\"}").isProblem(422, "invalid-content");
        choose(own, "AFTER", drive.id()).isProblem(422, "invalid-content");
        assertThat(see(own).at("/withdrawn/reason")).isEqualTo("the wrong section");
        assertThat(bench()).isEqualTo("INCOMPLETE");
        assertThat(client.post("/api/v1/jobs/" + job.id() + "/report", "")
                        .is(201)
                        .json()
                        .at("/facts/faults/0/checks")
                        .findValuesAsString("withdrawn"))
                .singleElement()
                .asString()
                .contains("the wrong section");
    }

    @Test
    void whatIsNoRunOfThisVehicleIsRefused() {
        Answer check = state(",\"preset\":\"WARM_UP\"").is(201);
        Answer plain =
                shop.drive(vehicle, "2026-05-02T08:00:00Z", Shop.RAN_CLEAN).is(201);
        choose(check, "BEFORE", plain.id()).isProblem(422, "invalid-content");
        choose(check, "BEFORE", UUID.randomUUID().toString()).isProblem(404, "not-found");
        choose(check, "SIDEWAYS", plain.id()).isProblem(422, "invalid-content");
        Answer own = vehicle;
        vehicle = shop.vehicle("another car");
        Answer other = drive("2026-05-02T08:00:00Z", 0.15);
        vehicle = own;
        choose(check, "BEFORE", other.id()).isProblem(422, "invalid-content");
        shop.close(job, "{\"reason\":\"sold\"}").is(200);
        state(",\"preset\":\"WARM_UP\"").isProblem(409, "job-closed");
        client.get(checks() + "/" + UUID.randomUUID()).isProblem(404, "not-found");
    }
}
