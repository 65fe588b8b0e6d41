package dev.stayfixed.web;

import static dev.stayfixed.web.RecordedDrive.CSV;
import static dev.stayfixed.web.RecordedDrive.FORM;
import static dev.stayfixed.web.RecordedDrive.GZIP;
import static dev.stayfixed.web.RecordedDrive.ZIP;
import static dev.stayfixed.web.RecordedDrive.bytes;
import static dev.stayfixed.web.RecordedDrive.form;
import static dev.stayfixed.web.RecordedDrive.gzip;
import static dev.stayfixed.web.RecordedDrive.zip;
import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.platform.AllRows;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Recorded drives from the upload to the verdict. */
abstract class LogStories extends OverHttp {

    /** Steady 70 to 110 km/h for 60 s, warm: as the service information of an invented car might state it. */
    static final String STEADY = """
            {"source":"service manual, section 6","conditions":[
              {"kind":"HOLD","range":{"signal":"VEHICLE_SPEED","min":70,"max":110},"seconds":60,"unbroken":true,
               "whileIn":[{"signal":"COOLANT","min":70}]}]}""";

    @Autowired
    JdbcConnectionDetails database;

    @Autowired
    @Qualifier("reconciliation")
    Runnable reconciliation;

    private static String drivesOf(Answer vehicle) {
        return "/api/v1/vehicles/" + vehicle.id() + "/drives";
    }

    private Answer send(Answer vehicle, String log) {
        return client.send("POST", drivesOf(vehicle), CSV, bytes(log));
    }

    private static String faultOf(Answer job) {
        return "/api/v1/jobs/" + job.id() + "/faults/" + job.at("/faults/0/id");
    }

    @Test
    void aLogIsReadKeptAndExplained() {
        Answer vehicle = shop.vehicle("recorded car");
        String log = RecordedDrive.log("2026-06-02T08:00:00Z", 100);
        String damaged = log.replace("2026-06-02T08:10:00Z,1900,80", "2026-06-02T08:10:00Z,1900,fast")
                + "2026-06-02T08:25:00Z,7";
        Answer drive = send(vehicle, damaged).is(201);
        assertThat(drive.at("/start")).isEqualTo("2026-06-02T08:00:00Z");
        assertThat(drive.at("/end")).isEqualTo("2026-06-02T08:24:59Z");
        assertThat(drive.at("/facts/warmUpCycle/held")).isEqualTo("YES");
        assertThat(drive.at("/facts/minimumCycle/held")).isEqualTo("YES");
        assertThat(drive.json().at("/log/rows").asInt()).isEqualTo(1500);
        assertThat(drive.json().at("/log/judged").asBoolean()).isTrue();
        assertThat(drive.json().at("/log/facts/times/longestIdle").asLong()).isEqualTo(99_000);
        assertThat(drive.json().at("/log/notes").valueStream())
                .anySatisfy(note -> {
                    assertThat(note.at("/kind").asString()).isEqualTo("UNREADABLE_VALUE");
                    assertThat(note.at("/examples/0/line").asInt()).isEqualTo(602);
                    assertThat(note.at("/examples/0/found").asString()).contains("fast");
                })
                .anySatisfy(note -> assertThat(note.at("/kind").asString()).isEqualTo("CUT_OFF_ROW"));
        Answer original =
                client.get("/api/v1/drives/" + drive.id() + "/original").is(200);
        assertThat(original.body()).isEqualTo(damaged);
        assertThat(original.header("Content-Type")).startsWith(CSV);
        assertThat(client.get("/api/v1/drives/" + drive.id()).json().at("/log"))
                .isEqualTo(drive.json().at("/log"));
    }

    @Test
    void theSameLogHoweverItIsPackedChangesNothing() {
        Answer vehicle = shop.vehicle("car whose log comes four times");
        byte[] log = bytes(RecordedDrive.log("2026-06-02T08:00:00Z", 100));
        String path = drivesOf(vehicle);
        Answer first = client.send("POST", path, GZIP, gzip(log)).is(201);
        var before = rows();
        assertThat(client.send("POST", path, ZIP, zip(log, "log.csv")).is(200).id())
                .isEqualTo(first.id());
        assertThat(client.send("POST", path, CSV, log).is(200).id()).isEqualTo(first.id());
        assertThat(client.send("POST", path, FORM, form(log, "{}")).is(200).id())
                .isEqualTo(first.id());
        assertThat(rows()).isEqualTo(before);
        client.send("POST", path, CSV, bytes(RecordedDrive.log("2026-06-02T08:00:00Z", 90)))
                .isProblem(409, "drive-overlaps");
        assertThat(client.get("/api/v1/drives/" + first.id() + "/original").header("Content-Type"))
                .startsWith(GZIP);
    }

    @Test
    void aRepeatedRequestWithALogIsAnsweredFromMemory() {
        Answer vehicle = shop.vehicle("car behind a bad connection");
        byte[] log = bytes(RecordedDrive.log("2026-06-02T08:00:00Z", 100));
        String key = UUID.randomUUID().toString();
        Answer first = client.send("POST", drivesOf(vehicle), CSV, log, "Idempotency-Key", key)
                .is(201);
        Answer again = client.send("POST", drivesOf(vehicle), CSV, log, "Idempotency-Key", key)
                .is(201);
        assertThat(again.header("Idempotency-Replayed")).isEqualTo("true");
        assertThat(again.body()).isEqualTo(first.body());
        client.send("POST", drivesOf(vehicle), CSV, bytes("a,b\n1,2\n"), "Idempotency-Key", key)
                .isProblem(422, "idempotency-key-reused");
        String formKey = UUID.randomUUID().toString();
        byte[] second = form(bytes(RecordedDrive.log("2026-06-03T08:00:00Z", 100)), "{}");
        client.send("POST", drivesOf(vehicle), FORM, second, "Idempotency-Key", formKey)
                .is(201);
        assertThat(client.send("POST", drivesOf(vehicle), FORM, second, "Idempotency-Key", formKey)
                        .is(201)
                        .header("Idempotency-Replayed"))
                .isEqualTo("true");
    }

    @Test
    void aLogAndAScanGoTogetherAndTheLogCompletesTheSummary() {
        Answer vehicle = shop.vehicle("car with log and scan");
        Answer job = shop.job(vehicle);
        shop.repair(job, "2026-06-01T10:00:00Z");
        String said = """
                {"date":"2026-06-02","zone":"Europe/Berlin","summary":{"soak":9,"fuelLevel":40},
                 "scans":[{"text":"%s"}]}""".formatted(Shop.RAN_CLEAN);
        String log = RecordedDrive.log("2026-06-02T08:00:00Z", 100)
                .replace("2026-06-02T", "")
                .replace("Z,", ",");
        client.send("POST", drivesOf(vehicle), CSV, bytes(log)).isProblem(422, "invalid-content");
        Answer drive = client.send("POST", drivesOf(vehicle), FORM, form(bytes(log), said))
                .is(201);
        assertThat(drive.at("/start")).isEqualTo("2026-06-02T06:00:00Z");
        assertThat(drive.at("/effects/0/outcome")).isEqualTo("PASSED");
        assertThat(client.get("/api/v1/drives/" + drive.id() + "/original?part=drive")
                        .body())
                .isEqualTo(said);
        Answer byQuery = client.send("POST", drivesOf(vehicle) + "?date=2026-06-03&zone=%2B02:00", CSV, bytes(log))
                .is(201);
        assertThat(byQuery.at("/start")).isEqualTo("2026-06-03T06:00:00Z");
    }

    @Test
    void headersOfAnUnknownProgramAreConfirmedOnce() {
        Answer vehicle = shop.vehicle("car with a logger of its own");
        String log = RecordedDrive.log("2026-06-02T08:00:00Z", 100)
                .replace("Time,01-0C,01-0D,01-05,01-46", "When;Drehzahl;Tempo;Wasser;Draussen")
                .replace(',', ';');
        var before = rows();
        Answer needed = send(vehicle, log);
        assertThat(needed.status()).as(needed.body()).isEqualTo(422);
        assertThat(rows()).isEqualTo(before);
        String mapping = """
                {"name":"the logger","headers":["When","Drehzahl","Tempo","Wasser","Draussen"],"mapping":{
                 "timeColumn":"When","timeFormat":"ISO_WITH_OFFSET","decimalMark":"POINT","columns":[
                 {"header":"Drehzahl","signal":"ENGINE_SPEED","unit":"REVOLUTIONS_PER_MINUTE"},
                 {"header":"Tempo","signal":"VEHICLE_SPEED","unit":"KILOMETRES_PER_HOUR"},
                 {"header":"Wasser","signal":"COOLANT","unit":"DEGREES_CELSIUS"}]}}""";
        Answer saved = client.post("/api/v1/log-mappings", mapping).is(201);
        client.post("/api/v1/log-mappings", mapping).isProblem(409, "log-mapping-exists");
        Answer drive = send(vehicle, log).is(201);
        assertThat(drive.at("/log/unused/0")).isEqualTo("Draussen");

        String address = saved.header("Location");
        assertThat(client.get(address).at("/name")).isEqualTo("the logger");
        assertThat(client.get("/api/v1/log-mappings").json().valueStream())
                .anySatisfy(m -> assertThat(m.at("/id").asString()).isEqualTo(saved.id()));
        client.send("DELETE", address, "", new byte[0]).is(204);
        client.get(address).isProblem(404, "not-found");
        assertThat(client.get("/api/v1/drives/" + drive.id()).at("/log/rows")).isEqualTo("1500");
    }

    @Test
    void aDoubtfulLogIsAnsweredWithAProposalThatCanBeSaved() {
        Answer vehicle = shop.vehicle("car with doubtful headers");
        String log = RecordedDrive.log("2026-06-02T08:00:00Z", 100)
                .replace("Time,01-0C,01-0D,01-05,01-46", "Time,Engine RPM,Speed,Coolant,Air");
        Answer needed = send(vehicle, log).isProblem(422, "log-mapping-needed");
        assertThat(needed.at("/proposal/columns/0/reason")).isNotBlank();
        assertThat(needed.json().at("/proposal/columns/1/samples")).isNotEmpty();
        Answer proposal =
                client.send("POST", "/api/v1/logs/proposals", CSV, bytes(log)).is(200);
        assertThat(proposal.json()).isEqualTo(needed.json().at("/proposal"));
        client.post(
                        "/api/v1/log-mappings",
                        "{\"name\":\"as proposed\",\"headers\":%s,\"mapping\":%s}"
                                .formatted(
                                        proposal.json().at("/headers"),
                                        proposal.json().at("/mapping")))
                .is(201);
        send(vehicle, log).is(201);
    }

    private static String named(String headers, String start) {
        return RecordedDrive.log(start, 100).replace("Time,01-0C,01-0D,01-05,01-46", headers);
    }

    private Answer confirm(Answer needed, String name, String more) {
        return client.post(
                        "/api/v1/log-mappings",
                        "{\"name\":\"%s\",\"headers\":%s,\"mapping\":%s%s}"
                                .formatted(
                                        name,
                                        needed.json().at("/proposal/headers"),
                                        needed.json().at("/proposal/mapping"),
                                        more))
                .is(201);
    }

    /** The headers tell no unit: what was confirmed for one car's log says nothing of the next car's. */
    @Test
    void aSavedMappingAsksAgainForAnotherCarsUnitsAndSeparators() {
        String headers = "Moment,Engine RPM,Road speed,Coolant,Ambient";
        Answer first = shop.vehicle("car in km/h");
        confirm(send(first, named(headers, "2026-06-02T08:00:00Z")).isProblem(422, "log-mapping-needed"), "metric", "");
        send(first, named(headers, "2026-06-02T08:00:00Z")).is(201);
        send(first, named(headers, "2026-06-03T08:00:00Z")).is(201);

        Answer second = shop.vehicle("car in mph");
        Answer asked = send(second, named(headers, "2026-06-02T08:00:00Z")).isProblem(422, "log-mapping-needed");
        assertThat(asked.at("/detail")).contains("was confirmed for the log of another vehicle");
        assertThat(asked.at("/doubts/0")).contains("\"Road speed\"");
        Answer imperial = client.post(
                        "/api/v1/log-mappings",
                        "{\"name\":\"imperial\",\"headers\":%s,\"mapping\":%s,\"vehicleId\":\"%s\"}"
                                .formatted(
                                        asked.json().at("/proposal/headers"),
                                        asked.json()
                                                .at("/proposal/mapping")
                                                .toString()
                                                .replace("KILOMETRES_PER_HOUR", "MILES_PER_HOUR"),
                                        second.id()))
                .is(201);
        Answer drive = send(second, named(headers, "2026-06-02T08:00:00Z")).is(201);
        assertThat(drive.json().at("/log/facts/extents/VEHICLE_SPEED/highest").asDouble())
                .isBetween(128.0, 129.0);
        send(first, named(headers, "2026-06-04T08:00:00Z")).is(201);

        Answer other = send(first, named(headers, "2026-06-05T08:00:00Z").replace(',', ';'))
                .isProblem(422, "log-mapping-needed");
        assertThat(other.at("/doubts/0")).contains("separated by \";\", confirmed was \",\"");
        Answer told = client.send(
                        "POST",
                        drivesOf(first) + "?mappingId=" + other.at("/mappingId"),
                        CSV,
                        bytes(named(headers, "2026-06-05T08:00:00Z").replace(',', ';')))
                .is(201);
        assertThat(told.json().at("/log/rows").asInt()).isEqualTo(1500);
        client.send("DELETE", imperial.header("Location"), "", new byte[0]).is(204);
    }

    /** Units under the header are part of it: with others it is another log. */
    @Test
    void aRowOfUnitsUnderTheHeaderIsRead() {
        Answer vehicle = shop.vehicle("car with a row of units");
        String metric = named(
                "Time,Engine RPM,Vehicle speed,Coolant temp,Ambient temp\n,rpm,km/h,°C,°C", "2026-06-02T08:00:00Z");
        assertThat(send(vehicle, metric).is(201).at("/log/facts/extents/VEHICLE_SPEED/highest"))
                .isEqualTo("80.0");
        Answer drive = send(vehicle, metric.replace("km/h", "mph").replace("2026-06-02", "2026-06-03"))
                .is(201);
        assertThat(drive.json().at("/log/facts/extents/VEHICLE_SPEED/highest").asDouble())
                .isBetween(128.0, 129.0);
    }

    /** A parked car whose log holds the average speed of the trip computer, and the speed it should keep. */
    @Test
    void aColumnThatOnlyResemblesASignalConfirmsNothing() {
        Answer vehicle = shop.vehicle("parked car");
        Answer job = shop.job(vehicle);
        shop.repair(job, "2026-06-01T10:00:00Z");
        client.post(faultOf(job) + "/conditions", STEADY).is(201);
        for (String header : List.of("Average speed (km/h)", "Set speed (km/h)", "Speed of trailer (km/h)")) {
            String log = named(
                    "Time,Engine RPM (rpm)," + header + ",Coolant temp (°C),Ambient temp (°C)", "2026-06-02T08:00:00Z");
            Answer answer = client.send(
                    "POST", drivesOf(vehicle), FORM, form(bytes(log), "{\"scans\":[{\"text\":\"47 00\\n43 00\"}]}"));
            if (answer.status() != 422) {
                assertThat(answer.json().at("/log/facts/extents").has("VEHICLE_SPEED"))
                        .isFalse();
            }
        }
        assertThat(shop.standing(job)).isEqualTo("waiting for its first trip");
    }

    @Test
    void rowsFarApartDoNotSayThatTheEngineStoodStill() {
        Answer vehicle = shop.vehicle("car with a slow logger");
        StringBuilder slow = new StringBuilder();
        int row = 0;
        for (String line : RecordedDrive.log("2026-06-02T08:00:00Z", 100).split("\n", -1)) {
            slow.append(row == 0 || row % 10 == 1 ? line + "\n" : "");
            row++;
        }
        Answer drive = send(vehicle, slow.toString()).is(201);
        assertThat(drive.at("/facts/drivingCycle/held")).isEqualTo("YES");
        assertThat(drive.at("/facts/warmUpCycle/held")).isEqualTo("YES");
        assertThat(drive.at("/facts/minimumCycle/held")).isEqualTo("UNKNOWN");
    }

    @Test
    void aLogThatCannotBeADriveIsStoredAndNotJudged() {
        Answer vehicle = shop.vehicle("car with a broken sensor");
        Answer job = shop.job(vehicle);
        shop.repair(job, "2026-06-01T10:00:00Z");
        client.post(faultOf(job) + "/conditions", STEADY).is(201);
        String log = RecordedDrive.log("2026-06-02T08:00:00Z", 100)
                .replace(",80,", ",999,")
                .replace(",50,", ",999,");
        Answer drive = send(vehicle, log).is(201);
        assertThat(drive.json().at("/log/judged").asBoolean()).isFalse();
        assertThat(drive.at("/log/notJudged/0")).isNotBlank();
        assertThat(drive.at("/warnings/0")).contains("not judged");
        assertThat(drive.at("/facts/drivingCycle/held")).isEqualTo("UNKNOWN");
        assertThat(drive.at("/effects/0/outcome")).isEqualTo("DID_NOT_RUN");
        assertThat(shop.standing(job)).isEqualTo("waiting for its first trip");
    }

    @Test
    void conditionsThatWereMetAreEvidenceAndThoseThatWereMissedSayByHowMuch() {
        Answer vehicle = shop.vehicle("car without readiness");
        Answer job = shop.job(vehicle);
        shop.repair(job, "2026-06-01T10:00:00Z");
        String address = faultOf(job) + "/conditions";
        client.get(address).isProblem(404, "not-found");
        Answer agreed = client.post(address, STEADY).is(201);
        assertThat(agreed.at("/conditions/0/words")).contains("vehicle speed 70 to 110 km/h");
        assertThat(agreed.etag()).isEqualTo(shop.see(job).etag());
        client.post(address, STEADY).isProblem(409, "conditions-exist");
        client.put(address, STEADY).isProblem(428, "precondition-required");

        Answer shortDrive =
                send(vehicle, RecordedDrive.log("2026-06-02T08:00:00Z", 41)).is(201);
        assertThat(shortDrive.at("/effects/0/outcome")).isEqualTo("DID_NOT_RUN");
        assertThat(shortDrive.at("/effects/0/reason")).contains("held 41 s of 60 s");
        assertThat(shortDrive.at("/conditions/0/held")).isEqualTo("NO");

        Answer first = send(vehicle, RecordedDrive.log("2026-06-03T08:00:00Z", 100) + "")
                .is(201);
        assertThat(first.at("/conditions/0/held")).isEqualTo("YES");
        Answer seen = client.get("/api/v1/drives/" + first.id() + "/conditions").is(200);
        assertThat(seen.json().at("/faults/0/results/0/intervals/0/from").asLong())
                .isEqualTo(600_000);
        assertThat(seen.json().at("/faults/0/counts").asBoolean()).isTrue();

        // conditions say that it ran; only a list of codes says that it passed
        Answer scanned = client.send(
                        "POST",
                        drivesOf(vehicle),
                        FORM,
                        form(
                                bytes(RecordedDrive.log("2026-06-04T08:00:00Z", 100)),
                                "{\"scans\":[{\"text\":\"47 00\\n43 00\"}]}"))
                .is(201);
        assertThat(scanned.at("/effects/0/outcome")).isEqualTo("PASSED");
        Answer verdict = client.get(faultOf(job) + "/verdict").is(200);
        assertThat(verdict.body()).contains("ENABLING_CONDITIONS").contains("its enabling conditions were met");
    }

    @Test
    void conditionsThatAreNamedLaterAreHeldAgainstEarlierLogs() {
        Answer vehicle = shop.vehicle("car whose manual came late");
        Answer job = shop.job(vehicle);
        shop.repair(job, "2026-06-01T10:00:00Z");
        String scan = "{\"scans\":[{\"text\":\"47 00\\n43 00\"}]}";
        for (int day = 2; day < 4; day++) {
            client.send(
                            "POST",
                            drivesOf(vehicle),
                            FORM,
                            form(bytes(RecordedDrive.log("2026-06-0" + day + "T08:00:00Z", 100)), scan))
                    .is(201);
        }
        assertThat(shop.standing(job)).isEqualTo("waiting for its first trip");
        String address = faultOf(job) + "/conditions";
        client.post(address, STEADY).is(201);
        assertThat(shop.standing(job)).isEqualTo("confirmed fixed");
        client.put(
                        address,
                        STEADY.replace("60,\"unb", "600,\"unb"),
                        "If-Match",
                        shop.see(job).etag())
                .is(200);
        assertThat(shop.standing(job)).isEqualTo("waiting for its first trip");
    }

    @Test
    void typicalConditionsCountOnlyWhenTheShopAdoptsThem() {
        Answer typical =
                client.get("/api/v1/conditions/typical?group=FUEL_SYSTEM").is(200);
        assertThat(typical.json().at("/0/typical").asBoolean()).isTrue();
        assertThat(typical.at("/0/caution")).contains("service information");
        Answer vehicle = shop.vehicle("car with typical conditions");
        Answer job = shop.job(vehicle, "{\"code\":\"P0420\",\"group\":\"FUEL_SYSTEM\"}");
        shop.repair(job, "2026-06-01T10:00:00Z");
        Answer drive = client.send(
                        "POST",
                        drivesOf(vehicle),
                        FORM,
                        form(
                                bytes(RecordedDrive.log("2026-06-02T08:00:00Z", 100)),
                                "{\"scans\":[{\"text\":\"47 00\\n43 00\"}]}"))
                .is(201);
        assertThat(drive.at("/conditions/0/held")).isEqualTo("YES");
        assertThat(drive.json().at("/conditions/0/counts").asBoolean()).isFalse();
        assertThat(drive.at("/effects/0/outcome")).isEqualTo("DID_NOT_RUN");
        client.post(faultOf(job) + "/conditions", "{\"origin\":\"TYPICAL_ADOPTED\"}")
                .is(201);
        assertThat(client.get(faultOf(job) + "/verdict").body())
                .contains("typical conditions adopted by the shop were met");
    }

    @Test
    void whatWasReadFromALogIsKeptAndCanBeReadAgain() {
        Answer vehicle = shop.vehicle("car after a crash");
        Answer job = shop.job(vehicle);
        shop.repair(job, "2026-06-01T10:00:00Z");
        client.post(faultOf(job) + "/conditions", STEADY).is(201);
        Answer drive =
                send(vehicle, RecordedDrive.log("2026-06-02T08:00:00Z", 100)).is(201);
        UUID id = UUID.fromString(drive.id());
        Answer before = client.get("/api/v1/drives/" + drive.id());
        String drawn = drawn(drive);

        // without its log, only what was kept can answer
        JdbcClient all = AllRows.of(database);
        all.sql("create table parts_aside as select * from submission_part").update();
        jdbc.sql("delete from submission_part").update();
        try {
            reconcile();
            assertThat(client.get("/api/v1/drives/" + drive.id()).body()).isEqualTo(before.body());
            assertThat(drawn(drive)).isEqualTo(drawn);
        } finally {
            all.sql("insert into submission_part select * from parts_aside").update();
            all.sql("drop table parts_aside").update();
        }

        jdbc.sql("delete from drive_condition where drive_id = ?").param(id).update();
        jdbc.sql("update drive_picture set version = 0 where drive_id = ?")
                .param(id)
                .update();
        assertThat(drawn(drive)).as("drawn from the log itself").isEqualTo(drawn);
        jdbc.sql("update drive set log_facts_version = 0 where id = ?")
                .param(id)
                .update();
        reconcile();
        assertThat(jdbc.sql("select log_facts_version from drive where id = ?")
                        .param(id)
                        .query(Integer.class)
                        .single())
                .isPositive();
        assertThat(jdbc.sql("select version from drive_picture where drive_id = ?")
                        .param(id)
                        .query(Integer.class)
                        .single())
                .isPositive();
        assertThat(jdbc.sql("select count(*) from drive_condition where drive_id = ?")
                        .param(id)
                        .query(Integer.class)
                        .single())
                .isOne();
        assertThat(client.get("/api/v1/drives/" + drive.id()).body()).isEqualTo(before.body());
    }

    /** The picture on the page of a drive. */
    private String drawn(Answer drive) {
        String page = client.get("/drives/" + drive.id()).is(200).body();
        int begin = page.indexOf("data-stage");
        return page.substring(begin, page.indexOf("</section>", begin));
    }

    /** As after a start of another version of the program. */
    private void reconcile() {
        jdbc.sql("update vehicle set judged_by = 'another version'").update();
        reconciliation.run();
    }

    @Test
    void aDriveIsCorrectedByALogAndByASummaryAgain() {
        Answer vehicle = shop.vehicle("car with a corrected log");
        Answer drive =
                shop.drive(vehicle, "2026-06-02T08:00:00Z", Shop.RAN_CLEAN).is(201);
        String address = "/api/v1/drives/" + drive.id();
        String log = RecordedDrive.log("2026-06-02T08:00:00Z", 100);
        client.send("PUT", address, CSV, bytes(log)).isProblem(428, "precondition-required");
        Answer corrected = client.send("PUT", address, CSV, bytes(log), "If-Match", drive.etag())
                .is(200);
        assertThat(corrected.json().at("/log/rows").asInt()).isEqualTo(1500);
        Answer back =
                shop.correct(corrected, "2026-06-02T08:00:00Z", Shop.RAN_CLEAN).is(200);
        assertThat(back.json().at("/log").isMissingNode()).isTrue();
        assertThat(client.get(address + "/original?revision=2").body()).isEqualTo(log);
        client.get(address + "/signals").isProblem(404, "not-found");
    }

    @Test
    void signalsAreThinnedOutWithoutLosingAPeak() {
        Answer vehicle = shop.vehicle("car with a peak");
        String log = RecordedDrive.log("2026-06-02T08:00:00Z", 100)
                .replace("2026-06-02T08:15:00Z,1900", "2026-06-02T08:15:00Z,5123")
                .replaceAll("2026-06-02T08:20:\\d\\dZ.*\\R", "");
        Answer drive = send(vehicle, log).is(201);
        Answer series = client.get("/api/v1/drives/" + drive.id() + "/signals?points=40&signals=ENGINE_SPEED,COOLANT")
                .is(200);
        assertThat(series.json().at("/signals")).hasSize(2);
        assertThat(series.json().at("/signals/0/points").size()).isBetween(20, 40);
        assertThat(series.json()
                        .at("/signals/0/points")
                        .valueStream()
                        .mapToDouble(p -> p.at("/value").asDouble()))
                .contains(5123.0);
        assertThat(series.json().at("/gaps")).hasSize(1);
        assertThat(series.json().at("/gaps/0/from").asLong()).isEqualTo(1_199_000);
        client.get("/api/v1/drives/" + drive.id() + "/signals?points=1").isProblem(400, "invalid-parameter");
        client.get("/api/v1/drives/" + drive.id() + "/signals?signals=HEAT").isProblem(400, "invalid-parameter");
    }

    @Test
    void anyStretchOfAPictureIsAnswered() {
        Answer drive = send(shop.vehicle("pictured car"), RecordedDrive.log("2026-06-02T08:00:00Z", 100))
                .is(201);
        for (String odd :
                List.of("NaN", "Infinity", "-Infinity", "-1e308", "1e308", "1e999", "x", "0x1p3", "9".repeat(400))) {
            for (String range : List.of("from=" + odd, "to=" + odd, "from=" + odd + "&to=" + odd, "from=900&to=100")) {
                client.get("/drives/" + drive.id() + "/plot?" + range).is(200);
            }
        }
        client.get("/drives/" + UUID.randomUUID() + "/plot").is(404);
        client.get("/drives/what/plot").is(404);
    }

    @Test
    void theDriveOfAnotherCarIsRefusedUnlessSomebodyMadeSure() {
        Answer vehicle = client.post(
                        "/api/v1/vehicles", "{\"description\":\"car with a number\",\"vin\":\"WVWZZZ1KZ6W000001\"}")
                .is(201);
        String log = RecordedDrive.log("2026-06-02T08:00:00Z", 100)
                .replace("01-46\n", "01-46,VIN\n")
                .replaceAll("15(\\R)", "15,1M8GDM9AXKP042788$1");
        send(vehicle, log).isProblem(422, "other-vehicle");
        send(vehicle, log.replace("1M8GDM9AXKP042788", "WVWZZZ1KZ6W000001")).is(201);

        // PID $01 with other monitors, PID $A6 with 12000.0 km and then 11000.0 km
        String first = body("2026-06-03T08:00:00Z", "41 01 00 07 65 00\\n41 A6 00 01 D4 C0", false);
        String others = body("2026-06-04T08:00:00Z", "41 01 00 07 21 00", false);
        String back = body("2026-06-05T08:00:00Z", "41 A6 00 01 AD B0", false);
        client.post(drivesOf(vehicle), first).is(201);
        assertThat(client.post(drivesOf(vehicle), others)
                        .isProblem(422, "other-vehicle")
                        .at("/detail"))
                .contains("sameVehicleConfirmed");
        assertThat(client.post(drivesOf(vehicle), back)
                        .isProblem(422, "other-vehicle")
                        .at("/detail"))
                .contains("12000 km")
                .contains("11000 km");
        client.post(drivesOf(vehicle), others.replace("false", "true")).is(201);
        client.post(drivesOf(vehicle), back.replace("false", "true")).is(201);
    }

    private static String body(String start, String scan, boolean confirmed) {
        return "{\"start\":\"%s\",\"sameVehicleConfirmed\":%s,\"scans\":[{\"text\":\"%s\"}]}"
                .formatted(start, confirmed, scan);
    }
}
