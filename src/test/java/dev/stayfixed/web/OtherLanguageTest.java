package dev.stayfixed.web;

import static dev.stayfixed.web.RecordedDrive.CSV;
import static dev.stayfixed.web.RecordedDrive.bytes;
import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.platform.OwnProcess;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The main pages in a language that is English in wide letters: what stands there in plain letters is no text of ours. People write Greek
 * here, so nothing of theirs is taken for one.
 */
class OtherLanguageTest {

    /** What stands so in every language: our name, that of the shop, of the rule set and of languages, and abbreviations. */
    private static final Pattern IN_EVERY_LANGUAGE = Pattern.compile(
            "\\b(?:Stayfixed|Default shop|English|Deutsch|Español|Qz|two-trip 2026\\.2|UTC|VIN|http://127\\.0\\.0\\.1:\\d+/d/[\\w-]+)(?![\\w-])");

    /** Java names the months of this language in English. */
    private static final Pattern MONTH =
            Pattern.compile("\\d{1,2} (?:Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)\\w*");

    /** Fingerprints and identifiers. */
    private static final Pattern HEX = Pattern.compile("\\b[0-9a-f]{4,}(?:[- ][0-9a-f]{4,})*\\b");

    @TempDir
    static Path folder;

    private static OwnProcess service;
    private static Client client;
    private static final Map<String, String> PAGES = new LinkedHashMap<>();

    @BeforeAll
    static void aShopThatSpeaksIt() throws IOException {
        WideLanguage.write(folder);
        service = OwnProcess.with(
                folder,
                OwnProcess.url(folder),
                "--stayfixed.language=" + WideLanguage.CODE,
                "--stayfixed.background=false");
        client = new Client(service.port());
        Shop shop = new Shop(client);
        Answer vehicle = shop.vehicle("Μπλε αυτοκίνητο");
        Answer job = client.post("/api/v1/jobs", """
                        {"vehicleId":"%s","complaint":"Η λυχνία ανάβει","customer":"Α. Β.","faults":[{"code":"P0420"},{"code":"P0300"}],
                         "scan":"03\\n43 01 04 20\\n01 01\\n41 01 81 07 E5 00"}""".formatted(vehicle.id())).is(201);
        String fault = "/api/v1/jobs/" + job.id() + "/faults/" + job.at("/faults/0/id");
        client.post(fault + "/conditions", """
                        {"source":"Εγχειρίδιο","conditions":[
                          {"kind":"HOLD","range":{"signal":"VEHICLE_SPEED","min":70,"max":110},"seconds":60,"unbroken":true,
                           "whileIn":[{"signal":"COOLANT","min":70}]}]}""").is(201);
        client.post("/api/v1/jobs/" + job.id() + "/repairs", """
                        {"performedAt":"2026-06-01T10:00:00Z","description":"Καταλύτης","codesCleared":true,"technician":"Γ.",
                         "measurements":[{"quantity":"Αντίσταση","unit":"Ω","expectedMin":5,"expectedMax":7,"before":"OPEN","after":6.1,
                         "testLeadsVerified":true}]}""").is(201);
        shop.drive(vehicle, "2026-06-02T08:00:00Z", Shop.DID_NOT_RUN).is(201);
        Answer clean =
                shop.drive(vehicle, "2026-06-03T08:00:00Z", Shop.RAN_CLEAN).is(201);
        Answer failed = shop.drive(vehicle, "2026-06-04T08:00:00Z", Shop.RAN_AND_FAILED + "\\n41 0C 1A F8\\n?? 41")
                .is(201);
        Answer recorded = client.send(
                        "POST",
                        "/api/v1/vehicles/" + vehicle.id() + "/drives",
                        CSV,
                        bytes(RecordedDrive.log("2026-06-05T08:00:00Z", 100)))
                .is(201);
        Answer impossible = client.send(
                        "POST",
                        "/api/v1/vehicles/" + vehicle.id() + "/drives",
                        CSV,
                        bytes(RecordedDrive.log("2026-06-06T08:00:00Z", 100)
                                .replace(",80,", ",999,")
                                .replace(",50,", ",999,")))
                .is(201);
        client.put("/api/v1/drives/" + impossible.id() + "/left-out", "{\"reason\":\"Λάθος\"}")
                .is(200);
        String driver = client.post("/api/v1/jobs/" + job.id() + "/driver-link", "")
                .is(201)
                .at("/url");
        client.post("/api/v1/jobs/" + job.id() + "/report", "").is(201);
        for (String page : List.of(
                "/",
                "/?q=%CE%B6",
                "/jobs/" + job.id(),
                "/jobs/" + job.id() + "/report",
                "/jobs/" + job.id() + "/sheet?link=" + driver.substring(driver.lastIndexOf('/') + 1),
                "/jobs/" + job.id() + "/faults/" + job.at("/faults/0/id") + "/conditions",
                "/vehicles/" + vehicle.id(),
                "/drives/" + clean.id(),
                "/drives/" + failed.id(),
                "/drives/" + recorded.id(),
                "/drives/" + impossible.id(),
                "/closed",
                "/learning",
                "/inbox",
                "/reports/check",
                "/settings",
                "/settings/notifications",
                "/settings/webhooks",
                "/jobs/new",
                "/vehicles/" + vehicle.id() + "/drives/new",
                "/jobs/" + job.id() + "/repairs/new",
                URI.create(driver).getPath(),
                "/nowhere")) {
            PAGES.put(page, client.get(page, "Accept", "text/html").body());
        }
    }

    @AfterAll
    static void end() {
        service.close();
    }

    @Test
    @DisplayName("no page shows a plain word but people's own, codes and what stands so in every language")
    void noPageShowsAnotherLanguage() {
        Set<String> plain = new TreeSet<>();
        PAGES.forEach((address, page) -> {
            assertThat(page).as(address).contains("<html").containsPattern("[Ａ-ｚ]{3}");
            WideLanguage.plainWords(withoutNames(page))
                    .forEach(word -> plain.add(address.replaceAll("[0-9a-f-]{36}", "*") + ": " + word));
        });
        assertThat(plain).isEmpty();
    }

    private static String withoutNames(String page) {
        return HEX.matcher(MONTH.matcher(IN_EVERY_LANGUAGE.matcher(page).replaceAll("7"))
                        .replaceAll("7"))
                .replaceAll("7");
    }

    @Test
    void theInterfaceStaysEnglish() {
        assertThat(client.get("/api/v1/jobs").is(200).body()).contains("waiting for its first trip");
    }

    @Test
    void aPlainWordOnAPageIsFound() {
        List<String> found = new ArrayList<>(
                WideLanguage.plainWords(
                        "<p title=\"held\">not&nbsp;known <code>41 41</code><!-- no --><b aria-label='Ｙｅｓ'>Ｙｅｓ P0420 7</b></p>"));
        assertThat(found)
                .containsExactly("held in \"held\"", "not in \"not\u00A0known\"", "known in \"not\u00A0known\"");
    }
}
