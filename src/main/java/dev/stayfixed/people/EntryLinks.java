package dev.stayfixed.people;

import dev.stayfixed.platform.LinkToken;
import dev.stayfixed.platform.storage.Durably;
import dev.stayfixed.platform.storage.StoredTime;
import java.sql.Types;
import java.time.Clock;
import java.time.Duration;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;

/** What lets somebody in once: secrets that cannot be guessed, kept as digests, gone when they are used. */
@Service
public class EntryLinks {

    /** What such a secret is for. */
    public enum Purpose {
        FIRST_OWNER,
        INVITATION,
        SIGN_IN
    }

    private final JdbcClient jdbc;
    private final Durably durably;
    private final Clock clock;
    private final PeopleSettings settings;

    EntryLinks(JdbcClient jdbc, Durably durably, Clock clock, PeopleSettings settings) {
        this.jdbc = jdbc;
        this.durably = durably;
        this.clock = clock;
        this.settings = settings;
    }

    /** The code with which the first owner shows to be who started the service. */
    public String forFirstOwner() {
        return make(Purpose.FIRST_OWNER, null, settings.invitation());
    }

    public String invitation(UUID person) {
        return make(Purpose.INVITATION, person, settings.invitation());
    }

    public String signIn(UUID person) {
        return make(Purpose.SIGN_IN, person, settings.link());
    }

    private String make(Purpose purpose, @Nullable UUID person, Duration lifetime) {
        String token = LinkToken.make();
        durably.write(() -> {
            jdbc.sql("delete from entry_link where expires_at < ?")
                    .param(StoredTime.of(clock.instant()))
                    .update();
            jdbc.sql(
                            "insert into entry_link (token_hash, purpose, person_id, expires_at) values (:hash, :purpose, :person, :end)")
                    .param("hash", LinkToken.hash(token))
                    .param("purpose", purpose.name())
                    .param("person", person, Types.OTHER)
                    .param("end", StoredTime.of(clock.instant().plus(lifetime)))
                    .update();
        });
        return token;
    }

    /**
     * The person whom an invitation or a link is for; it stays good. The owner of one shop gives nobody a password who is in another one,
     * too.
     */
    public Optional<Person> look(Purpose purpose, String token) {
        return durably.read(() -> jdbc.sql("""
                        select p.id, p.mail, p.name from entry_link e join person p on p.id = e.person_id
                        where e.token_hash = ? and e.purpose = ? and e.expires_at > ?
                          and (e.purpose <> 'INVITATION'
                               or (select count(shop_id) from membership where person_id = p.id) = 1)""")
                .params(LinkToken.hash(token), purpose.name(), StoredTime.of(clock.instant()))
                .query(Person::of)
                .optional());
    }

    /** Uses one up; false where it is unknown, too old or used. */
    public boolean use(Purpose purpose, String token) {
        return durably.write(
                        () -> jdbc.sql("delete from entry_link where token_hash = ? and purpose = ? and expires_at > ?")
                                .params(LinkToken.hash(token), purpose.name(), StoredTime.of(clock.instant()))
                                .update())
                == 1;
    }

    /** Ends all that were made for a person. */
    public void end(UUID person) {
        durably.write(() -> jdbc.sql("delete from entry_link where person_id = ?")
                .param(person)
                .update());
    }

    /** Ends all codes for a first owner: there is one now. */
    public void endFirstOwner() {
        durably.write(() ->
                jdbc.sql("delete from entry_link where purpose = 'FIRST_OWNER'").update());
    }
}
