package dev.stayfixed.reports;

import dev.stayfixed.platform.CurrentShop;
import dev.stayfixed.platform.storage.StoredTime;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Rows of issued reports: written once, never changed. */
@Repository
class StoredReports {

    private static final String SELECT =
            "select job_id, fingerprint, issued_at, facts, pdf_digest, pdf from issued_report where shop_id = ? and ";

    private final JdbcClient jdbc;
    private final CurrentShop shop;

    StoredReports(JdbcClient jdbc, CurrentShop shop) {
        this.jdbc = jdbc;
        this.shop = shop;
    }

    Optional<IssuedReport> find(Fingerprint fingerprint) {
        return jdbc.sql(SELECT + "fingerprint = ?")
                .params(shop.id(), fingerprint.hex())
                .query((row, n) -> report(row))
                .optional();
    }

    Optional<IssuedReport> latest(UUID jobId) {
        return jdbc.sql(SELECT + "job_id = ? order by issued_at desc, id desc limit 1")
                .params(shop.id(), jobId)
                .query((row, n) -> report(row))
                .optional();
    }

    void add(IssuedReport report) {
        jdbc.sql(
                        "insert into issued_report (id, shop_id, job_id, fingerprint, issued_at, state, facts, pdf_digest, pdf)"
                                + " values (?, ?, ?, ?, ?, ?, ?, ?, ?)")
                .params(
                        UUID.randomUUID(),
                        shop.id(),
                        report.jobId(),
                        report.fingerprint().hex(),
                        StoredTime.of(report.issuedAt()),
                        report.facts().state().name(),
                        Fingerprint.canonical(report.facts()),
                        report.pdfDigest(),
                        report.pdf())
                .update();
    }

    private static IssuedReport report(ResultSet row) throws SQLException {
        return new IssuedReport(
                row.getObject("job_id", UUID.class),
                new Fingerprint(row.getString("fingerprint")),
                StoredTime.in(row, "issued_at"),
                Fingerprint.facts(row.getString("facts")),
                row.getString("pdf_digest"),
                row.getBytes("pdf"));
    }
}
