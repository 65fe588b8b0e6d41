package dev.stayfixed.web;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.people.Scope;
import dev.stayfixed.people.Tokens;
import dev.stayfixed.platform.CurrentShop;
import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.net.http.HttpHeaders;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;

/** What pages of other sites may do here, in the browser of somebody who uses the service: nothing. */
abstract class FenceStories extends OverHttp {

    @Autowired
    Tokens tokens;

    @Test
    void anotherNameIsNoneOfThisService() throws IOException {
        ask("GET /api/v1/inbox HTTP/1.1", "Host: elsewhere.example").isProblem(421, "wrong-host");
        ask("GET http://elsewhere.example/api/v1/inbox HTTP/1.1", "Host: elsewhere.example")
                .isProblem(421, "wrong-host");
        ask("GET http://elsewhere.example/api/v1/inbox HTTP/1.1", "Host: localhost")
                .isProblem(400, "malformed-request");
        ask("GET /api/v1/inbox HTTP/1.0").isProblem(400, "malformed-request");
        ask("GET /api/v1/inbox HTTP/1.1", "Host: localhost:" + port).is(200);
        ask("GET http://localhost/api/v1/inbox HTTP/1.1", "Host: localhost").is(200);
    }

    @Test
    void aProgramDoesWhatItsTokenIsFor() {
        String token = tokens.make(CurrentShop.DEFAULT, "a dongle", Scope.DRIVES, Duration.ofDays(1));
        client.get("/api/v1/jobs", "Authorization", "Bearer " + token).isProblem(403, "not-allowed");
        client.get("/api/v1/jobs", "Authorization", "Bearer another").isProblem(401, "sign-in-needed");
    }

    @Test
    void anotherNameWritesNothing() throws IOException {
        Map<String, Long> before = rows();
        String body = "{\"description\":\"planted by another site\"}";
        ask(
                        "POST /api/v1/vehicles HTTP/1.1",
                        "Host: elsewhere.example",
                        "Content-Type: application/json",
                        "Content-Length: " + body.length(),
                        "",
                        body)
                .isProblem(421, "wrong-host");
        assertThat(rows()).isEqualTo(before);
    }

    @Test
    void aBrowserIsToldOnAPage() throws IOException {
        Answer page = ask("GET / HTTP/1.1", "Host: elsewhere.example", "Accept: text/html")
                .is(421);
        assertThat(page.header("Content-Type")).startsWith("text/html");
        assertThat(page.header("Content-Security-Policy")).startsWith("default-src 'none'");
        assertThat(page.body()).contains("<h1>This service does not have that name</h1>", "stayfixed.hosts");
        assertThat(page.body()).doesNotContain("Go back");
    }

    @Test
    void aPageOfAnotherSiteMarksNothingAsRead() {
        Answer vehicle = shop.vehicle("saloon with unread news");
        shop.repair(shop.job(vehicle), "2026-06-01T10:00:00Z");
        shop.drive(vehicle, "2026-06-02T08:00:00Z", Shop.RAN_CLEAN).is(201);
        shop.drive(vehicle, "2026-06-03T08:00:00Z", Shop.RAN_CLEAN).is(201);
        String before = client.get("/api/v1/inbox").body();
        assertThat(client.get("/api/v1/inbox").json().at("/unread").asInt()).isPositive();
        for (String[] sender : List.of(
                new String[] {"Sec-Fetch-Site", "cross-site"},
                new String[] {"Sec-Fetch-Site", "same-site", "Origin", "http://127.0.0.1:" + port},
                new String[] {"Origin", "http://elsewhere.example"},
                new String[] {"Origin", "http://127.0.0.1:" + (port - 1)},
                new String[] {"Origin", "null"})) {
            client.send("POST", "/api/v1/inbox/read", "", new byte[0], sender).isProblem(403, "other-site");
            client.send("POST", "/api/v1/inbox/read", "text/plain", "{}".getBytes(StandardCharsets.UTF_8), sender)
                    .isProblem(403, "other-site");
        }
        assertThat(client.get("/api/v1/inbox").body()).isEqualTo(before);
        client.send("POST", "/api/v1/inbox/read", "", new byte[0], "Origin", "http://127.0.0.1:" + port)
                .is(200);
        assertThat(client.get("/api/v1/inbox").json().at("/unread").asInt()).isZero();
    }

    @Test
    void aFormOfAnotherSiteIsAnsweredWithAPage() {
        Answer page = client.send(
                        "POST",
                        "/settings",
                        "application/x-www-form-urlencoded",
                        "name=Taken+over".getBytes(StandardCharsets.UTF_8),
                        "Sec-Fetch-Site",
                        "cross-site",
                        "Accept",
                        "text/html")
                .is(403);
        assertThat(page.body()).contains("<h1>A page of another site may not do this</h1>");
        assertThat(client.get("/settings").body()).doesNotContain("Taken over");
    }

    @Test
    void whatIsReadIsForOurOwnPagesOnly() {
        Answer answer =
                client.get("/api/v1/inbox", "Sec-Fetch-Site", "cross-site").is(200);
        assertThat(answer.header("Cross-Origin-Resource-Policy")).isEqualTo("same-origin");
        assertThat(answer.headers().map()).doesNotContainKey("access-control-allow-origin");
    }

    @Test
    void aBrowserIsToldToKeepOthersOutAndToOfferNothingThatNoPageUses() {
        for (String path : List.of("/", "/api/v1/inbox", "/nowhere", "/d/unknown")) {
            Answer answer = client.get(path);
            assertThat(answer.header("Cross-Origin-Opener-Policy")).as(path).isEqualTo("same-origin");
            assertThat(answer.header("Permissions-Policy"))
                    .as(path)
                    .contains("camera=()", "geolocation=()")
                    .doesNotContain("web-share", "clipboard-write");
            assertThat(answer.header("Strict-Transport-Security"))
                    .as("plain http")
                    .isEmpty();
        }
    }

    /** A request of which every line is written as it stands. */
    private Answer ask(String... lines) throws IOException {
        List<String> request = List.of(lines);
        int end = request.indexOf("") < 0 ? request.size() : request.indexOf("");
        String head = String.join("\r\n", request.subList(0, end)) + "\r\nConnection: close\r\n\r\n";
        String body = String.join("\r\n", request.subList(Math.min(end + 1, request.size()), request.size()));
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
            socket.setSoTimeout(60_000);
            socket.getOutputStream().write((head + body).getBytes(StandardCharsets.ISO_8859_1));
            return answer(new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8));
        }
    }

    private static Answer answer(String text) {
        String[] parts = text.split("\r\n\r\n", 2);
        List<String> head = parts[0].lines().toList();
        Map<String, List<String>> headers = head.stream()
                .skip(1)
                .map(line -> line.split(": ", 2))
                .collect(Collectors.groupingBy(
                        line -> line[0], Collectors.mapping(line -> line[1], Collectors.toList())));
        return new Answer(
                Integer.parseInt(head.get(0).split(" ", -1)[1]),
                HttpHeaders.of(headers, (name, value) -> true),
                unchunked(parts[1]));
    }

    /** Of an answer that comes in one chunk, or in none. */
    private static String unchunked(String body) {
        return body.matches("(?s)[0-9a-fA-F]+\r\n.*")
                ? body.substring(body.indexOf('\n') + 1, body.lastIndexOf("\r\n0\r\n"))
                : body;
    }
}
