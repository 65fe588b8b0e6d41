package dev.stayfixed.telling;

import dev.stayfixed.platform.CurrentShop;
import dev.stayfixed.platform.Page;
import dev.stayfixed.platform.storage.StoredTime;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.SqlParameterValue;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** The table event. */
@Repository
class StoredEvents {

    private final JdbcClient jdbc;
    private final CurrentShop shop;

    StoredEvents(JdbcClient jdbc, CurrentShop shop) {
        this.jdbc = jdbc;
        this.shop = shop;
    }

    boolean isKnown(String occasion) {
        return jdbc.sql("select count(*) from event where shop_id = ? and occasion = ?")
                        .params(shop.id(), occasion)
                        .query(Long.class)
                        .single()
                > 0;
    }

    /** An event and the occasion on which it was told. */
    record Told(Event event, String occasion) {}

    /** What was told on occasions that begin like this and was not taken back, the earliest first. */
    List<Told> told(String occasions) {
        return jdbc.sql("select * from event where shop_id = ? and occasion like ? order by occurred_at, id")
                .params(shop.id(), occasions + "%")
                .query((row, number) -> new Told(event(row, number), row.getString("occasion")))
                .list();
    }

    /** Read, as nobody needs to act on it; and its occasion is free again. */
    void takeBack(UUID id, String occasion, Instant now) {
        jdbc.sql("update event set occasion = ?, read_at = coalesce(read_at, ?) where shop_id = ? and id = ?")
                .params("back:" + id + ":" + occasion, StoredTime.of(now), shop.id(), id)
                .update();
    }

    void insert(Event event, String occasion) {
        jdbc.sql("""
                        insert into event (id, shop_id, job_id, fault_id, kind, occurred_at, summary, content, occasion, in_inbox)
                        values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""")
                .param(event.id())
                .param(shop.id())
                .param(uuid(event.jobId().orElse(null)))
                .param(uuid(event.faultId().orElse(null)))
                .param(event.kind().name())
                .param(StoredTime.of(event.occurredAt()))
                .param(event.summary())
                .param(event.content())
                .param(occasion)
                .param(event.kind().isForInbox())
                .update();
    }

    private static SqlParameterValue uuid(@Nullable UUID id) {
        return new SqlParameterValue(Types.OTHER, id);
    }

    Optional<Event> find(UUID id) {
        return jdbc.sql("select * from event where shop_id = ? and id = ?")
                .params(shop.id(), id)
                .query(StoredEvents::event)
                .optional();
    }

    List<Event> inbox(boolean unreadOnly, Page.Request page) {
        return jdbc.sql("select * from event where shop_id = :shop and in_inbox"
                        + (unreadOnly ? " and read_at is null" : "")
                        + " and (occurred_at < :at or (occurred_at = :at and id < :id))"
                        + " order by occurred_at desc, id desc limit :limit")
                .param("shop", shop.id())
                .param("at", StoredTime.of(page.after().at()))
                .param("id", page.after().id())
                .param("limit", page.limit() + 1)
                .query(StoredEvents::event)
                .list();
    }

    /** The latest unread ones of some kinds. */
    List<Event> unread(Set<EventKind> kinds, int most) {
        return jdbc.sql("""
                        select * from event where shop_id = :shop and in_inbox and read_at is null and kind in (:kinds)
                        order by occurred_at desc, id desc limit :most""")
                .param("shop", shop.id())
                .param("kinds", kinds.stream().map(Enum::name).toList())
                .param("most", most)
                .query(StoredEvents::event)
                .list();
    }

    long unread() {
        return jdbc.sql("select count(*) from event where shop_id = ? and in_inbox and read_at is null")
                .param(shop.id())
                .query(Long.class)
                .single();
    }

    void read(UUID id, Instant now) {
        jdbc.sql("update event set read_at = ? where shop_id = ? and id = ? and read_at is null")
                .params(StoredTime.of(now), shop.id(), id)
                .update();
    }

    int readAll(Instant now) {
        return jdbc.sql("update event set read_at = ? where shop_id = ? and in_inbox and read_at is null")
                .params(StoredTime.of(now), shop.id())
                .update();
    }

    private static Event event(ResultSet row, int number) throws SQLException {
        return new Event(
                row.getObject("id", UUID.class),
                EventKind.valueOf(row.getString("kind")),
                StoredTime.in(row, "occurred_at"),
                Optional.ofNullable(row.getObject("job_id", UUID.class)),
                Optional.ofNullable(row.getObject("fault_id", UUID.class)),
                row.getString("summary"),
                row.getString("content"),
                StoredTime.ifAny(row, "read_at"));
    }
}
