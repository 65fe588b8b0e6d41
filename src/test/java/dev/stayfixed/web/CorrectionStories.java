package dev.stayfixed.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;

/** What people type is sometimes wrong, and can be put right. */
abstract class CorrectionStories extends OverHttp {

    private Answer repaired(Answer job, String body) {
        return client.post("/api/v1/jobs/" + job.id() + "/repairs", body).is(201);
    }

    private Answer correct(Answer job, Answer repair, String body) {
        return client.put(address(job, repair), body, "If-Match", shop.see(job).etag());
    }

    private static String address(Answer job, Answer repair) {
        return "/api/v1/jobs/" + job.id() + "/repairs/" + repair.id();
    }

    private java.util.List<String> told(Answer job) {
        java.util.List<String> told = new java.util.ArrayList<>();
        client.get("/api/v1/inbox?limit=200").is(200).json().at("/items").forEach(event -> {
            if (event.at("/jobId").asString("").equals(job.id())) {
                told.add(event.at("/kind").asString() + " | "
                        + event.at("/summary").asString());
            }
        });
        java.util.Collections.reverse(told);
        return told;
    }

    @Test
    void aRepairTypedADayEarlyIsPutRightAndTheVerdictIsRevised() {
        Answer vehicle = shop.vehicle("2012 estate, wrong date");
        Answer job = shop.job(vehicle);
        Answer repair = shop.repair(job, "2026-06-01T10:00:00Z");
        shop.drive(vehicle, "2026-06-02T08:00:00Z", Shop.RAN_AND_FAILED).is(201);
        shop.drive(vehicle, "2026-06-03T08:00:00Z", Shop.RAN_AND_CONFIRMED).is(201);
        assertThat(shop.standing(job)).isEqualTo("recurred");

        Answer right = correct(
                        job,
                        repair,
                        "{\"performedAt\":\"2026-06-03T16:00:00Z\",\"correctedBy\":\"R. Imre\",\"reason\":\"typed a wrong day\"}")
                .is(200);
        assertThat(right.etag()).isEqualTo(shop.see(job).etag());
        assertThat(right.at("/performedAt")).isEqualTo("2026-06-03T16:00:00Z");
        assertThat(right.at("/description")).isEqualTo("catalyst replaced");
        JsonNode change = right.json().at("/changes/0");
        assertThat(change.at("/field").asString()).isEqualTo("PERFORMED_AT");
        assertThat(change.at("/before").asString()).isEqualTo("2026-06-01T10:00:00Z");
        assertThat(change.at("/after").asString()).isEqualTo("2026-06-03T16:00:00Z");
        assertThat(change.at("/by").asString()).isEqualTo("R. Imre");
        assertThat(change.at("/reason").asString()).isEqualTo("typed a wrong day");
        assertThat(change.at("/at").asString()).isEqualTo("2026-06-30T12:00:00Z");
        assertThat(shop.standing(job)).isEqualTo("waiting for its first trip");
        assertThat(told(job).get(told(job).size() - 1))
                .startsWith("VERDICT_REVISED")
                .contains("Before: recurred. Now: waiting for its first trip.")
                .contains("the record of the repair was corrected");
    }

    @Test
    void everyFieldOfARepairCanBePutRightAndWhatStoodThereIsKept() {
        Answer vehicle = shop.vehicle("2012 van, wrong figures");
        Answer job = shop.job(vehicle);
        Answer repair = repaired(
                job,
                "{\"performedAt\":\"2026-06-01T10:00:00Z\",\"description\":\"heater\",\"parts\":[\"sensor\"],\"codesCleared\":true,"
                        + "\"technician\":\"A\",\"scanBefore\":\"43 01 04 20\",\"measurements\":[{\"quantity\":\"resistance\","
                        + "\"unit\":\"Ω\",\"before\":\"OPEN\",\"after\":61}]}");
        Answer right = correct(
                        job,
                        repair,
                        "{\"description\":\"heater circuit mended\",\"parts\":[],\"codesCleared\":false,\"technician\":\"\","
                                + "\"scanBefore\":\"\",\"scanAfter\":\"43 00\",\"measurements\":[{\"quantity\":\"resistance\","
                                + "\"point\":\"pins 3-4\",\"unit\":\"Ω\",\"expectedMin\":5,\"before\":\"OPEN\",\"after\":6.1,"
                                + "\"testLeadsVerified\":true}]}")
                .is(200);
        java.util.List<String> changes = new java.util.ArrayList<>();
        right.json()
                .at("/changes")
                .forEach(change -> changes.add(change.at("/field").asString() + ": "
                        + change.at("/before").asString() + " -> "
                        + change.at("/after").asString()));
        assertThat(changes)
                .containsExactly(
                        "DESCRIPTION: heater -> heater circuit mended",
                        "PARTS: sensor -> ",
                        "TECHNICIAN: A -> ",
                        "CODES_CLEARED: yes -> no",
                        "SCAN_BEFORE: 43 01 04 20 -> ",
                        "SCAN_AFTER:  -> 43 00",
                        "MEASUREMENTS: resistance: before OPEN, after 61.0 Ω -> resistance, pins 3-4: before OPEN, after 6.1 Ω,"
                                + " expected 5.0 to any, test leads verified");
        assertThat(right.json().at("/measurements/0/after").asDouble()).isEqualTo(6.1);
        assertThat(shop.see(job).json().at("/repairs/0/changes")).hasSize(7);

        Answer again = correct(job, repair, "{\"description\":\"heater circuit, mended\"}")
                .is(200);
        assertThat(again.json().at("/changes")).hasSize(8);
        String etag = shop.see(job).etag();
        correct(job, repair, "{\"description\":\"heater circuit, mended\",\"reason\":\"nothing\"}")
                .is(200);
        assertThat(shop.see(job).etag()).as("nothing differs").isEqualTo(etag);
    }

    @Test
    void aCorrectionThatCannotBeIsRefused() {
        Answer vehicle = shop.vehicle("2012 coupe");
        Answer job = shop.job(vehicle);
        Answer repair = shop.repair(job, "2026-06-01T10:00:00Z");
        String address = address(job, repair);
        client.put(address, "{}").isProblem(428, "precondition-required");
        client.put(address, "{}", "If-Match", "\"77\"").isProblem(412, "version-changed");
        client.put(address, "{\"performedAt\":\"2026-07-30T10:00:00Z\"}", "If-Match", "*")
                .isProblem(422, "time-in-future");
        client.put(address, "{\"description\":\" \"}", "If-Match", "*").isProblem(422, "invalid-content");
        client.put(address, "{\"colour\":1}", "If-Match", "*").isProblem(422, "invalid-content");
        client.put("/api/v1/jobs/" + job.id() + "/repairs/" + job.id(), "{}", "If-Match", "*")
                .isProblem(404, "not-found");
        shop.close(job, "{\"reason\":\"sold\"}").is(200);
        client.put(address, "{\"description\":\"other\"}", "If-Match", "*").isProblem(409, "job-closed");
        assertThat(shop.see(job).json().at("/repairs/0/changes")).isEmpty();
    }

    @Test
    void theScanThatOpensAJobIsAReading() {
        // $03 and $07 list P0420, MIL on; the codes were not cleared, so the same lists afterwards are no news
        String stored = "43 01 04 20\\n47 01 04 20\\n41 01 81 07 65 00";
        Answer vehicle = shop.vehicle("2012 hatchback, opened with a scan");
        Answer job = client.post(
                        "/api/v1/jobs",
                        "{\"vehicleId\":\"%s\",\"openedAt\":\"2026-06-01T08:00:00Z\",\"scan\":\"%s\"}"
                                .formatted(vehicle.id(), stored))
                .is(201);
        repaired(job, "{\"performedAt\":\"2026-06-01T10:00:00Z\",\"description\":\"catalyst\",\"codesCleared\":false}");
        Answer drive = shop.drive(vehicle, "2026-06-02T08:00:00Z", stored).is(201);
        assertThat(drive.at("/effects/0/outcome")).isNotIn("FAILED", "FAILED_CONFIRMED");
        assertThat(shop.standing(job)).isEqualTo("waiting for its first trip");
    }
}
