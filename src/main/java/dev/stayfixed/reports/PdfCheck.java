package dev.stayfixed.reports;

import dev.stayfixed.reason.Reason;
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
    Reason said();

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
        public Reason said() {
            return Reason.of(ReportReason.SAME_FILE);
        }
    }

    /** It names a report that was issued, but the file is another one. */
    record Altered(IssuedReport report) implements PdfCheck {
        @Override
        public Optional<IssuedReport> issued() {
            return Optional.of(report);
        }

        @Override
        public Reason said() {
            return Reason.of(ReportReason.OTHER_FILE);
        }
    }

    /** It names no report, or one that was never issued here. */
    record Unknown(Reason reason) implements PdfCheck {
        @Override
        public Reason said() {
            return Reason.of(ReportReason.NOT_ISSUED_HERE, reason);
        }
    }

    static PdfCheck of(byte[] presented, Function<Fingerprint, Optional<IssuedReport>> issued) {
        String named;
        try (PDDocument document = Loader.loadPDF(presented)) {
            named = document.getDocumentInformation().getCustomMetadataValue(PROPERTY);
        } catch (IOException | RuntimeException e) {
            return new Unknown(Reason.of(ReportReason.NO_PDF));
        }
        if (named == null || !named.matches("[0-9a-f]{64}")) {
            return new Unknown(Reason.of(ReportReason.NO_FINGERPRINT));
        }
        Optional<IssuedReport> report = issued.apply(new Fingerprint(named));
        if (report.isEmpty()) {
            return new Unknown(Reason.of(ReportReason.NEVER_ISSUED));
        }
        boolean same = Fingerprint.of(presented).hex().equals(report.get().pdfDigest());
        return same ? new Genuine(report.get()) : new Altered(report.get());
    }
}
