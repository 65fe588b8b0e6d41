package dev.stayfixed.reports.api;

import dev.stayfixed.customer.LinkAddress;
import dev.stayfixed.platform.ForReaders;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.reports.Fingerprint;
import dev.stayfixed.reports.IssuedReport;
import dev.stayfixed.reports.PdfCheck;
import dev.stayfixed.reports.ReportLinks;
import dev.stayfixed.reports.Reports;
import dev.stayfixed.web.api.ReasonAnswer;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.io.IOException;
import java.net.URI;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestPart;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.multipart.MultipartFile;
import org.springframework.web.servlet.support.ServletUriComponentsBuilder;

@ForReaders(by = ForReaders.By.LINK)
@Tag(name = "Reports", description = "The close-out report, and whether a paper is one of those that were issued")
@RestController
@RequestMapping("/api/v1")
class ReportController {

    private final Reports reports;
    private final ReportLinks links;
    private final LinkAddress address;

    ReportController(Reports reports, ReportLinks links, LinkAddress address) {
        this.links = links;
        this.address = address;
        this.reports = reports;
    }

    @Operation(
            summary = "Issue a report on a job; while nothing has changed, it is the one that was issued before",
            description = "An open job gives a report that is marked as interim.")
    @PostMapping("/jobs/{id}/report")
    ResponseEntity<ReportAnswer> issue(@PathVariable UUID id) {
        Reports.Issue issue = reports.issue(id);
        URI location = URI.create(ReportAnswer.path(issue.report()));
        return (issue.isNew()
                        ? ResponseEntity.created(location)
                        : ResponseEntity.ok().location(location))
                .body(ReportAnswer.of(issue.report()));
    }

    @Operation(summary = "The report that was issued last on a job, as PDF")
    @GetMapping(path = "/jobs/{id}/report.pdf", produces = MediaType.APPLICATION_PDF_VALUE)
    ResponseEntity<byte[]> latest(@PathVariable UUID id) {
        return pdf(reports.latest(id)
                .orElseThrow(() -> new Refused(
                        ProblemType.NOT_FOUND,
                        "no report was issued on the job " + id + "; POST /api/v1/jobs/" + id + "/report issues one")));
    }

    /**
     * A link that was just made.
     *
     * @param url of the page that shows the report; it is told this once and cannot be looked up later
     */
    record LinkAnswer(UUID jobId, String url, Instant expiresAt) {}

    @Operation(
            summary = "Make a link by which somebody outside the shop reads the report on a job",
            description =
                    "It shows the report as it stands, with its evidence, and nothing else. Earlier links go on working.")
    @PostMapping("/jobs/{id}/report-link")
    ResponseEntity<LinkAnswer> share(@PathVariable UUID id) {
        ReportLinks.Link link = links.issue(id);
        String url = address.to(
                "/r/" + link.token(),
                ServletUriComponentsBuilder.fromCurrentContextPath().build().toUriString());
        return ResponseEntity.created(URI.create(url)).body(new LinkAnswer(id, url, link.expiresAt()));
    }

    @Operation(summary = "End all links to the report on a job")
    @DeleteMapping("/jobs/{id}/report-link")
    @ResponseStatus(HttpStatus.NO_CONTENT)
    void endLinks(@PathVariable UUID id) {
        links.revoke(id);
    }

    @Operation(summary = "A report by its fingerprint: what this service issued under it")
    @GetMapping("/reports/{fingerprint:[0-9A-Fa-f]+}")
    ReportAnswer one(@PathVariable String fingerprint) {
        return ReportAnswer.of(issued(fingerprint));
    }

    @Operation(summary = "The PDF of a report, byte for byte as it was issued")
    @GetMapping(path = "/reports/{fingerprint:[0-9A-Fa-f]+}.pdf", produces = MediaType.APPLICATION_PDF_VALUE)
    ResponseEntity<byte[]> pdfOf(@PathVariable String fingerprint) {
        return pdf(issued(fingerprint));
    }

    /**
     * What a PDF is.
     *
     * @param verdict GENUINE, ALTERED or UNKNOWN
     * @param report what was issued under the fingerprint that the file carries
     */
    record CheckAnswer(
            String verdict, String explanation, @Nullable ReportAnswer report) {
        static CheckAnswer of(PdfCheck check) {
            if (check instanceof PdfCheck.Genuine genuine) {
                return new CheckAnswer("GENUINE", ReasonAnswer.text(check.said()), ReportAnswer.of(genuine.report()));
            }
            return check instanceof PdfCheck.Altered altered
                    ? new CheckAnswer("ALTERED", ReasonAnswer.text(check.said()), ReportAnswer.of(altered.report()))
                    : new CheckAnswer("UNKNOWN", ReasonAnswer.text(check.said()), null);
        }
    }

    @Operation(summary = "Hold a PDF against what was issued", description = "Send the file as the part \"file\".")
    @PostMapping(path = "/reports/check", consumes = MediaType.MULTIPART_FORM_DATA_VALUE)
    CheckAnswer check(@RequestPart("file") MultipartFile file) throws IOException {
        if (file.getSize() > Reports.LARGEST_PDF) {
            throw new Refused(
                    ProblemType.CONTENT_TOO_LARGE,
                    "the part \"file\": found " + file.getSize() + " bytes, expected at most " + Reports.LARGEST_PDF
                            + "; no report of this service is larger");
        }
        return CheckAnswer.of(reports.check(file.getBytes()));
    }

    private IssuedReport issued(String typed) {
        Fingerprint fingerprint = Fingerprint.typed(typed);
        return reports.issued(fingerprint)
                .orElseThrow(() -> new Refused(
                        ProblemType.NOT_FOUND,
                        "this service issued no report with the fingerprint " + fingerprint.hex()
                                + "; compare it with the paper, digit by digit"));
    }

    private static ResponseEntity<byte[]> pdf(IssuedReport report) {
        return ResponseEntity.ok()
                .contentType(MediaType.APPLICATION_PDF)
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        ContentDisposition.inline()
                                .filename("report-" + report.fingerprint().hex().substring(0, 16) + ".pdf")
                                .build()
                                .toString())
                .body(report.pdf());
    }
}
