package dev.stayfixed.reports.api;

import com.fasterxml.jackson.annotation.JsonProperty;
import dev.stayfixed.reports.IssuedReport;
import dev.stayfixed.reports.ReportFacts;
import java.time.Instant;
import java.util.Map;
import java.util.UUID;

/**
 * An issued report.
 *
 * @param fingerprint SHA-256 over the canonical JSON (RFC 8785) of {@code facts}, in hex
 * @param pdfSha256 digest of the PDF as it was issued, in hex
 */
record ReportAnswer(
        UUID jobId,
        String fingerprint,
        Instant issuedAt,
        ReportFacts.State state,
        String pdfSha256,
        ReportFacts facts,
        @JsonProperty("_links") Map<String, Link> links) {

    record Link(String href) {}

    static ReportAnswer of(IssuedReport report) {
        return new ReportAnswer(
                report.jobId(),
                report.fingerprint().hex(),
                report.issuedAt(),
                report.facts().state(),
                report.pdfDigest(),
                report.facts(),
                Map.of(
                        "self", new Link(path(report)),
                        "pdf", new Link(path(report) + ".pdf"),
                        "job", new Link("/api/v1/jobs/" + report.jobId())));
    }

    static String path(IssuedReport report) {
        return "/api/v1/reports/" + report.fingerprint().hex();
    }
}
