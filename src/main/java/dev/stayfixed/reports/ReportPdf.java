package dev.stayfixed.reports;

import dev.stayfixed.customer.QrCode;
import dev.stayfixed.jobs.Photos;
import dev.stayfixed.jobs.Shops;
import dev.stayfixed.platform.http.PublicUrl;
import java.time.Instant;
import java.util.Base64;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import org.springframework.stereotype.Component;

/** A report on paper. */
@Component
class ReportPdf {

    private final PdfPages pages;
    private final Shops shops;
    private final PublicUrl publicUrl;
    private final Photos photos;

    ReportPdf(PdfPages pages, Shops shops, PublicUrl publicUrl, Photos photos) {
        this.photos = photos;
        this.publicUrl = publicUrl;
        this.pages = pages;
        this.shops = shops;
    }

    byte[] of(ReportFacts facts, Fingerprint fingerprint, Instant issuedAt) {
        return pages.render(
                "report/report-pdf",
                Map.of(
                        "facts",
                        facts,
                        "pictures",
                        pictures(facts),
                        "qr",
                        QrCode.of(checkedAt(fingerprint)),
                        "fingerprint",
                        fingerprint,
                        "issuedAt",
                        issuedAt,
                        "times",
                        new Times(shops.settings().zone())),
                Map.of(PdfCheck.PROPERTY, fingerprint.hex()),
                issuedAt);
    }

    /** As the PDF holds them: it fetches nothing. */
    private Map<UUID, String> pictures(ReportFacts facts) {
        Map<UUID, String> pictures = new HashMap<>();
        photos.jpegs(facts.job().id())
                .forEach((id, jpeg) -> pictures.put(
                        id, "data:image/jpeg;base64," + Base64.getEncoder().encodeToString(jpeg)));
        return pictures;
    }

    /** Where whoever scans it can look it up; where nobody outside can reach the service, the fingerprint to type in at the workshop. */
    private String checkedAt(Fingerprint fingerprint) {
        return publicUrl
                .stated()
                .map(base -> base + "/reports/check?fingerprint=" + fingerprint.hex())
                .orElse(fingerprint.inGroups());
    }
}
