package dev.stayfixed.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Bench proof, road proof and held so far, side by side; and tools that show words only. */
abstract class ProofStories extends OverHttp {

    private static final String MEASURED = """
            [{"check":"SUPPLY","quantity":"supply at the plug","unit":"V","expectedMin":11.5,"expectedMax":15,"after":12.4},
             {"check":"GROUND","quantity":"ground of the plug","unit":"V","expectedMax":0.2,"before":0.05},
             {"check":"PART","quantity":"resistance","unit":"Ω","expectedMin":3,"expectedMax":9,"before":"OPEN","after":%s,
              "testLeadsVerified":%s}]""";

    private Answer repaired(Answer vehicle, String after, String leads) {
        Answer job = shop.job(vehicle);
        client.post(
                        "/api/v1/jobs/" + job.id() + "/repairs",
                        "{\"performedAt\":\"2026-06-01T10:00:00Z\",\"description\":\"heater replaced\",\"codesCleared\":true,"
                                + "\"measurements\":%s}".formatted(MEASURED.formatted(after, leads)))
                .is(201);
        return job;
    }

    private void report(Answer vehicle, String start, String summary) {
        client.post(
                        "/api/v1/vehicles/" + vehicle.id() + "/drives",
                        "{\"start\":\"%s\",\"summary\":{%s}}".formatted(start, summary))
                .is(201);
    }

    @Test
    void twoProofsStandSideBySideAndTheRoadAloneDecides() {
        Answer vehicle = shop.vehicle("2012 saloon");
        Answer unrepaired = shop.verdicts(shop.job(vehicle));
        assertThat(unrepaired.at("/faults/0/proofs/road/state")).isEqualTo("AWAITING_REPAIR");
        assertThat(unrepaired.json().at("/faults/0/proofs").has("bench")).isFalse();

        Answer job = repaired(vehicle, "5.5", "true");
        Answer before = shop.verdicts(job);
        assertThat(before.at("/faults/0/proofs/bench/result")).isEqualTo("COMPLETE");
        assertThat(before.at("/faults/0/proofs/bench/reason"))
                .contains("the old part was not (open, expected 3 to 9 Ω)");
        assertThat(before.at("/faults/0/proofs/road/words")).isEqualTo("waiting for its first trip");
        assertThat(before.at("/faults/0/proofs/held/words")).startsWith("Nothing to count yet");

        report(vehicle, "2026-06-02T08:00:00Z", "\"runTime\":1800,\"distance\":42,\"milOn\":false");
        Answer after = shop.verdicts(job);
        assertThat(after.at("/faults/0/proofs/held/words"))
                .isEqualTo(
                        "Held so far for 42 km, 1 start and 0 days with the lamp off and no code; weaker than proof.");
        assertThat(after.at("/faults/0/proofs/road/state")).isEqualTo("WAITING_FOR_FIRST_TRIP");

        report(vehicle, "2026-06-05T08:00:00Z", "\"runTime\":1800,\"milOn\":true");
        Answer ended = shop.verdicts(job);
        assertThat(ended.at("/faults/0/proofs/held/ended/reason")).isEqualTo("the MIL was reported on");
        assertThat(ended.at("/faults/0/proofs/bench/result")).isEqualTo("COMPLETE");
        Answer one = client.get("/api/v1/jobs/" + job.id() + "/faults/" + job.at("/faults/0/id") + "/verdict")
                .is(200);
        assertThat(one.json().at("/proofs")).isEqualTo(ended.json().at("/faults/0/proofs"));
        assertThat(shop.see(job).at("/repairs/0/measurements/2/check")).isEqualTo("PART");
    }

    @Test
    void measurementsThatDisagreeContradictTheRepair() {
        Answer job = repaired(shop.vehicle("2012 estate"), "9.5", "false");
        Answer verdicts = shop.verdicts(job);
        assertThat(verdicts.at("/faults/0/proofs/bench/result")).isEqualTo("CONTRADICTING");
        assertThat(verdicts.at("/faults/0/proofs/bench/reason"))
                .isEqualTo("The new part reads 9.5 Ω, expected 3 to 9 Ω; the test leads were not checked.");
        client.post(
                        "/api/v1/jobs/" + job.id() + "/repairs",
                        "{\"description\":\"x\",\"measurements\":[{\"check\":\"WIGGLE\",\"quantity\":\"R\",\"unit\":\"Ω\"}]}")
                .isProblem(422, "invalid-content");
    }

    @Test
    void aToolThatShowsWordsIsRead() {
        Answer vehicle = shop.vehicle("2010 hatchback");
        Answer job = shop.job(vehicle);
        shop.repair(job, "2026-06-01T10:00:00Z");
        Answer clean = client.post(
                        "/api/v1/scans",
                        "{\"text\":\"Stored codes: none\\nPending codes: none\\nMIL: off\\nCatalyst: ready\"}")
                .is(200);
        assertThat(clean.json().at("/lines").findValuesAsString("outcome")).containsOnly("UNDERSTOOD");
        assertThat(clean.json().at("/understood/lamp").asBoolean(true)).isFalse();
        shop.drive(vehicle, "2026-06-02T08:00:00Z", "Pending: P0420\\nMIL: ON").is(201);
        assertThat(shop.standing(job)).isEqualTo("failed once");
    }
}
