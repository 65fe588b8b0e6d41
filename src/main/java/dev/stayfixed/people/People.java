package dev.stayfixed.people;

import dev.stayfixed.platform.problem.Mistake;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.platform.storage.Durably;
import dev.stayfixed.platform.storage.StoredTime;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Service;

/**
 * The people of each shop. They are found whatever shop is at work, because signing in comes before there is one; what is asked about
 * the members of a shop names it.
 */
@Service
public class People {

    private static final String MEMBER = """
            select p.id, p.mail, p.name, m.shop_id, m.role, m.since
            from person p join membership m on m.person_id = p.id
            """;

    private final JdbcClient jdbc;
    private final Durably durably;
    private final Clock clock;
    private final PasswordEncoder passwords;

    People(JdbcClient jdbc, Durably durably, Clock clock, PasswordEncoder passwords) {
        this.jdbc = jdbc;
        this.durably = durably;
        this.clock = clock;
        this.passwords = passwords;
    }

    /** As it is kept: mail addresses that differ in case only lead to one person, and one that cannot be one leads to nobody. */
    public static String sameMail(String mail) {
        return mail.chars().anyMatch(Character::isISOControl)
                ? ""
                : mail.strip().toLowerCase(Locale.ROOT);
    }

    public boolean isAnybodyHere() {
        return durably.read(() -> jdbc.sql("select exists (select 1 from person)")
                .query(Boolean.class)
                .single());
    }

    /** The shops that a person is a member of, the oldest membership first; none for a mail that nobody has. */
    public List<Member> memberships(String mail) {
        return durably.read(() -> jdbc.sql(MEMBER + "where p.mail = ? order by m.since, m.shop_id")
                .param(sameMail(mail))
                .query(People::member)
                .list());
    }

    /** Those of a shop, by name. */
    public List<Member> of(UUID shop) {
        return durably.read(() -> jdbc.sql(MEMBER + "where m.shop_id = ? order by lower(p.name), p.mail")
                .param(shop)
                .query(People::member)
                .list());
    }

    /**
     * A member of a shop.
     *
     * @throws Refused where there is none with this id
     */
    public Member get(UUID shop, UUID person) {
        return durably.read(() -> jdbc.sql(MEMBER + "where m.shop_id = ? and p.id = ?")
                .params(shop, person)
                .query(People::member)
                .optional()
                .orElseThrow(() -> Refused.notFound("person of this shop", person)));
    }

    private static Member member(ResultSet row, int number) throws SQLException {
        return new Member(
                Person.of(row, number),
                row.getObject("shop_id", UUID.class),
                Role.valueOf(row.getString("role")),
                StoredTime.in(row, "since"));
    }

    /** The digest of a password as its encoder wrote it; empty for whoever has none, or is not here. */
    public Optional<String> passwordDigest(String mail) {
        return durably.read(
                () -> jdbc.sql("select password_hash from person where mail = ? and password_hash is not null")
                        .param(sameMail(mail))
                        .query(String.class)
                        .optional());
    }

    /**
     * Has somebody become a member of a shop. Whoever is a member of one already, of this or of another, is not taken into it: the owner
     * who invited them first may have chosen their password, and would come in with them.
     *
     * @throws Refused where somebody has this address
     */
    public Person add(UUID shop, String mail, String name, Role role) {
        return durably.write(() -> {
            durably.hold("people");
            String same = sameMail(mail);
            if (find(same).isPresent()) {
                throw Refused.content(new Mistake("mail", same, "an address that nobody signs in with yet"));
            }
            Person person = insert(new Person(UUID.randomUUID(), same, name.strip()));
            jdbc.sql("insert into membership (person_id, shop_id, role, since) values (?, ?, ?, ?)")
                    .params(person.id(), shop, role.name(), StoredTime.of(clock.instant()))
                    .update();
            return person;
        });
    }

    private Person insert(Person person) {
        jdbc.sql("insert into person (id, mail, name, created_at) values (?, ?, ?, ?)")
                .params(person.id(), person.mail(), person.name(), StoredTime.of(clock.instant()))
                .update();
        return person;
    }

    private Optional<Person> find(String mail) {
        return jdbc.sql("select id, mail, name from person where mail = ?")
                .param(mail)
                .query(Person::of)
                .optional();
    }

    /** Has a person sign in by another password. */
    public void choosePassword(UUID person, String password) {
        String digest = passwords.encode(password);
        durably.write(() -> keepDigest(person, digest));
    }

    /** The same password, written anew because the encoder's costs were raised. */
    public void keepDigest(String mail, String digest) {
        durably.write(() -> find(sameMail(mail)).ifPresent(person -> keepDigest(person.id(), digest)));
    }

    private void keepDigest(UUID person, String digest) {
        jdbc.sql("update person set password_hash = ? where id = ?")
                .params(digest, person)
                .update();
    }

    /**
     * Gives a member another role.
     *
     * @throws Refused where the shop would be left without an owner
     */
    public void change(UUID shop, UUID person, Role role) {
        durably.write(() -> {
            durably.hold("people");
            if (get(shop, person).role() == Role.OWNER && role != Role.OWNER) {
                keepAnOwner(shop);
            }
            jdbc.sql("update membership set role = ? where shop_id = ? and person_id = ?")
                    .params(role.name(), shop, person)
                    .update();
        });
    }

    /**
     * Ends a membership, and the person with the last of them.
     *
     * @throws Refused where the shop would be left without an owner
     */
    public void remove(UUID shop, UUID person) {
        durably.write(() -> {
            durably.hold("people");
            if (get(shop, person).role() == Role.OWNER) {
                keepAnOwner(shop);
            }
            jdbc.sql("delete from membership where shop_id = ? and person_id = ?")
                    .params(shop, person)
                    .update();
            jdbc.sql(
                            "delete from person where id = ? and not exists (select shop_id from membership where person_id = ?)")
                    .params(person, person)
                    .update();
        });
    }

    private void keepAnOwner(UUID shop) {
        int owners = jdbc.sql("select count(*) from membership where shop_id = ? and role = 'OWNER'")
                .param(shop)
                .query(Integer.class)
                .single();
        if (owners < 2) {
            throw Refused.content(new Mistake(
                    "role", "the only owner", "another owner who stays: make somebody else an owner first"));
        }
    }
}
