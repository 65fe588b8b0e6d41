package dev.stayfixed.reports;

import dev.stayfixed.platform.storage.Durably;
import java.time.Clock;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Service;

/** Reports on a job: as it stands now, as they were issued, and whether a paper is one of them. */
@Service
public class Reports {

    /** Bytes; a file that is larger is none of ours. */
    public static final long LARGEST_PDF = 20L * 1024 * 1024;

    private final FactsOfJob factsOfJob;
    private final StoredReports stored;
    private final ReportPdf pdf;
    private final Durably durably;
    private final Clock clock;

    Reports(FactsOfJob factsOfJob, StoredReports stored, ReportPdf pdf, Durably durably, Clock clock) {
        this.factsOfJob = factsOfJob;
        this.stored = stored;
        this.pdf = pdf;
        this.durably = durably;
        this.clock = clock;
    }

    /** What a report would say now; nothing is stored. */
    public ReportFacts preview(UUID jobId) {
        return factsOfJob.of(jobId);
    }

    /** What came of issuing. */
    public record Issue(IssuedReport report, boolean isNew) {}

    /** Issues a report on a job, open or closed. While nothing has changed, it is the report that was issued before. */
    public Issue issue(UUID jobId) {
        ReportFacts facts = factsOfJob.of(jobId);
        Fingerprint fingerprint = Fingerprint.of(facts);
        return issued(fingerprint)
                .map(report -> new Issue(report, false))
                .orElseGet(() -> first(jobId, facts, fingerprint));
    }

    private Issue first(UUID jobId, ReportFacts facts, Fingerprint fingerprint) {
        Instant now = clock.instant();
        byte[] bytes = pdf.of(facts, fingerprint, now);
        IssuedReport report = new IssuedReport(
                jobId, fingerprint, now, facts, Fingerprint.of(bytes).hex(), bytes);
        return durably.write(() -> {
            durably.hold("report " + fingerprint.hex());
            return issued(fingerprint)
                    .map(issuedMeanwhile -> new Issue(issuedMeanwhile, false))
                    .orElseGet(() -> {
                        stored.add(report);
                        return new Issue(report, true);
                    });
        });
    }

    public Optional<IssuedReport> issued(Fingerprint fingerprint) {
        return durably.read(() -> stored.find(fingerprint));
    }

    /** The report issued last on a job. */
    public Optional<IssuedReport> latest(UUID jobId) {
        return durably.read(() -> stored.latest(jobId));
    }

    /** Holds a PDF against what was issued. */
    public PdfCheck check(byte[] presented) {
        return PdfCheck.of(presented, this::issued);
    }
}
