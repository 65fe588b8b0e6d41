package dev.stayfixed.web.pages;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.platform.OnH2;
import dev.stayfixed.web.Answer;
import dev.stayfixed.web.Client;
import dev.stayfixed.web.Shop;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.springframework.boot.test.web.server.LocalServerPort;

/** What a page costs a phone on a bad line: itself, its style sheets and its scripts, as they go over the wire. */
@OnH2
class PageBudgetTest {

    /** Bytes without pictures. */
    private static final int BUDGET = 100_000;

    private static final Pattern FETCHED = Pattern.compile("<(?:link rel=\"stylesheet\" href|script src)=\"([^\"]+)\"");

    @LocalServerPort
    int port;

    private final HttpClient http = HttpClient.newHttpClient();
    private final Map<String, Integer> known = new LinkedHashMap<>();

    private byte[] fetched(String path) {
        try {
            return http.send(
                            HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path))
                                    .header("Accept", "text/html, */*")
                                    .header("Accept-Encoding", "gzip")
                                    .build(),
                            HttpResponse.BodyHandlers.ofByteArray())
                    .body();
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    private int weight(String path) {
        byte[] page = fetched(path);
        int bytes = page.length;
        Matcher file = FETCHED.matcher(new String(page, java.nio.charset.StandardCharsets.UTF_8));
        int files = 0;
        while (file.find()) {
            bytes += known.computeIfAbsent(file.group(1), address -> fetched(address).length);
            files++;
        }
        assertThat(files).as(path + " fetches files").isPositive();
        return bytes;
    }

    @Test
    @DisplayName("each main page weighs less than 100 kB without pictures")
    void pagesAreLight() {
        Shop shop = new Shop(new Client(port));
        Answer car = shop.vehicle("Light estate");
        Answer job = shop.job(car);
        shop.repair(job, "2026-06-01T10:00:00Z");
        Answer drive = shop.drive(car, "2026-06-03T08:00:00Z", Shop.RAN_CLEAN).is(201);
        shop.drive(car, "2026-06-04T08:00:00Z", Shop.RAN_AND_FAILED).is(201);
        String url = new Client(port)
                .post("/api/v1/jobs/" + job.id() + "/driver-link", "")
                .is(201)
                .at("/url");
        Map<String, Integer> weights = new LinkedHashMap<>();
        for (String page : List.of(
                "/",
                "/jobs/" + job.id(),
                "/jobs/new",
                "/jobs/" + job.id() + "/repairs/new",
                "/jobs/" + job.id() + "/sheet",
                "/jobs/" + job.id() + "/report",
                "/vehicles/" + car.id(),
                "/vehicles/" + car.id() + "/drives/new",
                "/drives/" + drive.id(),
                "/closed",
                "/inbox",
                "/learning",
                "/settings",
                "/settings/notifications",
                "/settings/webhooks",
                "/reports/check",
                URI.create(url).getPath())) {
            weights.put(page, weight(page));
        }
        assertThat(weights).allSatisfy((page, bytes) -> assertThat(bytes).isLessThan(BUDGET));
    }
}
