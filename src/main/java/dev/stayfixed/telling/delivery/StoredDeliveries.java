package dev.stayfixed.telling.delivery;

import dev.stayfixed.platform.CurrentShop;
import dev.stayfixed.platform.Page;
import java.sql.Types;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.SqlParameterValue;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** The tables delivery and delivery_attempt. */
@Repository
class StoredDeliveries {

    private final JdbcClient jdbc;
    private final CurrentShop shop;

    StoredDeliveries(JdbcClient jdbc, CurrentShop shop) {
        this.jdbc = jdbc;
        this.shop = shop;
    }

    void insert(UUID id, Delivery.Draft draft, Instant now) {
        jdbc.sql("""
                        insert into delivery (id, shop_id, channel, target, stream, event_id, job_id, kind, payload, state, by_hand,
                                              attempts, created_at, next_at)
                        values (:id, :shop, :channel, :target, :stream, :event, :job, :kind, :payload, 'PENDING', :byHand, 0, :now, :now)""")
                .param("id", id)
                .param("shop", shop.id())
                .param("channel", draft.channel())
                .param("target", draft.target().toString())
                .param("stream", draft.stream())
                .param("event", draft.eventId())
                .param("job", uuid(draft.jobId().orElse(null)))
                .param("kind", draft.kind())
                .param("payload", draft.payload())
                .param("byHand", draft.byHand())
                .param("now", Rows.at(now))
                .update();
    }

    private static SqlParameterValue uuid(@Nullable UUID id) {
        return new SqlParameterValue(Types.OTHER, id);
    }

    Optional<Delivery> find(UUID id) {
        return jdbc.sql("select * from delivery where shop_id = ? and id = ?")
                .params(shop.id(), id)
                .query(Rows::delivery)
                .optional();
    }

    List<Delivery.Attempt> attempts(UUID id) {
        return jdbc.sql("select * from delivery_attempt where delivery_id = ? order by number")
                .param(id)
                .query(Rows::attempt)
                .list();
    }

    /** The oldest pending delivery of the stream. */
    Optional<Delivery> head(String stream) {
        return jdbc.sql("select * from delivery where stream = ? and state = 'PENDING' order by position limit 1")
                .param(stream)
                .query(Rows::delivery)
                .optional();
    }

    List<Delivery> page(String channel, UUID target, List<Delivery.State> states, Page.Request page) {
        return jdbc.sql("""
                        select * from delivery
                        where shop_id = :shop and channel = :channel and target = :target and state in (:states)
                          and (created_at < :at or (created_at = :at and id < :id))
                        order by created_at desc, id desc limit :limit""")
                .param("shop", shop.id())
                .param("channel", channel)
                .param("target", target.toString())
                .param("states", states.stream().map(Enum::name).toList())
                .param("at", Rows.at(page.after().at()))
                .param("id", page.after().id())
                .param("limit", page.limit() + 1)
                .query(Rows::delivery)
                .list();
    }

    void tried(Delivery delivery, Delivery.Attempt attempt) {
        jdbc.sql("""
                        insert into delivery_attempt (delivery_id, number, at, took_ms, outcome, detail, answer)
                        values (?, ?, ?, ?, ?, ?, ?)""")
                .param(delivery.id())
                .param(attempt.number())
                .param(Rows.at(attempt.at()))
                .param(attempt.tookMillis())
                .param(attempt.outcome())
                .param(cut(attempt.detail(), 500))
                .param(new SqlParameterValue(
                        Types.VARCHAR, attempt.answer().map(a -> cut(a, 2000)).orElse(null)))
                .update();
        jdbc.sql("update delivery set attempts = ?, first_tried_at = coalesce(first_tried_at, ?) where id = ?")
                .params(attempt.number(), Rows.at(attempt.at()), delivery.id())
                .update();
    }

    private static String cut(String text, int longest) {
        return text.length() <= longest ? text : text.substring(0, longest);
    }

    void waitUntil(UUID id, Instant next) {
        jdbc.sql("update delivery set next_at = ? where id = ?")
                .params(Rows.at(next), id)
                .update();
    }

    void settle(UUID id, Delivery.State state, Instant now) {
        jdbc.sql("update delivery set state = ?, settled_at = ? where id = ? and state = 'PENDING'")
                .params(state.name(), Rows.at(now), id)
                .update();
    }

    void cancelTarget(String channel, UUID target, Instant now) {
        jdbc.sql("""
                        update delivery set state = 'CANCELLED', settled_at = ?
                        where channel = ? and target = ? and state = 'PENDING'""").params(Rows.at(now), channel, target.toString()).update();
    }

    void cancelOthers(Delivery but, Instant now) {
        jdbc.sql("""
                        update delivery set state = 'CANCELLED', settled_at = ?
                        where channel = ? and target = ? and state = 'PENDING' and id <> ?""")
                .params(Rows.at(now), but.channel(), but.target().toString(), but.id())
                .update();
    }

    void cancelKind(UUID jobId, String kind, Instant now) {
        jdbc.sql(
                        "update delivery set state = 'CANCELLED', settled_at = ? where job_id = ? and kind = ? and state = 'PENDING'")
                .params(Rows.at(now), jobId, kind)
                .update();
    }

    void deleteTarget(String channel, UUID target) {
        jdbc.sql("delete from delivery where channel = ? and target = ?")
                .params(channel, target.toString())
                .update();
    }

    int deleteSettledBefore(Instant time) {
        return jdbc.sql("delete from delivery where state <> 'PENDING' and settled_at < ?")
                .param(Rows.at(time))
                .update();
    }
}
