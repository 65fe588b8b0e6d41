package dev.stayfixed.reports;

import dev.stayfixed.jobs.Jobs;
import dev.stayfixed.platform.CurrentShop;
import dev.stayfixed.platform.LinkToken;
import dev.stayfixed.platform.SecretLinks;
import dev.stayfixed.platform.storage.Durably;
import dev.stayfixed.platform.storage.StoredTime;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;

/**
 * Links by which a customer, a warranty clerk or a second opinion reads the report on a job, and nothing else. Each works until it is
 * revoked or has run out; only a digest of its token is kept.
 */
@Service
public class ReportLinks implements SecretLinks {

    private final JdbcClient jdbc;
    private final CurrentShop shop;
    private final Jobs jobs;
    private final Durably durably;
    private final Clock clock;
    private final ReportLinkSettings settings;

    ReportLinks(
            JdbcClient jdbc, CurrentShop shop, Jobs jobs, Durably durably, Clock clock, ReportLinkSettings settings) {
        this.jdbc = jdbc;
        this.shop = shop;
        this.jobs = jobs;
        this.durably = durably;
        this.clock = clock;
        this.settings = settings;
    }

    /**
     * A link that was just made.
     *
     * @param token secret, shown this once
     */
    public record Link(String token, Instant expiresAt) {}

    /** What a token opens. */
    public sealed interface Visit {}

    /** The report on one job. */
    public record Welcome(UUID jobId, Instant expiresAt) implements Visit {}

    /** The link was good once. */
    public record Ended() implements Visit {}

    /** No such link was ever made. */
    public record Unknown() implements Visit {}

    public Link issue(UUID jobId) {
        return durably.write(() -> {
            Instant now = clock.instant();
            Link link = new Link(LinkToken.make(), now.plus(settings.lifetime()));
            jdbc.sql(
                            "insert into report_link (id, shop_id, job_id, token_hash, issued_at, expires_at) values (?, ?, ?, ?, ?, ?)")
                    .params(
                            UUID.randomUUID(),
                            shop.id(),
                            jobs.get(jobId).id(),
                            LinkToken.hash(link.token()),
                            StoredTime.of(now),
                            StoredTime.of(link.expiresAt()))
                    .update();
            return link;
        });
    }

    /**
     * Ends every link to the report on a job.
     *
     * @return how many had not been ended before
     */
    public int revoke(UUID jobId) {
        return durably.write(() -> jdbc.sql(
                        "update report_link set revoked_at = ? where shop_id = ? and job_id = ? and revoked_at is null")
                .params(
                        StoredTime.of(clock.instant()),
                        shop.id(),
                        jobs.get(jobId).id())
                .update());
    }

    /** How many links to the report on a job work. */
    public int working(UUID jobId) {
        return durably.read(() -> jdbc.sql(
                        "select count(*) from report_link where shop_id = ? and job_id = ? and revoked_at is null and expires_at > ?")
                .params(shop.id(), jobId, StoredTime.of(clock.instant()))
                .query(Integer.class)
                .single());
    }

    private record Row(
            UUID jobId, Instant expiresAt, @Nullable Instant revokedAt) {
        static Row of(ResultSet row, int number) throws SQLException {
            return new Row(
                    row.getObject("job_id", UUID.class),
                    StoredTime.in(row, "expires_at"),
                    StoredTime.ifAny(row, "revoked_at").orElse(null));
        }
    }

    @Override
    public String under() {
        return "r";
    }

    @Override
    public Optional<UUID> shopOf(String token) {
        String hash = LinkToken.hash(token);
        return LinkToken.hasForm(token) ? durably.readThrough(hash, () -> ofHash(hash)) : Optional.empty();
    }

    private Optional<UUID> ofHash(String hash) {
        return jdbc.sql("select shop_id from report_link where token_hash = ?")
                .param(hash)
                .query(UUID.class)
                .optional();
    }

    /** What a token opens at this moment, among the links of the shop. */
    public Visit visit(String token) {
        if (!LinkToken.hasForm(token)) {
            return new Unknown();
        }
        Optional<Row> found = durably.read(() -> jdbc.sql(
                        "select job_id, expires_at, revoked_at from report_link where shop_id = ? and token_hash = ?")
                .params(shop.id(), LinkToken.hash(token))
                .query(Row::of)
                .optional());
        return found.<Visit>map(
                        row -> row.revokedAt() != null || !clock.instant().isBefore(row.expiresAt())
                                ? new Ended()
                                : new Welcome(row.jobId(), row.expiresAt()))
                .orElseGet(Unknown::new);
    }
}
