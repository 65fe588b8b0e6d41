package dev.stayfixed.people;

import dev.stayfixed.platform.LinkToken;
import dev.stayfixed.platform.Secret;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.platform.storage.Durably;
import dev.stayfixed.platform.storage.StoredTime;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;

/** The tokens by which programs come in: 256 random bits, shown once, kept as SHA-256. */
@Service
public class Tokens {

    /** What each begins with, so that a search for secrets that got lost finds it. */
    private static final String BEGINNING = "stayfixed_";

    /** How exact the note of the last use is: a note at each request would be a write at each. */
    private static final Duration NOTED = Duration.ofHours(1);

    private final JdbcClient jdbc;
    private final Durably durably;
    private final Clock clock;

    Tokens(JdbcClient jdbc, Durably durably, Clock clock) {
        this.jdbc = jdbc;
        this.durably = durably;
        this.clock = clock;
    }

    /** One of a shop, without its secret. */
    public record Token(
            UUID id,
            UUID shop,
            String name,
            Scope scope,
            Instant madeAt,
            Instant expiresAt,
            Optional<Instant> usedAt,
            Optional<Instant> endedAt) {

        public boolean isGood(Instant now) {
            return endedAt.isEmpty() && now.isBefore(expiresAt);
        }

        private static Token of(ResultSet row, int number) throws SQLException {
            return new Token(
                    row.getObject("id", UUID.class),
                    row.getObject("shop_id", UUID.class),
                    row.getString("name"),
                    Scope.valueOf(row.getString("scope")),
                    StoredTime.in(row, "made_at"),
                    StoredTime.in(row, "expires_at"),
                    StoredTime.ifAny(row, "used_at"),
                    StoredTime.ifAny(row, "ended_at"));
        }
    }

    /**
     * Makes one.
     *
     * @return its secret, which nothing shows again
     */
    public String make(UUID shop, String name, Scope scope, Duration lifetime) {
        String secret = BEGINNING + Secret.forAddress(32);
        durably.write(() -> jdbc.sql("""
                        insert into api_token (id, shop_id, token_hash, name, scope, made_at, expires_at)
                        values (?, ?, ?, ?, ?, ?, ?)""")
                .params(
                        UUID.randomUUID(),
                        shop,
                        LinkToken.hash(secret),
                        name.strip(),
                        scope.name(),
                        StoredTime.of(clock.instant()),
                        StoredTime.of(clock.instant().plus(lifetime)))
                .update());
        return secret;
    }

    /** Those of a shop, the newest first. */
    public List<Token> of(UUID shop) {
        return durably.read(() -> jdbc.sql("select * from api_token where shop_id = ? order by made_at desc, id")
                .param(shop)
                .query(Token::of)
                .list());
    }

    /** The token of a secret, as long as it is good. */
    public Optional<Token> find(String secret) {
        Instant now = clock.instant();
        Optional<Token> found = durably.read(() -> jdbc.sql(
                                "select id, shop_id, name, scope, made_at, expires_at, used_at, ended_at from api_token where token_hash = ?")
                        .param(LinkToken.hash(secret))
                        .query(Token::of)
                        .optional())
                .filter(token -> token.isGood(now));
        found.filter(token -> token.usedAt()
                        .filter(used -> used.plus(NOTED).isAfter(now))
                        .isEmpty())
                .ifPresent(token ->
                        durably.derive(() -> jdbc.sql("update api_token set used_at = ? where shop_id = ? and id = ?")
                                .params(StoredTime.of(now), token.shop(), token.id())
                                .update()));
        return found;
    }

    /**
     * Ends one at once.
     *
     * @throws Refused where the shop has none with this id
     */
    public void end(UUID shop, UUID id) {
        durably.write(() -> {
            int found = jdbc.sql("update api_token set ended_at = coalesce(ended_at, ?) where shop_id = ? and id = ?")
                    .params(StoredTime.of(clock.instant()), shop, id)
                    .update();
            if (found == 0) {
                throw Refused.notFound("token of this shop", id);
            }
        });
    }
}
