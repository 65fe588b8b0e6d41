package dev.stayfixed.platform.storage;

import dev.stayfixed.platform.CurrentShop;
import java.sql.Types;
import java.time.Clock;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.SqlParameterValue;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Answers already given, by Idempotency-Key, kept for {@link #KEPT}. */
@Repository
public class StoredAnswers {

    /** How long a key is remembered. */
    public static final Duration KEPT = Duration.ofDays(30);

    private final JdbcClient jdbc;
    private final CurrentShop shop;
    private final Clock clock;

    StoredAnswers(JdbcClient jdbc, CurrentShop shop, Clock clock) {
        this.jdbc = jdbc;
        this.shop = shop;
        this.clock = clock;
    }

    /** What was answered. */
    public record Answer(
            int status,
            @Nullable String contentType,
            @Nullable String location,
            @Nullable String etag,
            String body) {}

    /** An answer and the fingerprint of the request that it answered. */
    public record Stored(String fingerprint, Answer answer) {}

    public Optional<Stored> find(String key) {
        return jdbc.sql("""
                        select fingerprint, status, content_type, location, etag, body
                        from idempotency_key where shop_id = ? and name = ? and status is not null""")
                .params(shop.id(), key)
                .query((row, n) -> new Stored(
                        row.getString("fingerprint"),
                        new Answer(
                                row.getInt("status"),
                                row.getString("content_type"),
                                row.getString("location"),
                                row.getString("etag"),
                                row.getString("body"))))
                .optional();
    }

    /** Takes a key that was not found, and that the running write holds. */
    public void claim(String key, String fingerprint) {
        OffsetDateTime now = StoredTime.of(clock.instant());
        jdbc.sql("delete from idempotency_key where shop_id = ? and created_at < ?")
                .params(shop.id(), now.minus(KEPT))
                .update();
        jdbc.sql("insert into idempotency_key (shop_id, name, fingerprint, created_at) values (?, ?, ?, ?)")
                .params(shop.id(), key, fingerprint, now)
                .update();
    }

    public void keep(String key, Answer answer) {
        jdbc.sql("""
                        update idempotency_key set status = ?, content_type = ?, location = ?, etag = ?, body = ?
                        where shop_id = ? and name = ?""")
                .param(answer.status())
                .param(new SqlParameterValue(Types.VARCHAR, answer.contentType()))
                .param(new SqlParameterValue(Types.VARCHAR, answer.location()))
                .param(new SqlParameterValue(Types.VARCHAR, answer.etag()))
                .param(answer.body())
                .param(shop.id())
                .param(key)
                .update();
    }
}
