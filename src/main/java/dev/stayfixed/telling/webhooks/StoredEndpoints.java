package dev.stayfixed.telling.webhooks;

import dev.stayfixed.platform.CurrentShop;
import dev.stayfixed.platform.storage.Seal;
import dev.stayfixed.platform.storage.StoredTime;
import dev.stayfixed.telling.Kinds;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.SqlParameterValue;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** The table webhook_endpoint. */
@Repository
class StoredEndpoints {

    private final JdbcClient jdbc;
    private final CurrentShop shop;
    private final Seal seal;

    StoredEndpoints(JdbcClient jdbc, CurrentShop shop, Seal seal) {
        this.jdbc = jdbc;
        this.shop = shop;
        this.seal = seal;
    }

    /** Where the secrets of an endpoint are sealed for. */
    static String place(Object id) {
        return "webhook_endpoint " + id;
    }

    void insert(UUID id, Endpoint.Details details, String secret, Instant now) {
        jdbc.sql("""
                        insert into webhook_endpoint (id, shop_id, version, url, description, kinds, active, created_at, secret,
                                                      failures_in_a_row)
                        values (?, ?, 1, ?, ?, ?, true, ?, ?, 0)""")
                .param(id)
                .param(shop.id())
                .param(details.url())
                .param(new SqlParameterValue(
                        Types.VARCHAR, details.description().orElse(null)))
                .param(Kinds.text(details.kinds()))
                .param(StoredTime.of(now))
                .param(seal.close(secret, place(id)))
                .update();
    }

    List<Endpoint> all() {
        return jdbc.sql("select * from webhook_endpoint where shop_id = ? order by created_at, id")
                .param(shop.id())
                .query(StoredEndpoints::endpoint)
                .list();
    }

    Optional<Endpoint> find(UUID id) {
        return jdbc.sql("select * from webhook_endpoint where shop_id = ? and id = ?")
                .params(shop.id(), id)
                .query(StoredEndpoints::endpoint)
                .optional();
    }

    /** Kept for the running transaction alone. */
    Optional<Endpoint> lock(UUID id) {
        return jdbc.sql("select * from webhook_endpoint where shop_id = ? and id = ? for update")
                .params(shop.id(), id)
                .query(StoredEndpoints::endpoint)
                .optional();
    }

    /**
     * An endpoint and what its messages are signed with.
     *
     * @param secrets empty where the present one was sealed with a key that the service no longer has
     */
    record Signing(Endpoint endpoint, Optional<Secrets> secrets) {}

    Optional<Signing> signing(UUID id) {
        return jdbc.sql("select * from webhook_endpoint where shop_id = ? and id = ?")
                .params(shop.id(), id)
                .query((row, number) -> new Signing(endpoint(row, number), secrets(row, id)))
                .optional();
    }

    private Optional<Secrets> secrets(ResultSet row, UUID id) throws SQLException {
        Instant until = StoredTime.ifAny(row, "previous_secret_until").orElse(null);
        String previous = Optional.ofNullable(row.getString("previous_secret"))
                .flatMap(kept -> seal.open(kept, place(id)))
                .orElse(null);
        return seal.open(row.getString("secret"), place(id)).map(present -> new Secrets(present, previous, until));
    }

    void describe(UUID id, Endpoint.Details details, boolean active) {
        jdbc.sql("""
                        update webhook_endpoint
                        set url = ?, description = ?, kinds = ?, active = ?, stopped_because = null, failures_in_a_row = 0,
                            quiet_until = null, version = version + 1
                        where shop_id = ? and id = ?""")
                .param(details.url())
                .param(new SqlParameterValue(
                        Types.VARCHAR, details.description().orElse(null)))
                .param(Kinds.text(details.kinds()))
                .param(active)
                .param(shop.id())
                .param(id)
                .update();
    }

    void rotate(UUID id, String secret, Instant previousUntil) {
        jdbc.sql("""
                        update webhook_endpoint set previous_secret = secret, previous_secret_until = ?, secret = ?, version = version + 1
                        where shop_id = ? and id = ?""")
                .params(StoredTime.of(previousUntil), seal.close(secret, place(id)), shop.id(), id)
                .update();
    }

    void stop(UUID id, String because) {
        jdbc.sql("""
                        update webhook_endpoint set active = false, stopped_because = ?, version = version + 1
                        where shop_id = ? and id = ?""").params(because, shop.id(), id).update();
    }

    void answered(UUID id, int failuresInARow, @Nullable Instant quietUntil) {
        jdbc.sql("update webhook_endpoint set failures_in_a_row = ?, quiet_until = ? where shop_id = ? and id = ?")
                .param(failuresInARow)
                .param(new SqlParameterValue(
                        Types.TIMESTAMP_WITH_TIMEZONE, quietUntil == null ? null : StoredTime.of(quietUntil)))
                .param(shop.id())
                .param(id)
                .update();
    }

    void delete(UUID id) {
        jdbc.sql("delete from webhook_endpoint where shop_id = ? and id = ?")
                .params(shop.id(), id)
                .update();
    }

    private static Endpoint endpoint(ResultSet row, int number) throws SQLException {
        return new Endpoint(
                row.getObject("id", UUID.class),
                row.getInt("version"),
                new Endpoint.Details(
                        row.getString("url"),
                        Optional.ofNullable(row.getString("description")),
                        Kinds.of(row.getString("kinds"))),
                row.getBoolean("active"),
                Optional.ofNullable(row.getString("stopped_because")),
                StoredTime.in(row, "created_at"),
                row.getInt("failures_in_a_row"),
                Optional.ofNullable(StoredTime.ifAny(row, "quiet_until").orElse(null)),
                Optional.ofNullable(
                        StoredTime.ifAny(row, "previous_secret_until").orElse(null)));
    }
}
