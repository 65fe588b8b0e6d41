package dev.stayfixed.reports.api;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.MultiFormatReader;
import com.google.zxing.client.j2se.BufferedImageLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import dev.stayfixed.platform.OnH2;
import dev.stayfixed.web.Answer;
import dev.stayfixed.web.Client;
import dev.stayfixed.web.Shop;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.erdtman.jcs.JsonCanonicalizer;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.verapdf.pdfa.flavours.PDFAFlavour;

/** The close-out report, from the stored facts to the paper and back. */
@OnH2
class ReportTest {

    @LocalServerPort
    int port;

    private Client client;
    private Shop shop;
    private Answer job;

    @BeforeEach
    void aRepairThatHeld() {
        client = new Client(port);
        shop = new Shop(client);
        Answer vehicle = client.post(
                        "/api/v1/vehicles",
                        "{\"description\":\"2011 estate, 1.6 l\",\"plate\":\"KB 4711\",\"modelYear\":2011}")
                .is(201);
        job = client.post(
                        "/api/v1/jobs",
                        "{\"vehicleId\":\"%s\",\"reference\":\"W-1042\",\"complaint\":\"Lamp lit since the motorway\",\"scan\":\"43 01 04 20\\n47 00\\n41 01 81 07 65 00\"}"
                                .formatted(vehicle.id()))
                .is(201);
        client.post("/api/v1/jobs/" + job.id() + "/repairs", """
                        {"performedAt":"2026-06-01T10:00:00Z","description":"Exhaust leak sealed, catalyst replaced","codesCleared":true,
                         "parts":["catalyst"],"technician":"R. Imre","scanBefore":"43 01 04 20","scanAfter":"43 00\\n47 00",
                         "measurements":[{"check":"PART","quantity":"sensor heater resistance","point":"B1S2 pins 3-4","unit":"Ω",
                           "expectedMin":5,"expectedMax":7,"before":"OPEN","after":6.1,"testLeadsVerified":true}]}
                        """).is(201);
        shop.drive(vehicle, "2026-06-02T08:00:00Z", Shop.DID_NOT_RUN).is(201);
        shop.drive(vehicle, "2026-06-03T08:00:00Z", Shop.RAN_CLEAN).is(201);
        shop.drive(vehicle, "2026-06-04T08:00:00Z", Shop.RAN_CLEAN).is(201);
    }

    private Answer issue() {
        return client.post("/api/v1/jobs/" + job.id() + "/report", "");
    }

    @Test
    void anOpenJobGivesAnInterimReportAndAClosedOneAFinalOne() {
        assertThat(issue().is(201).at("/state")).isEqualTo("INTERIM");
        shop.close(job, "{}").is(200);
        Answer last = issue().is(201);
        assertThat(last.at("/state")).isEqualTo("FINAL");
        assertThat(last.at("/facts/faults/0/standing")).isEqualTo("confirmed fixed");
        assertThat(last.at("/facts/faults/0/attempts/0/steps/0/outcome")).isEqualTo("did not run");
        assertThat(last.json()
                        .at("/facts/faults/0/attempts/0/steps/1/evidence/0/grade")
                        .asInt())
                .isEqualTo(3);
        assertThat(last.at("/facts/faults/0/proofs/bench")).isEqualTo("incomplete");
        assertThat(last.at("/facts/faults/0/proofs/road")).isEqualTo("confirmed fixed");
        assertThat(last.at("/facts/faults/0/proofs/held")).startsWith("Held so far for 3 starts and 2 days");
        assertThat(last.json().at("/facts/notCovered").toString())
                .contains("P0420: 2 passed drives rest on evidence that covers the whole catalyst monitor")
                .contains("no inspection result");
    }

    @Test
    void theSameFactsAreIssuedOnce() {
        Answer first = issue().is(201);
        Answer again = issue().is(200);
        assertThat(again.body()).isEqualTo(first.body());
        assertThat(again.header("Location")).isEqualTo(first.header("Location"));
    }

    /** RFC 8785, by the reference implementation of its authors. */
    @Test
    void theFingerprintIsThatOfTheCanonicalFacts() throws IOException {
        Answer report = issue().is(201);
        byte[] canonical = new JsonCanonicalizer(report.json().at("/facts").toString()).getEncodedUTF8();
        assertThat(sha256(canonical)).isEqualTo(report.at("/fingerprint"));
        assertThat(client.get("/api/v1/reports/" + report.at("/fingerprint"))
                        .is(200)
                        .body())
                .isEqualTo(report.body());
    }

    @Test
    void thePaperSaysWhatTheFactsSay() throws IOException {
        Answer report = issue().is(201);
        byte[] pdf = pdf();
        try (PDDocument document = Loader.loadPDF(pdf)) {
            String text = new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
            assertThat(text)
                    .contains("INTERIM", "KB 4711", "W-1042", "Lamp lit since the motorway", "confirmed fixed")
                    .contains("sensor heater resistance (Ω)", "B1S2 pins 3-4", "5 to 7", "open", "6.1")
                    .contains(
                            "Bench proof: incomplete. Still missing: the supply, the ground.",
                            "Road proof: confirmed fixed")
                    .contains("Held so far: Held so far for 3 starts")
                    .contains("Grade 3 of 8, PID $41", "two-trip 2026.2", "did not run")
                    .contains(report.at("/fingerprint").substring(0, 8));
        }
    }

    @Test
    void thePaperSaysWhatWasPutRight() throws IOException {
        Answer seen = shop.see(job);
        client.put(
                        "/api/v1/jobs/" + job.id() + "/repairs/" + seen.at("/repairs/0/id"),
                        "{\"performedAt\":\"2026-06-01T09:00:00Z\",\"correctedBy\":\"R. Imre\",\"reason\":\"typed a wrong hour\"}",
                        "If-Match",
                        seen.etag())
                .is(200);
        issue().is(201);
        try (PDDocument document = Loader.loadPDF(pdf())) {
            String text = new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
            assertThat(text)
                    .contains("Put right in this record since")
                    .containsPattern(
                            "R. Imre: done at. Before: 1 Jun 2026, \\d\\d:00 \\w+. Now: 1 Jun 2026, \\d\\d:00 \\w+. Why: typed a wrong hour");
        }
    }

    /** ISO 19005-2 level A and ISO 14289-1. */
    @Test
    void thePaperIsFitForArchivesAndForScreenReaders() throws Exception {
        issue().is(201);
        byte[] pdf = pdf();
        assertThat(PdfStandards.broken(pdf, PDFAFlavour.PDFA_2_A)).isEmpty();
        assertThat(PdfStandards.broken(pdf, PDFAFlavour.PDFUA_1)).isEmpty();
    }

    @Test
    void aPaperWithAPhotoInAnotherLanguageIsFitLikewise() throws Exception {
        Answer seen = shop.see(job);
        shop.photo(
                        "/api/v1/jobs/" + job.id() + "/repairs/" + seen.at("/repairs/0/id") + "/photos",
                        Shop.picture(0x336699),
                        "6.1 Ω at the plug")
                .is(201);
        client.post("/api/v1/jobs/" + job.id() + "/report?language=de", "").is(201);
        byte[] pdf = pdf();
        assertThat(PdfStandards.broken(pdf, PDFAFlavour.PDFA_2_A)).isEmpty();
        assertThat(PdfStandards.broken(pdf, PDFAFlavour.PDFUA_1)).isEmpty();
        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertThat(document.getDocumentCatalog().getLanguage()).isEqualTo("de");
            assertThat(new PDFTextStripper().getText(document).replaceAll("\\s+", " "))
                    .contains("Reparatur bestätigt", "die Reparatur: 6.1 Ω at the plug");
        }
    }

    /** The code on page one, rendered and read by another library. */
    @Test
    void theCodeOnTheReportIsItsFingerprint() throws Exception {
        Answer report = issue().is(201);
        try (PDDocument document = Loader.loadPDF(pdf())) {
            BufferedImage image = new PDFRenderer(document).renderImageWithDPI(0, 300);
            String read = new MultiFormatReader()
                    .decode(
                            new BinaryBitmap(new HybridBinarizer(new BufferedImageLuminanceSource(image))),
                            Map.of(DecodeHintType.TRY_HARDER, true))
                    .getText();
            assertThat(read.replaceAll("\\W", "")).endsWith(report.at("/fingerprint"));
        }
    }

    @Test
    void theServiceKnowsItsOwnPaperFromAnother() throws IOException {
        issue().is(201);
        byte[] pdf = pdf();
        PdfClient files = new PdfClient(port);
        assertThat(files.check(pdf).at("/verdict").asString()).isEqualTo("GENUINE");

        byte[] altered = new String(pdf, StandardCharsets.ISO_8859_1)
                .concat("\n% one more line")
                .getBytes(StandardCharsets.ISO_8859_1);
        assertThat(files.check(altered).at("/verdict").asString()).isEqualTo("ALTERED");
        assertThat(files.check("no PDF".getBytes(StandardCharsets.US_ASCII))
                        .at("/verdict")
                        .asString())
                .isEqualTo("UNKNOWN");
        client.get("/api/v1/reports/" + "0".repeat(64)).isProblem(404, "not-found");
        client.get("/api/v1/reports/12ab").isProblem(400, "invalid-parameter");
    }

    /** The code on paper, rendered and read by another library, is the address of the page. */
    @Test
    void theCodeOnTheSheetOpensTheDriversPage() throws Exception {
        Answer link =
                client.post("/api/v1/jobs/" + job.id() + "/driver-link", "").is(201);
        byte[] pdf = new PdfClient(port).fetch(link.at("/sheet").replace("/sheet?", "/sheet.pdf?"), "sheet.pdf");
        try (PDDocument document = Loader.loadPDF(pdf)) {
            var page = new PDFRenderer(document).renderImageWithDPI(0, 150);
            var read = new MultiFormatReader()
                    .decode(new BinaryBitmap(new HybridBinarizer(new BufferedImageLuminanceSource(page))));
            assertThat(read.getText()).isEqualTo(link.at("/url"));
            assertThat(new PDFTextStripper().getText(document))
                    .contains("parked")
                    .doesNotContain("Lamp lit");
        }
        assertThat(PdfStandards.broken(pdf, PDFAFlavour.PDFA_2_A)).isEmpty();
        assertThat(PdfStandards.broken(pdf, PDFAFlavour.PDFUA_1)).isEmpty();
        assertThat(new PdfClient(port).fetch(link.at("/sheet").replace("/sheet?", "/sheet.pdf?"), "sheet.pdf"))
                .as("the same content gives the same bytes")
                .isEqualTo(pdf);
        client.get(link.at("/sheet")).is(200);
        client.get("/jobs/" + job.id() + "/report").is(200);
    }

    private byte[] pdf() throws IOException {
        return new PdfClient(port).fetch("/api/v1/jobs/" + job.id() + "/report.pdf", "report.pdf");
    }

    private static String sha256(byte[] bytes) {
        try {
            return java.util.HexFormat.of()
                    .formatHex(
                            java.security.MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (java.security.NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
