package dev.stayfixed.platform.storage;

import dev.stayfixed.platform.CurrentShop;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Clock;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.SqlParameterValue;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Answers already given, by Idempotency-Key, kept for {@link #KEPT}. They are sealed, because some of them show a secret once. */
@Repository
public class StoredAnswers {

    /** How long a key is remembered. */
    public static final Duration KEPT = Duration.ofDays(30);

    private final JdbcClient jdbc;
    private final CurrentShop shop;
    private final Seal seal;
    private final Clock clock;

    StoredAnswers(JdbcClient jdbc, CurrentShop shop, Seal seal, Clock clock) {
        this.jdbc = jdbc;
        this.shop = shop;
        this.seal = seal;
        this.clock = clock;
    }

    /** What was answered. */
    public record Answer(
            int status,
            @Nullable String contentType,
            @Nullable String location,
            @Nullable String etag,
            String body) {}

    /**
     * What is known of an answered request.
     *
     * @param fingerprint of the request
     * @param answer empty where it was sealed with a key that the service no longer has
     */
    public record Stored(String fingerprint, Optional<Answer> answer) {}

    public Optional<Stored> find(String key) {
        return jdbc.sql("""
                        select fingerprint, status, content_type, etag, body
                        from idempotency_key where shop_id = ? and name = ? and status is not null""")
                .params(shop.id(), key)
                .query((row, n) -> new Stored(row.getString("fingerprint"), answer(row, key)))
                .optional();
    }

    private Optional<Answer> answer(ResultSet row, String key) throws SQLException {
        int status = row.getInt("status");
        String contentType = row.getString("content_type");
        String etag = row.getString("etag");
        return seal.open(row.getString("body"), place(key)).map(text -> {
            int end = text.indexOf('\n');
            return new Answer(
                    status, contentType, end == 0 ? null : text.substring(0, end), etag, text.substring(end + 1));
        });
    }

    /** As it is sealed: the address in the first line, which is empty where there is none, and the body. */
    static String together(@Nullable String location, String body) {
        return (location == null ? "" : location) + "\n" + body;
    }

    static String place(String key) {
        return "idempotency_key " + key;
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
                        update idempotency_key set status = ?, content_type = ?, etag = ?, body = ?
                        where shop_id = ? and name = ?""")
                .param(answer.status())
                .param(new SqlParameterValue(Types.VARCHAR, answer.contentType()))
                .param(new SqlParameterValue(Types.VARCHAR, answer.etag()))
                .param(seal.close(together(answer.location(), answer.body()), place(key)))
                .param(shop.id())
                .param(key)
                .update();
    }
}
