package dev.stayfixed.reports;

import java.io.IOException;
import java.util.Optional;
import java.util.function.Function;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;

/** What a presented PDF is. */
public sealed interface PdfCheck {

    /** Where a PDF says which report it is. */
    String PROPERTY = "StayfixedFingerprint";

    /** In a sentence. */
    String words();

    /** What was issued under the fingerprint that the file carries. */
    default Optional<IssuedReport> issued() {
        return Optional.empty();
    }

    /** Byte for byte the file that was issued. */
    record Genuine(IssuedReport report) implements PdfCheck {
        @Override
        public Optional<IssuedReport> issued() {
            return Optional.of(report);
        }

        @Override
        public String words() {
            return "This file is, byte for byte, the report that this service issued.";
        }
    }

    /** It names a report that was issued, but the file is another one. */
    record Altered(IssuedReport report) implements PdfCheck {
        @Override
        public Optional<IssuedReport> issued() {
            return Optional.of(report);
        }

        @Override
        public String words() {
            return "This file carries the fingerprint of a report that this service issued, but it is not the same file: it was"
                    + " changed or saved anew. Trust the stored report, not the file.";
        }
    }

    /** It names no report, or one that was never issued here. */
    record Unknown(String reason) implements PdfCheck {
        @Override
        public String words() {
            return "This service did not issue this file: " + reason + ".";
        }
    }

    static PdfCheck of(byte[] presented, Function<Fingerprint, Optional<IssuedReport>> issued) {
        String named;
        try (PDDocument document = Loader.loadPDF(presented)) {
            named = document.getDocumentInformation().getCustomMetadataValue(PROPERTY);
        } catch (IOException | RuntimeException e) {
            return new Unknown("it cannot be read as a PDF");
        }
        if (named == null || !named.matches("[0-9a-f]{64}")) {
            return new Unknown("it carries no fingerprint");
        }
        Optional<IssuedReport> report = issued.apply(new Fingerprint(named));
        if (report.isEmpty()) {
            return new Unknown("no report with the fingerprint that it carries was ever issued");
        }
        boolean same = Fingerprint.of(presented).hex().equals(report.get().pdfDigest());
        return same ? new Genuine(report.get()) : new Altered(report.get());
    }
}
