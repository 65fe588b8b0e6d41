package dev.stayfixed.telling.delivery;

import dev.stayfixed.platform.CurrentShop;
import dev.stayfixed.platform.Page;
import dev.stayfixed.platform.storage.StoredTime;
import java.sql.Types;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.SqlParameterValue;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** The tables delivery and delivery_attempt. */
@Repository
class StoredDeliveries {

    private final JdbcClient jdbc;
    private final JdbcTemplate batches;
    private final CurrentShop shop;

    StoredDeliveries(JdbcClient jdbc, JdbcTemplate batches, CurrentShop shop) {
        this.jdbc = jdbc;
        this.batches = batches;
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
                .param("now", StoredTime.of(now))
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

    /**
     * What can be sent now, in the order in which it was added: all of a stream waits for the first of it. All columns of the indexes
     * are named in the order, because H2 follows an index only then.
     *
     * @param byHandOnly only what somebody asked for and nothing else waits before
     */
    List<Delivery> due(Addressee to, boolean byHandOnly, Instant now, int most) {
        return jdbc.sql("""
                        select * from delivery d
                        where d.shop_id = :shop and d.channel = :channel and d.target = :target and d.state = 'PENDING'
                          and (select ahead.next_at from delivery ahead where ahead.stream = d.stream and ahead.state = 'PENDING'
                               order by ahead.stream, ahead.state, ahead.position limit 1) <= :now""" + (byHandOnly ? """
                          and d.by_hand
                          and not exists (select 1 from delivery ahead where ahead.shop_id = :shop and ahead.stream = d.stream
                                          and ahead.state = 'PENDING'
                                          and ahead.position < d.position)""" : "")
                        + " order by d.channel, d.target, d.state, d.position limit :most")
                .param("shop", shop.id())
                .param("channel", to.channel())
                .param("target", to.target().toString())
                .param("now", StoredTime.of(now))
                .param("most", most)
                .query(Rows::delivery)
                .list();
    }

    Optional<Instant> oldestPending() {
        return jdbc.sql("select min(created_at) as created_at from delivery where shop_id = ? and state = 'PENDING'")
                .param(shop.id())
                .query((row, number) -> StoredTime.ifAny(row, "created_at"))
                .single();
    }

    /** When the next one is due of those that are not due now. */
    Optional<Instant> firstAfter(Addressee to, Instant now) {
        return jdbc.sql("""
                        select min(next_at) as next_at from delivery
                        where shop_id = ? and channel = ? and target = ? and state = 'PENDING' and next_at > ?""")
                .params(shop.id(), to.channel(), to.target().toString(), StoredTime.of(now))
                .query((row, number) -> StoredTime.ifAny(row, "next_at"))
                .single();
    }

    /** Those that are still pending, kept for the running write alone. */
    Map<UUID, Delivery> pending(List<UUID> ids) {
        return jdbc
                .sql("select * from delivery where shop_id = :shop and id in (:ids) and state = 'PENDING' for update")
                .param("shop", shop.id())
                .param("ids", ids)
                .query(Rows::delivery)
                .list()
                .stream()
                .collect(Collectors.toMap(Delivery::id, Function.identity()));
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
                .param("at", StoredTime.of(page.after().at()))
                .param("id", page.after().id())
                .param("limit", page.limit() + 1)
                .query(Rows::delivery)
                .list();
    }

    /** A try of a delivery, to be written down. */
    record Noted(UUID delivery, Delivery.Attempt attempt) {}

    void tried(List<Noted> tries) {
        batches.batchUpdate(
                """
                insert into delivery_attempt (delivery_id, number, at, took_ms, outcome, detail, answer)
                values (?, ?, ?, ?, ?, ?, ?)""",
                tries.stream()
                        .map(one -> new Object[] {
                            one.delivery(),
                            one.attempt().number(),
                            StoredTime.of(one.attempt().at()),
                            one.attempt().tookMillis(),
                            one.attempt().outcome(),
                            cut(one.attempt().detail(), 500),
                            new SqlParameterValue(
                                    Types.VARCHAR,
                                    one.attempt()
                                            .answer()
                                            .map(a -> cut(a, 2000))
                                            .orElse(null))
                        })
                        .toList());
        batches.batchUpdate(
                "update delivery set attempts = ?, first_tried_at = coalesce(first_tried_at, ?) where shop_id = ? and id = ?",
                tries.stream()
                        .map(one -> new Object[] {
                            one.attempt().number(), StoredTime.of(one.attempt().at()), shop.id(), one.delivery()
                        })
                        .toList());
    }

    /** Tries that the receivers accepted. */
    void delivered(List<Noted> tries, Instant now) {
        tried(tries);
        batches.batchUpdate(
                "update delivery set state = 'DELIVERED', settled_at = ? where shop_id = ? and id = ?",
                tries.stream()
                        .map(one -> new Object[] {StoredTime.of(now), shop.id(), one.delivery()})
                        .toList());
    }

    private static String cut(String text, int longest) {
        return text.length() <= longest ? text : text.substring(0, longest);
    }

    void waitUntil(UUID id, Instant next) {
        jdbc.sql("update delivery set next_at = ? where shop_id = ? and id = ?")
                .params(StoredTime.of(next), shop.id(), id)
                .update();
    }

    void settle(UUID id, Delivery.State state, Instant now) {
        jdbc.sql("update delivery set state = ?, settled_at = ? where shop_id = ? and id = ? and state = 'PENDING'")
                .params(state.name(), StoredTime.of(now), shop.id(), id)
                .update();
    }

    void cancelTarget(String channel, UUID target, Instant now) {
        jdbc.sql("""
                        update delivery set state = 'CANCELLED', settled_at = ?
                        where shop_id = ? and channel = ? and target = ? and state = 'PENDING'""")
                .params(StoredTime.of(now), shop.id(), channel, target.toString())
                .update();
    }

    void cancelOthers(Delivery but, Instant now) {
        jdbc.sql("""
                        update delivery set state = 'CANCELLED', settled_at = ?
                        where shop_id = ? and channel = ? and target = ? and state = 'PENDING' and id <> ?""")
                .params(
                        StoredTime.of(now),
                        shop.id(),
                        but.channel(),
                        but.target().toString(),
                        but.id())
                .update();
    }

    void cancelKind(UUID jobId, String kind, Instant now) {
        jdbc.sql("""
                        update delivery set state = 'CANCELLED', settled_at = ?
                        where shop_id = ? and job_id = ? and kind = ? and state = 'PENDING'""").params(StoredTime.of(now), shop.id(), jobId, kind).update();
    }

    void deleteTarget(String channel, UUID target) {
        jdbc.sql("delete from delivery where shop_id = ? and channel = ? and target = ?")
                .params(shop.id(), channel, target.toString())
                .update();
    }

    int deleteSettledBefore(Instant time) {
        return jdbc.sql("delete from delivery where shop_id = ? and state <> 'PENDING' and settled_at < ?")
                .params(shop.id(), StoredTime.of(time))
                .update();
    }
}
