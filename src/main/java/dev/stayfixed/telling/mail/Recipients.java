package dev.stayfixed.telling.mail;

import dev.stayfixed.platform.CurrentShop;
import dev.stayfixed.platform.LinkToken;
import dev.stayfixed.platform.storage.Durably;
import dev.stayfixed.platform.storage.Seal;
import dev.stayfixed.platform.storage.StoredTime;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** The table mail_recipient: every address that is written to, with the secret of its stop link. */
@Repository
class Recipients {

    private final JdbcClient jdbc;
    private final CurrentShop shop;
    private final Durably durably;
    private final Seal seal;

    Recipients(JdbcClient jdbc, CurrentShop shop, Durably durably, Seal seal) {
        this.jdbc = jdbc;
        this.shop = shop;
        this.durably = durably;
        this.seal = seal;
    }

    /** Somebody who is written to. */
    record Recipient(UUID id, String address, boolean stopped) {
        static Recipient of(ResultSet row, int number) throws SQLException {
            return new Recipient(
                    row.getObject("id", UUID.class), row.getString("address"), row.getObject("stopped_at") != null);
        }
    }

    /** Needs a running write. */
    Recipient withAddress(String address) {
        return find(address).orElseGet(() -> {
            durably.hold("mail recipients " + shop.id());
            return find(address).orElseGet(() -> add(address));
        });
    }

    private Recipient add(String address) {
        Recipient recipient = new Recipient(UUID.randomUUID(), address, false);
        String token = LinkToken.make();
        jdbc.sql("insert into mail_recipient (id, shop_id, address, token_hash, sealed_token) values (?, ?, ?, ?, ?)")
                .params(
                        recipient.id(),
                        shop.id(),
                        address,
                        LinkToken.hash(token),
                        seal.close(token, place(recipient.id())))
                .update();
        return recipient;
    }

    private Optional<Recipient> find(String address) {
        return jdbc.sql("select * from mail_recipient where shop_id = ? and address = ?")
                .params(shop.id(), address)
                .query(Recipient::of)
                .optional();
    }

    Optional<Recipient> find(UUID id) {
        return jdbc.sql("select * from mail_recipient where shop_id = ? and id = ?")
                .params(shop.id(), id)
                .query(Recipient::of)
                .optional();
    }

    Optional<UUID> shopOf(String token) {
        return jdbc.sql("select shop_id from mail_recipient where token_hash = ?")
                .param(LinkToken.hash(token))
                .query(UUID.class)
                .optional();
    }

    /** The secret of the stop link; empty where it was sealed with a key that the service no longer has. */
    Optional<String> token(UUID id) {
        return jdbc.sql("select sealed_token from mail_recipient where shop_id = ? and id = ?")
                .params(shop.id(), id)
                .query(String.class)
                .optional()
                .flatMap(kept -> seal.open(kept, place(id)));
    }

    /** Another one, where the old one can no longer be told; the links in older mails end. Needs a running write. */
    String newToken(UUID id) {
        String token = LinkToken.make();
        jdbc.sql("update mail_recipient set token_hash = ?, sealed_token = ? where shop_id = ? and id = ?")
                .params(LinkToken.hash(token), seal.close(token, place(id)), shop.id(), id)
                .update();
        return token;
    }

    /** Where the token of a receiver is sealed for. */
    static String place(Object id) {
        return "mail_recipient " + id;
    }

    Optional<Recipient> byToken(String token) {
        return jdbc.sql("select * from mail_recipient where shop_id = ? and token_hash = ?")
                .params(shop.id(), LinkToken.hash(token))
                .query(Recipient::of)
                .optional();
    }

    void stop(UUID id, Instant now) {
        jdbc.sql("update mail_recipient set stopped_at = coalesce(stopped_at, ?) where shop_id = ? and id = ?")
                .params(StoredTime.of(now), shop.id(), id)
                .update();
    }

    void goOn(UUID id) {
        jdbc.sql("update mail_recipient set stopped_at = null where shop_id = ? and id = ?")
                .params(shop.id(), id)
                .update();
    }
}
