package dev.stayfixed.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.UUID;
import org.junit.jupiter.api.Test;

/** The main stories, each as the protocol that a client sees. */
abstract class RepairStories extends OverHttp {

    @Test
    void aCatalystIsReplacedAndTwoCleanTripsProveIt() {
        Answer vehicle = shop.vehicle("2011 estate, 1.6 l");
        Answer job = client.post(
                        "/api/v1/jobs",
                        "{\"vehicleId\":\"%s\",\"complaint\":\"MIL lit\",\"scan\":\"43 01 04 20\\n42 02 00 04 20\"}"
                                .formatted(vehicle.id()))
                .is(201);
        assertThat(job.at("/faults/0/code")).isEqualTo("P0420");
        assertThat(job.at("/faults/0/group")).isEqualTo("CATALYST");
        assertThat(job.at("/faults/0/standing/words")).isEqualTo("waiting for a repair");

        shop.repair(job, "2026-06-01T10:00:00Z");
        assertThat(shop.standing(job)).isEqualTo("waiting for its first trip");

        Answer town =
                shop.drive(vehicle, "2026-06-02T08:00:00Z", Shop.DID_NOT_RUN).is(201);
        assertThat(town.at("/effects/0/outcome")).isEqualTo("DID_NOT_RUN");
        assertThat(shop.standing(job)).isEqualTo("waiting for its first trip");

        Answer first =
                shop.drive(vehicle, "2026-06-03T08:00:00Z", Shop.RAN_CLEAN).is(201);
        assertThat(first.at("/effects/0/outcome")).isEqualTo("PASSED");
        assertThat(first.at("/effects/0/standingBefore/words")).isEqualTo("waiting for its first trip");
        assertThat(first.at("/effects/0/standing/words")).isEqualTo("1 of 2 clean trips");

        shop.drive(vehicle, "2026-06-04T08:00:00Z", Shop.RAN_CLEAN).is(201);
        assertThat(shop.standing(job)).isEqualTo("confirmed fixed");
        assertThat(heard.of(UUID.fromString(job.at("/faults/0/id"))))
                .containsExactly(
                        "waiting for a repair -> waiting for its first trip",
                        "waiting for its first trip -> 1 of 2 clean trips",
                        "1 of 2 clean trips -> confirmed fixed");

        Answer verdicts = shop.verdicts(job);
        assertThat(verdicts.at("/ruleSet")).isNotBlank();
        assertThat(verdicts.at("/faults/0/attempts/0/steps/1/evidence/0/grade")).isEqualTo("CYCLE_READINESS");

        Answer closed = shop.close(job, "{}").is(200);
        assertThat(closed.at("/state")).isEqualTo("CLOSED");
    }

    @Test
    void aCircuitSaysAtOpeningWhatProvesItAndIsProvenByItsTypicalConditions() {
        Answer vehicle = shop.vehicle("2013 hatchback with a purge valve");
        Answer job = shop.job(vehicle, "{\"code\":\"P0443\"}");
        assertThat(job.at("/faults/0/group")).isEqualTo("EVAPORATIVE_SYSTEM");
        assertThat(job.at("/faults/0/proof"))
                .startsWith("What proves P0443 fixed here: at best the status byte of the code")
                .contains("typical ones adopted")
                .doesNotContain("$41");
        shop.repair(job, "2026-06-01T10:00:00Z");
        assertThat(client.get("/api/v1/jobs/" + job.id() + "/next-drive")
                        .is(200)
                        .body())
                .contains("common practice, no source");
        String fault = "/api/v1/jobs/" + job.id() + "/faults/" + job.at("/faults/0/id");
        Answer adopted = client.post(fault + "/conditions", "{\"origin\":\"TYPICAL_ADOPTED\"}")
                .is(201);
        assertThat(adopted.at("/source")).isEqualTo("common practice, no source");
        String warm =
                "{\"start\":\"%s\",\"summary\":{\"runTime\":1800,\"peakCoolant\":88},\"scans\":[{\"text\":\"%s\"}]}";
        String clean = "41 41 00 07 65 65\\n47 00\\n43 00";
        String cold = warm.replace("88", "40");
        client.post("/api/v1/vehicles/" + vehicle.id() + "/drives", cold.formatted("2026-06-02T08:00:00Z", clean))
                .is(201);
        assertThat(shop.standing(job)).isEqualTo("waiting for its first trip");
        client.post("/api/v1/vehicles/" + vehicle.id() + "/drives", warm.formatted("2026-06-03T08:00:00Z", clean))
                .is(201);
        client.post("/api/v1/vehicles/" + vehicle.id() + "/drives", warm.formatted("2026-06-04T08:00:00Z", clean))
                .is(201);
        assertThat(client.get(fault + "/verdict").is(200).body())
                .contains("typical conditions adopted by the shop were met");
    }

    @Test
    void whatWillProveAFaultFollowsWhatTheCarAnswers() {
        Answer vehicle = client.post("/api/v1/vehicles", "{\"description\":\"1998 saloon\",\"modelYear\":1998}")
                .is(201);
        Answer job = shop.job(vehicle, "{\"code\":\"P0118\"},{\"code\":\"C0035\"}");
        String both =
                "{\"performedAt\":\"2026-06-01T10:00:00Z\",\"description\":\"sensors replaced\",\"codesCleared\":true,"
                        + "\"scanAfter\":\"07\\nNO DATA\\n7F 19 11\"}";
        client.post("/api/v1/jobs/" + job.id() + "/repairs", both).is(201);
        Answer seen = shop.see(job);
        assertThat(seen.at("/faults/0/proof"))
                .startsWith("Nothing that this car answers can prove P0118 fixed")
                .contains("The best that can be said is how long it has held");
        assertThat(seen.at("/faults/1/proof")).contains("the code list of the control unit that stored it");
        assertThat(client.get("/api/v1/jobs/" + job.id() + "/next-drive")
                        .is(200)
                        .body())
                .doesNotContain("oolant");
    }

    @Test
    void aRepairThatDidNotHoldIsFollowedByAnotherWithACountOfItsOwn() {
        Answer vehicle = shop.vehicle("2014 van");
        Answer job = shop.job(vehicle);
        shop.repair(job, "2026-06-01T10:00:00Z");
        shop.drive(vehicle, "2026-06-02T08:00:00Z", Shop.RAN_AND_FAILED).is(201);
        assertThat(shop.standing(job)).isEqualTo("failed once");
        shop.drive(vehicle, "2026-06-03T08:00:00Z", Shop.RAN_AND_CONFIRMED).is(201);
        assertThat(shop.standing(job)).isEqualTo("recurred");

        shop.repair(job, "2026-06-04T10:00:00Z");
        assertThat(shop.standing(job)).isEqualTo("waiting for its first trip");
        shop.drive(vehicle, "2026-06-05T08:00:00Z", Shop.RAN_CLEAN).is(201);

        Answer verdicts = shop.verdicts(job);
        assertThat(verdicts.at("/faults/0/attempts/0/standing/state")).isEqualTo("RECURRED");
        assertThat(verdicts.at("/faults/0/attempts/1/standing/words")).isEqualTo("1 of 2 clean trips");
    }

    @Test
    void lateRepeatedAndCorrectedDrivesChangeNothingButTheTruth() {
        Answer vehicle = shop.vehicle("2016 saloon");
        Answer job = shop.job(vehicle);
        shop.repair(job, "2026-06-01T10:00:00Z");
        shop.drive(vehicle, "2026-06-03T08:00:00Z", Shop.RAN_CLEAN).is(201);
        Answer last =
                shop.drive(vehicle, "2026-06-04T08:00:00Z", Shop.RAN_CLEAN).is(201);
        assertThat(shop.standing(job)).isEqualTo("confirmed fixed");

        Answer late =
                shop.drive(vehicle, "2026-06-03T18:00:00Z", Shop.RAN_AND_FAILED).is(201);
        assertThat(late.at("/effects/0/standingBefore/words")).isEqualTo("confirmed fixed");
        assertThat(late.at("/effects/0/standing/words")).isEqualTo("1 of 2 clean trips");

        String jobBefore = shop.see(job).etag();
        Answer again = client.post(
                        "/api/v1/vehicles/" + vehicle.id() + "/drives",
                        " " + Shop.body("2026-06-04T10:00:00+02:00", Shop.RAN_CLEAN))
                .is(200);
        assertThat(again.id()).isEqualTo(last.id());
        assertThat(shop.see(job).etag()).isEqualTo(jobBefore);

        Answer corrected =
                shop.correct(late, "2026-06-03T18:00:00Z", Shop.DID_NOT_RUN).is(200);
        assertThat(corrected.etag()).isEqualTo("\"2\"");
        assertThat(shop.standing(job)).isEqualTo("confirmed fixed");
        assertThat(client.get("/api/v1/drives/" + late.id() + "/original?revision=1")
                        .body())
                .isEqualTo(Shop.body("2026-06-03T18:00:00Z", Shop.RAN_AND_FAILED));
        shop.correct(late, "2026-06-03T18:00:00Z", Shop.RAN_CLEAN).isProblem(412, "version-changed");
    }

    @Test
    void aDriveLeftOutOfTheCountIsJudgedNoMoreUntilItIsTakenInAgain() {
        Answer vehicle = shop.vehicle("2016 estate");
        Answer job = shop.job(vehicle);
        shop.repair(job, "2026-06-01T10:00:00Z");
        shop.drive(vehicle, "2026-06-03T08:00:00Z", Shop.RAN_CLEAN).is(201);
        Answer strange =
                shop.drive(vehicle, "2026-06-03T18:00:00Z", Shop.RAN_AND_FAILED).is(201);
        shop.drive(vehicle, "2026-06-04T08:00:00Z", Shop.RAN_CLEAN).is(201);
        assertThat(shop.standing(job)).isEqualTo("1 of 2 clean trips");

        String path = "/api/v1/drives/" + strange.id() + "/left-out";
        client.put(path, "{\"reason\":\" \"}").isProblem(422, "invalid-content");
        client.put(path, "{\"reason\":\"" + "x".repeat(501) + "\"}").isProblem(422, "invalid-content");
        Answer out =
                client.put(path, "{\"reason\":\"the tool was in another car\"}").is(200);
        assertThat(out.at("/leftOut/reason")).isEqualTo("the tool was in another car");
        assertThat(shop.standing(job)).isEqualTo("confirmed fixed");
        assertThat(client.post("/api/v1/jobs/" + job.id() + "/report", "{}").body())
                .contains("was left out of the count by the workshop: the tool was in another car.");
        client.put(path, "{\"reason\":\"it was the other estate\"}").is(200);
        Answer list = client.get("/api/v1/vehicles/" + vehicle.id() + "/drives").is(200);
        assertThat(list.at("/items/1/leftOut/reason")).isEqualTo("it was the other estate");
        assertThat(list.json().at("/items/0").has("leftOut")).isFalse();
        shop.drive(vehicle, "2026-06-03T18:00:00Z", Shop.RAN_AND_FAILED).is(200);
        assertThat(shop.standing(job)).as("sent again it stays left out").isEqualTo("confirmed fixed");

        Answer right =
                shop.drive(vehicle, "2026-06-03T18:05:00Z", Shop.DID_NOT_RUN).is(201);
        client.send("DELETE", path, "", new byte[0]).isProblem(409, "drive-overlaps");
        client.put("/api/v1/drives/" + right.id() + "/left-out", "{\"reason\":\"no\"}")
                .is(200);
        Answer in = client.send("DELETE", path, "", new byte[0]).is(200);
        assertThat(in.json().has("leftOut")).isFalse();
        assertThat(shop.standing(job)).isEqualTo("1 of 2 clean trips");
        client.send("DELETE", path, "", new byte[0]).is(200);
        String nowhere = "/api/v1/drives/" + job.id() + "/left-out";
        client.put(nowhere, "{\"reason\":\"no\"}").isProblem(404, "not-found");
        client.send("DELETE", nowhere, "", new byte[0]).isProblem(404, "not-found");
    }

    @Test
    void aJobWithAnUndecidedFaultIsClosedOnlyForAReason() {
        Answer vehicle = shop.vehicle("2009 pick-up");
        Answer job = shop.job(vehicle, "{\"code\":\"P0420\"},{\"code\":\"P0135\",\"trips\":\"ONE\"}");
        shop.repair(job, "2026-06-01T10:00:00Z");

        Answer refused = shop.close(job, "{}").isProblem(409, "fault-undecided");
        assertThat(refused.at("/detail"))
                .contains("P0420 (waiting for its first trip)")
                .contains("P0135");

        Answer closed =
                shop.close(job, "{\"reason\":\"the customer sold the car\"}").is(200);
        assertThat(closed.at("/closeReason")).isEqualTo("the customer sold the car");
        client.post("/api/v1/jobs/" + job.id() + "/repairs", "{\"description\":\"more\"}")
                .isProblem(409, "job-closed");

        String path = "/api/v1/jobs/" + job.id() + "/reopen";
        client.post(path, "{\"reason\":\"it is back\"}").isProblem(428, "precondition-required");
        client.post(path, "{\"reason\":\"it is back\"}", "If-Match", closed.etag())
                .is(200);
        client.post(path, "{\"reason\":\"it is back\"}", "If-Match", "*").isProblem(409, "job-open");
    }

    @Test
    void aScanAloneIsEnough() {
        Answer vehicle = shop.vehicle("2018 coupe");
        Answer job = shop.job(vehicle);
        shop.repair(job, "2026-06-01T10:00:00Z");
        // PID $1F: 1800 s since engine start
        String scan = "41 1F 07 08\n41 41 00 07 65 00\n47 00\n43 00";
        String path = "/api/v1/vehicles/" + vehicle.id() + "/drives";
        Answer drive = client.postText(path, scan).is(201);
        assertThat(drive.at("/start")).isEqualTo("2026-06-30T11:30:00Z");
        assertThat(drive.at("/effects/0/outcome")).isEqualTo("PASSED");
        assertThat(client.postText(path, scan).is(200).id()).isEqualTo(drive.id());
        Answer original = client.get("/api/v1/drives/" + drive.id() + "/original");
        assertThat(original.body()).isEqualTo(scan);
        assertThat(original.header("Content-Type")).startsWith("text/plain");
    }

    @Test
    void aConfirmedFixedFaultThatComesBackSaysSo() {
        Answer vehicle = shop.vehicle("2010 minibus");
        Answer job = shop.job(vehicle, "{\"code\":\"P0420\",\"trips\":\"ONE\"}");
        shop.repair(job, "2026-06-01T10:00:00Z");
        shop.drive(vehicle, "2026-06-02T08:00:00Z", Shop.RAN_CLEAN).is(201);
        shop.close(job, "{}").is(200);
        shop.drive(vehicle, "2026-06-20T08:00:00Z", Shop.RAN_AND_FAILED).is(201);
        Answer seen = shop.see(job);
        assertThat(seen.at("/faults/0/standing/state")).isEqualTo("RECURRED");
        assertThat(seen.json().at("/faults/0/standing/comeback").asBoolean()).isTrue();
    }

    @Test
    void measurementsConditionsAndListsReadBackAsTheyWereWritten() {
        Answer vehicle = shop.vehicle("2013 hatchback, 50%_ off!");
        Answer job = shop.job(
                vehicle,
                "{\"code\":\"P0141\",\"requiredPasses\":3,\"enablingConditions\":[{\"quantity\":\"AMBIENT\",\"min\":4.5}],"
                        + "\"freezeFrame\":{\"engineSpeed\":1500,\"load\":40,\"coolant\":88}}");
        client.post(
                        "/api/v1/jobs/" + job.id() + "/repairs",
                        "{\"description\":\"heater circuit\",\"parts\":[\"sensor B1S2\"],\"technician\":\"R. Imre\","
                                + "\"measurements\":[{\"quantity\":\"heater resistance\",\"point\":\"pins 3-4\",\"unit\":\"Ω\","
                                + "\"expectedMin\":5,\"expectedMax\":7,\"before\":\"OPEN\",\"after\":6.1,"
                                + "\"testLeadsVerified\":true}]}")
                .is(201);
        Answer seen = shop.see(job);
        assertThat(seen.at("/repairs/0/measurements/0/before")).isEqualTo("OPEN");
        assertThat(seen.json().at("/repairs/0/measurements/0/after").asDouble()).isEqualTo(6.1);
        assertThat(seen.at("/repairs/0/measurements/0/unit")).isEqualTo("Ω");
        assertThat(seen.json().at("/faults/0/enablingConditions/0/min").asDouble())
                .isEqualTo(4.5);
        assertThat(seen.json().at("/faults/0/freezeFrame/coolant").asDouble()).isEqualTo(88);
        assertThat(client.get("/api/v1/jobs?q=p0141&state=OPEN").at("/items/0/id"))
                .isEqualTo(job.id());
        assertThat(client.get("/api/v1/vehicles?q=50%25_%20off!").at("/items/0/id"))
                .isEqualTo(vehicle.id());
        assertThat(client.get("/api/v1/vehicles?q=50%25x").json().at("/items")).isEmpty();
        String path = "/api/v1/jobs/" + job.id() + "/faults/" + job.at("/faults/0/id");
        client.put(path, "{\"requiredPasses\":1}", "If-Match", seen.etag()).isProblem(422, "invalid-content");
        Answer revised = client.put(path, "{\"requiredPasses\":5}", "If-Match", seen.etag())
                .is(200);
        assertThat(revised.json().at("/faults/0/requiredPasses").asInt()).isEqualTo(5);
        client.put(path, "{\"requiredPasses\":5}", "If-Match", seen.etag()).isProblem(412, "version-changed");
    }

    @Test
    void longListsComeInPartsWithoutGapOrRepeat() {
        Answer vehicle = shop.vehicle("2015 taxi");
        for (int day = 10; day < 17; day++) {
            shop.drive(vehicle, "2026-06-" + day + "T08:00:00Z", Shop.DID_NOT_RUN)
                    .is(201);
        }
        var starts = new java.util.ArrayList<String>();
        String path = "/api/v1/vehicles/" + vehicle.id() + "/drives?limit=3";
        String cursor = "";
        do {
            Answer part = client.get(path + (cursor.isEmpty() ? "" : "&cursor=" + cursor))
                    .is(200);
            part.json()
                    .at("/items")
                    .forEach(d -> starts.add(d.at("/start").asString().substring(8, 10)));
            cursor = part.at("/next");
        } while (!cursor.isEmpty());
        assertThat(starts).containsExactly("16", "15", "14", "13", "12", "11", "10");
    }
}
