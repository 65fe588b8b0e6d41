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

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Logs, mappings and conditions that cannot be accepted: a 4xx problem that says why, and nothing stored. */
abstract class BadLogInput extends OverHttp {

    private static final String UNREADABLE = "log-not-understood";
    private static final String GOOD = RecordedDrive.log("2026-06-02T08:00:00Z", 100);

    private final List<DynamicTest> cases = new ArrayList<>();

    private void add(String name, String path, String type, byte[] body, int status, String slug) {
        cases.add(DynamicTest.dynamicTest(name, () -> {
            Map<String, Long> before = rows();
            client.send("POST", path, type, body).isProblem(status, slug);
            client.send(
                            "POST",
                            path,
                            type,
                            body,
                            "Idempotency-Key",
                            UUID.randomUUID().toString())
                    .isProblem(status, slug);
            assertThat(rows()).isEqualTo(before);
        }));
    }

    @TestFactory
    List<DynamicTest> badLogsAreRefusedAndNothingIsStored() {
        Answer vehicle = shop.vehicle("car that gets bad logs");
        Answer job = shop.job(vehicle);
        String path = "/api/v1/vehicles/" + vehicle.id() + "/drives";
        for (String address : List.of(path, "/api/v1/logs/proposals")) {
            unreadable(address);
        }
        times(path);
        said(path);
        mappings();
        conditions("/api/v1/jobs/" + job.id() + "/faults/" + job.at("/faults/0/id") + "/conditions");
        return cases;
    }

    private void unreadable(String path) {
        add("empty at " + path, path, CSV, new byte[0], 422, UNREADABLE);
        byte[] noise = new byte[5000];
        new Random(1).nextBytes(noise);
        add("binary at " + path, path, CSV, noise, 422, UNREADABLE);
        add("UTF-16 at " + path, path, CSV, GOOD.getBytes(StandardCharsets.UTF_16), 422, UNREADABLE);
        add("one column at " + path, path, CSV, bytes("Time\n2026-06-02T08:00:00Z\n"), 422, UNREADABLE);
        add("no signal at " + path, path, CSV, bytes("Time,Mood\n2026-06-02T08:00:00Z,fine\n"), 422, UNREADABLE);
        String wide = IntStream.range(0, 5000).mapToObj(i -> "c" + i).collect(Collectors.joining(","));
        add("5000 columns at " + path, path, CSV, bytes(wide + "\n" + wide + "\n"), 422, UNREADABLE);
        byte[] packed = gzip(bytes(GOOD));
        add("no gzip at " + path, path, GZIP, new byte[] {0x1F, (byte) 0x8B, 9, 9, 9}, 422, UNREADABLE);
        add("cut-off zip at " + path, path, ZIP, Arrays.copyOf(zip(bytes(GOOD), "a.csv"), 200), 422, UNREADABLE);
        add("zip without a log at " + path, path, ZIP, zip(bytes(GOOD), "picture.png"), 422, UNREADABLE);
        if (path.endsWith("drives")) {
            add("bomb", path, GZIP, gzip(bomb()), 413, "content-too-large");
            add("zip bomb", path, ZIP, zip(bomb(), "log.csv"), 413, "content-too-large");
            add("cut-off gzip", path, GZIP, Arrays.copyOf(packed, packed.length / 2), 422, UNREADABLE);
            add("header only", path, CSV, bytes("Time,01-0C,01-0D\n"), 422, UNREADABLE);
            add("zip with two logs", path, ZIP, zip(bytes(GOOD), "a.csv", "b.csv"), 422, UNREADABLE);
            add("two logs, one outside", path, ZIP, zip(bytes(GOOD), "../../a.csv", "../b.csv"), 422, UNREADABLE);
        }
    }

    private static byte[] bomb() {
        byte[] bomb = new byte[20 << 20];
        Arrays.fill(bomb, (byte) '\n');
        byte[] head = bytes(GOOD);
        System.arraycopy(head, 0, bomb, 0, head.length);
        return bomb;
    }

    private void times(String path) {
        add("tomorrow", path, CSV, bytes(RecordedDrive.log("2026-07-01T08:00:00Z", 9)), 422, "time-in-future");
        add("year 3024", path, CSV, bytes(GOOD.replace("2026-", "3024-")), 422, UNREADABLE);
        add("year 1970", path, CSV, bytes(GOOD.replace("2026-", "1970-")), 422, UNREADABLE);
        String noZone = GOOD.replace("Z,", ",");
        add("no zone", path, CSV, bytes(noZone), 422, "invalid-content");
        add("wrong zone", path + "?zone=Atlantis", CSV, bytes(noZone), 422, "invalid-content");
        String noDate = noZone.replace("2026-06-02T", "");
        add("no date", path + "?zone=UTC", CSV, bytes(noDate), 422, "invalid-content");
        add("wrong date", path + "?zone=UTC&date=2026-02-30", CSV, bytes(noDate), 422, "invalid-content");
        add("date far off", path + "?zone=UTC&date=9999-01-01", CSV, bytes(noDate), 422, "invalid-content");
        add("start is no time", path + "?start=soon", CSV, bytes(GOOD), 422, "invalid-content");
        add("unknown parameter", path + "?colour=red", CSV, bytes(GOOD), 400, "invalid-parameter");
    }

    private void said(String path) {
        byte[] log = bytes(GOOD);
        add("said is no JSON", path, FORM, form(log, "{"), 400, "malformed-json");
        add("said too much", path, FORM, form(log, "{\"colour\":1}"), 422, "invalid-content");
        add(
                "unknown mapping",
                path,
                FORM,
                form(log, "{\"mappingId\":\"" + UUID.randomUUID() + "\"}"),
                422,
                "invalid-content");
        add("no boundary", path, "multipart/form-data", form(log, "{}"), 400, "malformed-request");
        add("form cut off", path, FORM, Arrays.copyOf(form(log, "{}"), 300), 400, "malformed-request");
        byte[] noFile = bytes(
                "--" + RecordedDrive.BOUNDARY + "\r\nContent-Disposition: form-data; name=\"drive\"\r\n\r\n{}\r\n--"
                        + RecordedDrive.BOUNDARY + "--\r\n");
        add("form without a log", path, FORM, noFile, 422, "invalid-content");
        add(
                "zone without a log",
                path,
                Client.JSON,
                bytes("{\"zone\":\"UTC\",\"scans\":[{\"text\":\"43 00\"}]}"),
                422,
                "invalid-content");
        add("log for an address of JSON", "/api/v1/vehicles", CSV, log, 415, "unsupported-media-type");
        add("form for an address of JSON", "/api/v1/vehicles", FORM, form(log, "{}"), 415, "unsupported-media-type");
        add("log of no vehicle", "/api/v1/vehicles/" + UUID.randomUUID() + "/drives", CSV, log, 404, "not-found");
    }

    private void mappings() {
        String path = "/api/v1/log-mappings";
        for (String mapping : List.of(
                "{}",
                mapping("\"Zeit\"", "COOLANT", "DEGREES_CELSIUS", "T"),
                mapping("\"T\"", "COOLANT", "DEGREES_CELSIUS", "W"),
                mapping("\"T\"", "COOLANT", "VOLTS", "C"),
                mapping("\"T\"", "LUCK", "VOLTS", "C"),
                mapping("\"T\"", "COOLANT", "DEGREES_CELSIUS", "C").replace("\"columns\":[", "\"columns\":[null,"))) {
            add("mapping " + mapping, path, Client.JSON, bytes(mapping), 422, "invalid-content");
        }
    }

    private static String mapping(String time, String signal, String unit, String header) {
        return """
                {"name":"x","headers":["T","C"],"mapping":{"timeColumn":%s,"timeFormat":"CLOCK_SECONDS","decimalMark":"POINT",
                "columns":[{"header":"%s","signal":"%s","unit":"%s"}]}}""".formatted(time, header, signal, unit);
    }

    private void conditions(String path) {
        for (String condition : List.of(
                "",
                "null",
                "{}",
                "{\"kind\":\"WISH\"}",
                "{\"kind\":\"SOAK\"}",
                "{\"kind\":\"SOAK\",\"seconds\":-5}",
                "{\"kind\":\"SOAK\",\"seconds\":99999999}",
                "{\"kind\":\"AT_START\",\"range\":{\"signal\":\"COOLANT\"}}",
                "{\"kind\":\"AT_START\",\"range\":{\"signal\":\"COOLANT\",\"min\":9,\"max\":1}}",
                "{\"kind\":\"START_DIFFERENCE\",\"upper\":\"COOLANT\",\"lower\":\"PEDAL\",\"most\":1}",
                "{\"kind\":\"REACH\",\"signal\":\"COOLANT\"}",
                "{\"kind\":\"REACH\",\"signal\":\"COOLANT\",\"amount\":-1,\"rise\":true}",
                "{\"kind\":\"HOLD\",\"range\":{\"signal\":\"LOAD\",\"min\":1},\"seconds\":1,\"whileIn\":[null]}")) {
            add(
                    "condition " + condition,
                    path,
                    Client.JSON,
                    bytes("{\"conditions\":[" + condition + "]}"),
                    422,
                    "invalid-content");
        }
        add(
                "adopted and stated",
                path,
                Client.JSON,
                bytes("{\"origin\":\"TYPICAL_ADOPTED\",\"conditions\":[{\"kind\":\"SOAK\",\"seconds\":5}]}"),
                422,
                "invalid-content");
    }

    /** Not a number is not a value: it is counted and left out. */
    @Test
    void whatIsNoNumberIsCountedAndLeftOut() {
        Answer vehicle = shop.vehicle("car with NaN");
        Answer drive = client.send(
                        "POST",
                        "/api/v1/vehicles/" + vehicle.id() + "/drives",
                        CSV,
                        bytes(GOOD.replaceFirst(",750,0,", ",NaN,1e999,")))
                .is(201);
        assertThat(drive.json().at("/log/columns/0/values").asInt()).isEqualTo(1499);
        assertThat(drive.json().at("/log/columns/1/values").asInt()).isEqualTo(1499);
    }
}
