package dev.stayfixed.reports;

import dev.stayfixed.jobs.Shops;
import java.time.Instant;
import java.util.Map;
import org.springframework.stereotype.Component;

/** A report on paper. */
@Component
class ReportPdf {

    private final PdfPages pages;
    private final Shops shops;

    ReportPdf(PdfPages pages, Shops shops) {
        this.pages = pages;
        this.shops = shops;
    }

    byte[] of(ReportFacts facts, Fingerprint fingerprint, Instant issuedAt) {
        return pages.render(
                "report/report-pdf",
                Map.of(
                        "facts",
                        facts,
                        "fingerprint",
                        fingerprint,
                        "issuedAt",
                        issuedAt,
                        "times",
                        new Times(shops.settings().zone())),
                Map.of(PdfCheck.PROPERTY, fingerprint.hex()),
                issuedAt);
    }
}
