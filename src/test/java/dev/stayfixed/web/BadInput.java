package dev.stayfixed.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.net.http.HttpHeaders;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.UUID;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Whatever comes in: a 4xx problem of the right type, and nothing stored. */
abstract class BadInput extends OverHttp {

    private static final String V = "/api/v1/vehicles";
    private static final String J = "/api/v1/jobs";

    /** One request that must be refused. */
    @SuppressWarnings("ArrayRecordComponent")
    record Case(String name, String method, String path, String type, byte[] body, int status, String slug) {}

    private final List<Case> cases = new ArrayList<>();

    private void json(String name, String path, String body, int status, String slug) {
        add(name, "POST", path, Client.JSON, body.getBytes(StandardCharsets.UTF_8), status, slug);
    }

    private void add(String name, String method, String path, String type, byte[] body, int status, String slug) {
        cases.add(new Case(name, method, path, type, body, status, slug));
    }

    @TestFactory
    List<DynamicTest> badInputIsRefusedAndNothingIsStored() {
        Answer vehicle = shop.vehicle("car that gets bad input");
        Answer job = shop.job(vehicle);
        bodies();
        values();
        drives("/api/v1/vehicles/" + vehicle.id() + "/drives");
        jobs(vehicle.id(), job.id());
        addresses(vehicle.id());
        return cases.stream()
                .map(c -> DynamicTest.dynamicTest(c.name(), () -> isRefused(c)))
                .toList();
    }

    private void isRefused(Case c) {
        Map<String, Long> before = rows();
        client.send(c.method(), c.path(), c.type(), c.body()).isProblem(c.status(), c.slug());
        client.send(
                        c.method(),
                        c.path(),
                        c.type(),
                        c.body(),
                        "Idempotency-Key",
                        UUID.randomUUID().toString())
                .isProblem(c.status(), c.slug());
        assertThat(rows()).isEqualTo(before);
    }

    private void bodies() {
        json("empty", V, "", 400, "malformed-json");
        json("blank", V, "  \n", 400, "malformed-json");
        json("null", V, "null", 400, "malformed-json");
        json("list for object", V, "[]", 422, "invalid-content");
        json("number for object", V, "7", 422, "invalid-content");
        json("text for object", V, "\"car\"", 422, "invalid-content");
        json("cut off", V, "{\"description\":\"x\"", 400, "malformed-json");
        json("two documents", V, "{\"description\":\"x\"} {}", 422, "invalid-content");
        json("duplicate key", V, "{\"description\":\"x\",\"description\":\"y\"}", 400, "malformed-json");
        json("unknown property", V, "{\"description\":\"x\",\"colour\":\"red\"}", 422, "invalid-content");
        json("deep", V, "[".repeat(100_000), 422, "invalid-content");
        json("deep objects", V, "{\"a\":".repeat(2000) + "1" + "}".repeat(2000), 400, "malformed-json");
        json("NaN", V, "{\"description\":\"x\",\"modelYear\":NaN}", 400, "malformed-json");
        json("comment", V, "{/* x */\"description\":\"x\"}", 400, "malformed-json");
        json("huge", V, "{\"description\":\"" + "x".repeat(2_200_000) + "\"}", 413, "content-too-large");
        json("long number", V, "{\"description\":\"x\",\"modelYear\":" + "9".repeat(1000) + "}", 400, "malformed-json");
        byte[] noise = new byte[3000];
        new Random(1).nextBytes(noise);
        add("binary", "POST", V, Client.JSON, noise, 400, "not-utf-8");
        for (String charset : List.of("UTF-16", "UTF-16LE", "UTF-32BE")) {
            byte[] body = "{\"description\":\"x\"}".getBytes(Charset.forName(charset));
            add(
                    charset + ", said",
                    "POST",
                    V,
                    Client.JSON + ";charset=" + charset,
                    body,
                    415,
                    "unsupported-media-type");
        }
        byte[] marked = "{\"description\":\"x\"}".getBytes(StandardCharsets.UTF_16);
        add("UTF-16, not said", "POST", V, Client.JSON, marked, 400, "not-utf-8");
        byte[] unmarked = "{\"description\":\"x\"}".getBytes(StandardCharsets.UTF_16LE);
        add("UTF-16 without mark", "POST", V, Client.JSON, unmarked, 400, "not-utf-8");
        byte[] latin = "{\"description\":\"citro\u00EBn\"}".getBytes(StandardCharsets.ISO_8859_1);
        add("Latin-1", "POST", V, Client.JSON, latin, 400, "not-utf-8");
        byte[] good = "{\"description\":\"x\"}".getBytes(StandardCharsets.UTF_8);
        add("XML", "POST", V, "application/xml", good, 415, "unsupported-media-type");
        add("form", "POST", V, "application/x-www-form-urlencoded", good, 415, "unsupported-media-type");
        add("no media type", "POST", V, "", good, 415, "unsupported-media-type");
        for (String type : List.of(
                "*/*",
                "application/*",
                "application/*+json",
                "text/*",
                "application/yaml",
                "application/x-yaml",
                "application/cbor",
                "application/problem+json",
                "application/merge-patch+json",
                "text/html")) {
            add("body as " + type, "POST", V, type, good, 415, "unsupported-media-type");
        }
        byte[] twice = "description: x\ndescription: y\n".getBytes(StandardCharsets.UTF_8);
        add("YAML with a key twice", "POST", V, "application/yaml", twice, 415, "unsupported-media-type");
        add("plain text for JSON", "POST", V, Client.TEXT, good, 415, "unsupported-media-type");
        add("garbage media type", "POST", V, "json", good, 415, "unsupported-media-type");
    }

    private void values() {
        json("no description", V, "{}", 422, "invalid-content");
        json("null description", V, "{\"description\":null}", 422, "invalid-content");
        json("blank description", V, "{\"description\":\"  \"}", 422, "invalid-content");
        json("long description", V, "{\"description\":\"" + "x".repeat(201) + "\"}", 422, "invalid-content");
        json("number for text", V, "{\"description\":5}", 422, "invalid-content");
        json("object for text", V, "{\"description\":{}}", 422, "invalid-content");
        json("U+0000", V, "{\"description\":\"a\\u0000b\"}", 422, "invalid-content");
        json("escape character", V, "{\"description\":\"a\\u001bb\"}", 422, "invalid-content");
        json("half a surrogate pair", V, "{\"description\":\"a\\ud800b\"}", 422, "invalid-content");
        json("raw control character", V, "{\"description\":\"a\u0001b\"}", 400, "malformed-json");
        json("text for number", V, "{\"description\":\"x\",\"modelYear\":\"2012\"}", 422, "invalid-content");
        json("fraction for whole number", V, "{\"description\":\"x\",\"modelYear\":2012.5}", 422, "invalid-content");
        json("number too large", V, "{\"description\":\"x\",\"modelYear\":99999999999}", 422, "invalid-content");
        json("year of another age", V, "{\"description\":\"x\",\"modelYear\":12}", 422, "invalid-content");
        json("unknown word", V, "{\"description\":\"x\",\"ignition\":\"STEAM\"}", 422, "invalid-content");
        json("number for word", V, "{\"description\":\"x\",\"ignition\":0}", 422, "invalid-content");
        json("short VIN", V, "{\"description\":\"x\",\"vin\":\"123\"}", 422, "invalid-content");
        json("VIN with an O", V, "{\"description\":\"x\",\"vin\":\"1M8GDM9AOKP042788\"}", 422, "invalid-content");
    }

    private void drives(String path) {
        json("neither summary nor scan", path, "{\"start\":\"2026-06-01T08:00:00Z\"}", 422, "invalid-content");
        json("summary without start", path, "{\"summary\":{\"distance\":10}}", 422, "invalid-content");
        for (String time : List.of(
                "yesterday",
                "2026-06-01",
                "2026-06-01T08:00:00",
                "2026-06-01T08:00:60Z",
                "+999999999-01-01T00:00:00Z",
                "1989-12-31T23:59:59Z",
                "2101-01-01T00:00:00Z",
                "2026-02-30T08:00:00Z",
                "2026-06-01T25:00:00Z",
                "")) {
            json("start " + time, path, drive("\"start\":\"" + time + "\"", "{}"), 422, "invalid-content");
        }
        json("start as number", path, drive("\"start\":1780000000", "{}"), 422, "invalid-content");
        json("start in the future", path, drive("\"start\":\"2026-07-01T08:00:00Z\"", "{}"), 422, "time-in-future");
        json(
                "end before start",
                path,
                drive("\"start\":\"2026-06-01T08:00:00Z\",\"end\":\"2026-06-01T07:00:00Z\"", "{}"),
                422,
                "invalid-content");
        for (String summary : List.of(
                "{\"runTime\":1e999}",
                "{\"runTime\":-1e999}",
                "{\"runTime\":-1}",
                "{\"runTime\":\"NaN\"}",
                "{\"runTime\":\"600\"}",
                "{\"runTime\":true}",
                "{\"fuelLevel\":101}",
                "{\"ambient\":-300}",
                "{\"startCoolant\":90,\"peakCoolant\":20}",
                "{\"runTime\":100,\"fastTime\":200}",
                "{\"speed\":3}",
                "{\"operatingPoints\":[null]}",
                "{\"operatingPoints\":[{}]}",
                "{\"operatingPoints\":[{\"engineSpeed\":1,\"load\":200,\"coolant\":20}]}")) {
            json(
                    "summary " + summary,
                    path,
                    drive("\"start\":\"2026-06-01T08:00:00Z\"", summary),
                    422,
                    "invalid-content");
        }
        json("null scan", path, "{\"scans\":[null]}", 422, "invalid-content");
        json("empty scan", path, "{\"scans\":[{\"text\":\"\"}]}", 422, "invalid-content");
        json("scan without text", path, "{\"scans\":[{\"moment\":\"AFTER\"}]}", 422, "invalid-content");
        json("unknown moment", path, "{\"scans\":[{\"moment\":\"LATER\",\"text\":\"43 00\"}]}", 422, "invalid-content");
        json("scan not understood", path, "{\"scans\":[{\"text\":\"hello\"}]}", 422, "scan-not-understood");
        json(
                "many scans",
                path,
                "{\"scans\":[" + "{\"text\":\"43 00\"},".repeat(20) + "{\"text\":\"43 00\"}]}",
                422,
                "invalid-content");
        text("text, empty", path, "", 422, "invalid-content");
        text("text, not a scan", path, "hello", 422, "scan-not-understood");
        text("text, U+0000", path, "43 00\u0000", 400, "not-utf-8");
        text("text, escape character", path, "43 00\u001b", 422, "invalid-content");
        text("text, too long", path, "43 00\n".repeat(200_000), 422, "invalid-content");
        text("scan, empty", "/api/v1/scans", " ", 422, "invalid-content");
    }

    private void text(String name, String path, String body, int status, String slug) {
        add(name, "POST", path, Client.TEXT, body.getBytes(StandardCharsets.UTF_8), status, slug);
    }

    private static String drive(String times, String summary) {
        return "{" + times + ",\"summary\":" + summary + "}";
    }

    private void jobs(String vehicle, String job) {
        String unknown = UUID.randomUUID().toString();
        json("job without vehicle", J, "{\"faults\":[{\"code\":\"P0420\"}]}", 422, "invalid-content");
        json("job of unknown vehicle", J, job(unknown, "{\"code\":\"P0420\"}"), 422, "invalid-content");
        json("job of garbage vehicle", J, job("garbage", "{\"code\":\"P0420\"}"), 422, "invalid-content");
        json("job without faults", J, job(vehicle, ""), 422, "invalid-content");
        for (String fault : List.of(
                "null",
                "{}",
                "\"P0420\"",
                "{\"code\":\"X0420\"}",
                "{\"code\":\"P042\"}",
                "{\"code\":\"P0G20\"}",
                "{\"code\":\"\"}",
                "{\"code\":420}",
                "{\"code\":\"P0420\",\"trips\":\"THREE\"}",
                "{\"code\":\"P0420\",\"requiredPasses\":1}",
                "{\"code\":\"P0420\",\"requiredPasses\":1000000}",
                "{\"code\":\"P0420\",\"weakestEvidence\":\"DRIVEN\"}",
                "{\"code\":\"P0420\",\"enablingConditions\":[{\"quantity\":\"AMBIENT\"}]}",
                "{\"code\":\"P0420\",\"enablingConditions\":[{\"quantity\":\"AMBIENT\",\"min\":9,\"max\":1}]}",
                "{\"code\":\"P0420\",\"enablingConditions\":[null]}",
                "{\"code\":\"P0420\",\"freezeFrame\":{\"load\":1}}",
                "{\"code\":\"P0420\",\"freezeFrame\":{\"engineSpeed\":1,\"load\":-1,\"coolant\":1}}")) {
            json("fault " + fault, J, job(vehicle, fault), 422, "invalid-content");
        }
        json("same fault twice", J, job(vehicle, "{\"code\":\"P0300\"},{\"code\":\"p0300\"}"), 409, "fault-exists");
        String repairs = J + "/" + job + "/repairs";
        json("repair of unknown job", J + "/" + unknown + "/repairs", "{\"description\":\"x\"}", 404, "not-found");
        json("repair without description", repairs, "{}", 422, "invalid-content");
        json(
                "repair of unknown fault",
                repairs,
                "{\"description\":\"x\",\"faultIds\":[\"" + unknown + "\"]}",
                422,
                "invalid-content");
        json(
                "repair tomorrow",
                repairs,
                "{\"description\":\"x\",\"performedAt\":\"2026-07-02T00:00:00Z\"}",
                422,
                "time-in-future");
        json("null part", repairs, "{\"description\":\"x\",\"parts\":[null]}", 422, "invalid-content");
        json("reading as word", repairs, measured("\"before\":\"SHORT\""), 422, "invalid-content");
        json("reading without end", repairs, measured("\"before\":1e999"), 422, "invalid-content");
        json(
                "deep reading",
                repairs,
                measured("\"before\":" + "[".repeat(5000) + "]".repeat(5000)),
                400,
                "malformed-json");
        json("limits the wrong way", repairs, measured("\"expectedMin\":2,\"expectedMax\":1"), 422, "invalid-content");
        json("close without If-Match", J + "/" + job + "/close", "{\"reason\":\"x\"}", 428, "precondition-required");
    }

    private static String job(String vehicle, String faults) {
        return "{\"vehicleId\":\"" + vehicle + "\",\"faults\":[" + faults + "]}";
    }

    private static String measured(String rest) {
        return "{\"description\":\"x\",\"measurements\":[{\"quantity\":\"resistance\",\"unit\":\"ohm\"," + rest + "}]}";
    }

    private void addresses(String vehicle) {
        byte[] none = new byte[0];
        String unknown = UUID.randomUUID().toString();
        for (String path : List.of(
                "/nothing",
                "/api/v1",
                "/api/v1/nothing",
                V + "/" + unknown,
                V + "/garbage",
                V + "/1",
                J + "/" + unknown,
                "/api/v1/drives/" + unknown,
                "/api/v1/drives/" + unknown + "/original",
                V + "/" + unknown + "/drives",
                J + "/" + unknown + "/verdicts",
                "/api/v1/codes/P04200",
                "/api/v1/codes/%20",
                "/api/v1/rule-sets/none",
                "/problems/none",
                "/api/v1/vehicles/" + vehicle + "/")) {
            add("GET " + path, "GET", path, "", none, 404, "not-found");
        }
        for (String path : List.of(J + "/%2e%2e", J + ";x=1", "//api/v1/jobs", J + "/%2f", J + "/%5c", J + "/%00")) {
            add("GET " + path, "GET", path, "", none, 400, "malformed-request");
        }
        for (String query : List.of(
                "limit=0",
                "limit=201",
                "limit=-1",
                "limit=x",
                "limit=99999999999",
                "cursor=x",
                "cursor=%F0%9F",
                "q=%00",
                "q=a%1Bb")) {
            add("GET ?" + query, "GET", V + "?" + query, "", none, 400, "invalid-parameter");
        }
        add("GET ?state", "GET", J + "?state=HALF", "", none, 400, "invalid-parameter");
        add(
                "GET code of steam engine",
                "GET",
                "/api/v1/codes/P0420?ignition=STEAM",
                "",
                none,
                400,
                "invalid-parameter");
        add("DELETE", "DELETE", V + "/" + vehicle, "", none, 405, "method-not-allowed");
        add("PATCH", "PATCH", V, Client.JSON, none, 405, "method-not-allowed");
        add(
                "PUT without If-Match",
                "PUT",
                V + "/" + vehicle,
                Client.JSON,
                "{\"description\":\"x\"}".getBytes(StandardCharsets.UTF_8),
                428,
                "precondition-required");
    }

    @Test
    void headersThatMakeNoSenseAreRefused() {
        Answer vehicle = shop.vehicle("car with headers");
        String path = V + "/" + vehicle.id();
        String body = "{\"description\":\"x\"}";
        client.put(path, body, "If-Match", "3").isProblem(400, "invalid-parameter");
        client.put(path, body, "If-Match", "W/\"1\"").isProblem(412, "version-changed");
        client.put(path, body, "If-Match", "\"7\"").isProblem(412, "version-changed");
        client.get(path, "Accept", "text/html").isProblem(406, "not-acceptable");
        client.get(path, "Accept", "application/yaml").isProblem(406, "not-acceptable");
        client.get(path, "Accept", "garbage").isProblem(406, "not-acceptable");
        client.post(V, body, "Content-Encoding", "gzip").isProblem(415, "unsupported-media-type");
        client.post(V, body, "Idempotency-Key", "\"\"").isProblem(400, "invalid-parameter");
        client.post(V, body, "Idempotency-Key", "k".repeat(256)).isProblem(400, "invalid-parameter");
    }

    @Test
    void requestsThatAreNotHttpAreAnsweredWithAProblemToo() throws IOException {
        for (String request : List.of(
                "GET /api/v1/vehicles?q=<> HTTP/1.1\r\nHost: localhost\r\n\r\n",
                "GET /%zz HTTP/1.1\r\nHost: localhost\r\n\r\n",
                "GET /api/v1/vehicles?q=%zz HTTP/1.1\r\nHost: localhost\r\n\r\n",
                "GET /a\\b HTTP/1.1\r\nHost: localhost\r\n\r\n",
                "GET /api/v1/codes/a%2Fb HTTP/1.1\r\nHost: localhost\r\n\r\n",
                "GET / HTTP/1.1\r\n\r\n",
                "GET / HTTP/1.1\r\nHost: localhost\r\nHost: 127.0.0.1\r\n\r\n",
                "GET / HTTP/1.1\r\nHost: localhost\r\nX: " + "y".repeat(20_000) + "\r\n\r\n",
                "GET /../../etc/passwd HTTP/1.1\r\nHost: localhost\r\n\r\n",
                "POST /api/v1/vehicles HTTP/1.1\r\nHost: localhost\r\nContent-Length: -5\r\n\r\n",
                "G(T / HTTP/1.1\r\nHost: localhost\r\n\r\n")) {
            String answer = raw(request);
            String line = request.lines().findFirst().orElseThrow();
            assertThat(answer)
                    .as(line)
                    .startsWith("HTTP/1.1 4")
                    .contains("application/problem+json")
                    .contains("/problems/");
            assertThat(answer).as(line).doesNotContain("<html").containsIgnoringCase("nosniff");
        }
    }

    @Test
    void aBrokenAddressIsAMalformedRequest() throws IOException {
        String answer = raw("GET /api/v1/vehicles?q=%zz HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n");
        String body = answer.substring(answer.indexOf('{'), answer.lastIndexOf('}') + 1);
        HttpHeaders headers = HttpHeaders.of(
                Map.of(
                        "Content-Type",
                        List.of("application/problem+json"),
                        "X-Content-Type-Options",
                        List.of("nosniff")),
                (name, value) -> true);
        new Answer(400, headers, body).isProblem(400, "malformed-request");
    }

    private String raw(String request) throws IOException {
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
            socket.setSoTimeout(10_000);
            socket.getOutputStream().write(request.getBytes(StandardCharsets.ISO_8859_1));
            socket.shutdownOutput();
            InputStream in = socket.getInputStream();
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"08006", "57P01", "57P03", "53300"})
    void aDatabaseThatIsAwayIsNoMistakeOfTheService(String state) {
        Answer answer = client.get("/planted-failure/database?state=" + state).isProblem(503, "database-away");
        assertThat(answer.header("Retry-After")).isEqualTo("5");
        client.get("/planted-failure/database?state=53100").isProblem(507, "storage-full");
        client.get("/planted-failure/database?state=42703").isProblem(500, "internal-error");
    }

    @Test
    void aMistakeOfTheServiceIsAProblemWithoutItsInside() {
        Answer answer = client.get("/planted-failure").isProblem(500, "internal-error");
        assertThat(answer.body()).doesNotContain("planted\"").doesNotContain("Exception");
    }

    @Test
    void aMistakeIsNamedByItsPlaceAndWhatWasExpected() {
        Answer answer = client.post(J, job(UUID.randomUUID().toString(), "{\"code\":\"P0420\",\"trips\":\"THREE\"}"));
        assertThat(answer.at("/errors/0/pointer")).isEqualTo("#/faults/0/trips");
        assertThat(answer.at("/errors/0/found")).isEqualTo("THREE");
        assertThat(answer.at("/errors/0/expected")).isEqualTo("one of ONE, TWO");
        Answer unknown = client.post(V, "{\"description\":\"x\",\"colour\":\"red\"}");
        assertThat(unknown.at("/errors/0/pointer")).isEqualTo("#/colour");
        assertThat(unknown.at("/errors/0/expected")).contains("description, ignition");
    }
}
