package dev.stayfixed.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Properties;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.springframework.web.util.HtmlUtils;

/** Drivers and customers read their own language: chosen by the link or by their browser. The shop's pages stay as they are. */
abstract class LanguageStories extends OverHttp {

    private static final Path RESOURCES = Path.of("src", "main", "resources");

    /** Shorter texts may stand inside others. */
    private static final int TELLING = 14;

    private Answer job;
    private String link;

    @BeforeEach
    void aJobThatIsHandedOver() {
        Answer vehicle = shop.vehicle("grey estate");
        job = shop.job(vehicle);
        shop.repair(job, "2026-06-01T10:00:00Z");
        shop.drive(vehicle, "2026-06-03T08:00:00Z", Shop.RAN_CLEAN).is(201);
        String url = client.post("/api/v1/jobs/" + job.id() + "/driver-link", "")
                .is(201)
                .at("/url");
        link = url.substring(url.indexOf("/d/"));
    }

    private static Map<String, String> texts(Path file) throws IOException {
        Properties texts = new Properties();
        try (Reader in = Files.newBufferedReader(file)) {
            texts.load(in);
        }
        Map<String, String> sorted = new TreeMap<>();
        texts.forEach((key, text) -> sorted.put((String) key, (String) text));
        return sorted;
    }

    private static Map<String, String> language(String tag) throws IOException {
        return texts(RESOURCES.resolve(Path.of("languages", tag + ".properties")));
    }

    private static String said(String tag, String key) throws IOException {
        return Objects.requireNonNull(language(tag).get(key), key);
    }

    /** All of a page is in that language: none of the English texts that differ is left. */
    private static void reads(Answer page, String tag, String key) throws IOException {
        Map<String, String> language = language(tag);
        String body = HtmlUtils.htmlUnescape(page.is(200).body());
        assertThat(body).contains("<html lang=\"" + tag + "\"").contains(language.get(key));
        for (String room : List.of("customer", "reports", "telling", "web")) {
            texts(RESOURCES.resolve(Path.of("messages", room + ".properties"))).forEach((name, text) -> {
                if (text.length() >= TELLING && !text.contains("{") && !text.equals(language.get(name))) {
                    assertThat(body).as(name).doesNotContain(">" + text, "\"" + text + "\"");
                }
            });
        }
    }

    @Test
    void theDriverReadsWhatTheBrowserAsksFor() throws IOException {
        reads(client.get(link, "Accept-Language", "de-AT,de;q=0.9,en;q=0.5"), "de", "customer.page.did-repair-hold");
        reads(client.get(link, "Accept-Language", "fi, es-MX;q=0.8"), "es", "customer.page.did-repair-hold");
        assertThat(client.get(link, "Accept-Language", "fi").is(200).body()).contains("Did the repair hold?");
        assertThat(client.get(link).is(200).body()).contains("Did the repair hold?");
    }

    @Test
    @DisplayName("the language of a link comes before that of the browser, and the next requests remember it")
    void theLinkSaysTheLanguage() throws IOException {
        Answer page = client.get(link + "?language=es", "Accept-Language", "de");
        reads(page, "es", "customer.page.did-repair-hold");
        assertThat(page.header("Set-Cookie")).startsWith("language=es;").contains("HttpOnly", "SameSite=Lax");
        reads(client.get(link, "Accept-Language", "de", "Cookie", "language=es"), "es", "customer.page.my-drives");
        Answer refused = client.post(
                link + "/drives", "{\"start\":\"2026-06-03T08:00\",\"minutes\":\"many\"}", "Cookie", "language=de");
        assertThat(refused.body()).contains(said("de", "customer.label.minutes"));
        assertThat(client.get(link + "?language=xx", "Accept-Language", "de").header("Set-Cookie"))
                .isEmpty();
        reads(client.get(link + "?language=..%2Fde", "Accept-Language", "de"), "de", "customer.page.my-drives");
    }

    @Test
    void aLinkThatHasEndedSaysSoInTheDriversLanguage() throws IOException {
        client.send("DELETE", "/api/v1/jobs/" + job.id() + "/driver-link", "", new byte[0])
                .is(204);
        assertThat(client.get(link, "Accept-Language", "es").is(410).body())
                .contains(HtmlUtils.htmlEscape(said("es", "customer.link-ended"), "UTF-8"));
    }

    @Test
    @DisplayName(
            "papers come in the language that the technician chooses for the reader, whatever his own browser asks for")
    void papersComeInTheLanguageOfTheirReader() throws IOException {
        String sheet = "/jobs/" + job.id() + "/sheet";
        String report = "/jobs/" + job.id() + "/report";
        assertThat(client.get(sheet, "Accept-Language", "de").is(200).body()).contains("<html lang=\"en\"");
        reads(client.get(sheet + "?language=de"), "de", "reports.sheet-page.what-drive-after-repair");
        reads(client.get(report + "?language=es"), "es", "reports.report-page.repair-verification-report");
        assertThat(client.get(report, "Cookie", "language=es").is(200).body()).contains("<html lang=\"en\"");
        Answer english = client.post("/api/v1" + report, "").is(201);
        Answer spanish = client.post("/api/v1" + report + "?language=es", "").is(201);
        assertThat(spanish.at("/fingerprint")).isNotEqualTo(english.at("/fingerprint"));
        assertThat(client.get(sheet + ".pdf?language=es").is(200).header("Content-Type"))
                .isEqualTo("application/pdf");
    }

    @Test
    void theShopsOwnPagesKeepTheLanguageOfTheService() {
        assertThat(client.get("/jobs/" + job.id() + "?language=de", "Accept-Language", "de", "Cookie", "language=de")
                        .is(200)
                        .body())
                .contains("<html lang=\"en\"");
    }

    @Test
    void theLanguageOfADriverIsOneThatThereIs() {
        String settings = "/api/v1/jobs/" + job.id() + "/notifications";
        client.put(settings, "{\"driverLanguage\":\"fi\"}", "If-Match", "*").isProblem(422, "invalid-content");
        assertThat(client.put(settings, "{\"driverLanguage\":\"de-AT\"}", "If-Match", "*")
                        .is(200)
                        .at("/driverLanguage"))
                .isEqualTo("de");
    }
}
