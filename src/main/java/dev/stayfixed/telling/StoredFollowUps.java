package dev.stayfixed.telling;

import dev.stayfixed.platform.CurrentShop;
import dev.stayfixed.platform.storage.StoredTime;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** The tables follow_up and calendar_link. */
@Repository
class StoredFollowUps {

    private final JdbcClient jdbc;
    private final CurrentShop shop;

    StoredFollowUps(JdbcClient jdbc, CurrentShop shop) {
        this.jdbc = jdbc;
        this.shop = shop;
    }

    void insert(FollowUp f) {
        jdbc.sql(
                        "insert into follow_up (id, shop_id, job_id, version, due_at, note, made_at) values (?, ?, ?, ?, ?, ?, ?)")
                .params(
                        f.id(),
                        shop.id(),
                        f.jobId(),
                        f.version(),
                        StoredTime.of(f.dueAt()),
                        f.note(),
                        StoredTime.of(f.madeAt()))
                .update();
    }

    void change(UUID id, Instant dueAt, String note) {
        jdbc.sql("update follow_up set due_at = ?, note = ?, version = version + 1 where shop_id = ? and id = ?")
                .params(StoredTime.of(dueAt), note, shop.id(), id)
                .update();
    }

    void done(UUID id, Instant now) {
        jdbc.sql(
                        "update follow_up set done_at = ?, version = version + 1 where shop_id = ? and id = ? and done_at is null")
                .params(StoredTime.of(now), shop.id(), id)
                .update();
    }

    Optional<FollowUp> find(UUID jobId, UUID id) {
        return jdbc.sql("select * from follow_up where shop_id = ? and job_id = ? and id = ?")
                .params(shop.id(), jobId, id)
                .query(StoredFollowUps::followUp)
                .optional();
    }

    List<FollowUp> ofJob(UUID jobId) {
        return jdbc.sql("select * from follow_up where shop_id = ? and job_id = ? order by due_at, id")
                .params(shop.id(), jobId)
                .query(StoredFollowUps::followUp)
                .list();
    }

    List<FollowUp> notDone(Instant dueSince) {
        return jdbc.sql(
                        "select * from follow_up where shop_id = ? and done_at is null and due_at >= ? order by due_at, id")
                .params(shop.id(), StoredTime.of(dueSince))
                .query(StoredFollowUps::followUp)
                .list();
    }

    void link(String tokenHash, Instant now) {
        unlink();
        jdbc.sql("insert into calendar_link (shop_id, token_hash, made_at) values (?, ?, ?)")
                .params(shop.id(), tokenHash, StoredTime.of(now))
                .update();
    }

    void unlink() {
        jdbc.sql("delete from calendar_link where shop_id = ?").param(shop.id()).update();
    }

    boolean isLink(String tokenHash) {
        return jdbc.sql("select count(*) from calendar_link where shop_id = ? and token_hash = ?")
                        .params(shop.id(), tokenHash)
                        .query(Long.class)
                        .single()
                > 0;
    }

    Optional<UUID> shopOf(String tokenHash) {
        return jdbc.sql("select shop_id from calendar_link where token_hash = ?")
                .param(tokenHash)
                .query(UUID.class)
                .optional();
    }

    private static FollowUp followUp(ResultSet row, int number) throws SQLException {
        return new FollowUp(
                row.getObject("id", UUID.class),
                row.getObject("job_id", UUID.class),
                row.getInt("version"),
                StoredTime.in(row, "due_at"),
                row.getString("note"),
                StoredTime.in(row, "made_at"),
                StoredTime.ifAny(row, "done_at"));
    }
}
