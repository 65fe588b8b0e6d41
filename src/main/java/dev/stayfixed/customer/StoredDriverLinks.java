package dev.stayfixed.customer;

import dev.stayfixed.platform.CurrentShop;
import dev.stayfixed.platform.storage.StoredTime;
import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Rows of links, and of the drives that came in through them. */
@Repository
class StoredDriverLinks {

    private final JdbcClient jdbc;
    private final CurrentShop shop;

    StoredDriverLinks(JdbcClient jdbc, CurrentShop shop) {
        this.jdbc = jdbc;
        this.shop = shop;
    }

    record Row(UUID id, UUID jobId, Instant expiresAt, Optional<Instant> revokedAt, boolean opened) {}

    void add(DriverLink link, String tokenHash) {
        jdbc.sql(
                        "insert into driver_link (id, shop_id, job_id, token_hash, issued_at, expires_at) values (?, ?, ?, ?, ?, ?)")
                .params(
                        UUID.randomUUID(),
                        shop.id(),
                        link.jobId(),
                        tokenHash,
                        StoredTime.of(link.issuedAt()),
                        StoredTime.of(link.expiresAt()))
                .update();
    }

    int revoke(UUID jobId, Instant now) {
        return jdbc.sql("update driver_link set revoked_at = ? where shop_id = ? and job_id = ? and revoked_at is null")
                .params(StoredTime.of(now), shop.id(), jobId)
                .update();
    }

    int renew(UUID jobId, Instant until) {
        return jdbc.sql("update driver_link set expires_at = ? where shop_id = ? and job_id = ? and revoked_at is null")
                .params(StoredTime.of(until), shop.id(), jobId)
                .update();
    }

    /** The first time counts. */
    void opened(UUID id, Instant now) {
        jdbc.sql("update driver_link set opened_at = ? where shop_id = ? and id = ? and opened_at is null")
                .params(StoredTime.of(now), shop.id(), id)
                .update();
    }

    /** Links that work, the latest first. */
    List<HandedOver> working(UUID jobId, Instant now) {
        return jdbc.sql("""
                        select issued_at, expires_at, opened_at,
                               (select count(*) from driver_logged_drive d join driver_link l on l.id = d.link_id
                                where l.job_id = driver_link.job_id) drives
                        from driver_link
                        where shop_id = ? and job_id = ? and revoked_at is null and expires_at > ?
                        order by issued_at desc, id""")
                .params(shop.id(), jobId, StoredTime.of(now))
                .query((row, n) -> new HandedOver(
                        StoredTime.in(row, "issued_at"),
                        StoredTime.in(row, "expires_at"),
                        StoredTime.ifAny(row, "opened_at"),
                        row.getInt("drives")))
                .list();
    }

    Optional<UUID> shopOf(String tokenHash) {
        return jdbc.sql("select shop_id from driver_link where token_hash = ?")
                .param(tokenHash)
                .query(UUID.class)
                .optional();
    }

    Optional<Row> find(String tokenHash) {
        return jdbc.sql(
                        "select id, job_id, expires_at, revoked_at, opened_at from driver_link where shop_id = ? and token_hash = ?")
                .params(shop.id(), tokenHash)
                .query((row, n) -> new Row(
                        row.getObject("id", UUID.class),
                        row.getObject("job_id", UUID.class),
                        StoredTime.in(row, "expires_at"),
                        StoredTime.ifAny(row, "revoked_at"),
                        StoredTime.ifAny(row, "opened_at").isPresent()))
                .optional();
    }

    /** Keeps that a drive came in through a link; the same drive again changes nothing. */
    void logged(UUID driveId, UUID linkId, Instant now) {
        if (!loggedAmong(Set.of(driveId)).isEmpty()) {
            return;
        }
        jdbc.sql("insert into driver_logged_drive (drive_id, link_id, logged_at) values (?, ?, ?)")
                .params(driveId, linkId, StoredTime.of(now))
                .update();
    }

    Set<UUID> loggedAmong(Set<UUID> driveIds) {
        if (driveIds.isEmpty()) {
            return Set.of();
        }
        return new HashSet<>(jdbc.sql("select drive_id from driver_logged_drive where drive_id in (:ids)")
                .param("ids", driveIds)
                .query(UUID.class)
                .list());
    }

    /** Drives that came in through any link of the job. */
    List<UUID> loggedFor(UUID jobId) {
        return jdbc.sql("select d.drive_id from driver_logged_drive d join driver_link l on l.id = d.link_id"
                        + " where l.shop_id = ? and l.job_id = ?")
                .params(shop.id(), jobId)
                .query(UUID.class)
                .list();
    }
}
