package dev.stayfixed.platform.storage;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Row-level security of PostgreSQL: whatever a statement forgets, a connection reads and writes rows of one shop only. Put up at each
 * start behind the migrations, as far as it is missing, for every table that is there: one that nobody thought of here is closed, not
 * open. H2 has nothing like it.
 *
 * <p>The owner of tables and a superuser are not bound by it. So the service works as {@link #ROLE}, which owns nothing and cannot sign
 * in; the user of the settings makes it, or is made a member of it, and goes back to being himself for migrations and copies alone.
 * Where he may not make it, the tables bind their owner, too.
 */
final class RowFences {

    private static final Logger LOG = LoggerFactory.getLogger(RowFences.class);

    /** As which the service works; one for all databases of a server. */
    static final String ROLE = "stayfixed_work";

    /** The setting that says for which shop a connection is. */
    static final String SHOP = "stayfixed.shop";

    /** The setting that says with which secret somebody came; see {@link Durably#readThrough}. */
    static final String DOOR = "stayfixed.door";

    /**
     * Tables without a fence: the alarms, which hold ids only, and those by which it is found out who asks, and so for which shop; what
     * reads them names a person, a digest or a shop.
     */
    static final Set<String> OPEN = Set.of(
            "scheduled_tasks",
            "person",
            "membership",
            "entry_link",
            "api_token",
            "web_session",
            "web_session_attributes");

    /**
     * Which rows can be read before the shop is known, by whoever holds what stands in this column. A policy and no function that runs
     * as its owner: it binds everybody alike, whoever owns the tables, and opens one row to one who has its secret already.
     */
    private static final Map<String, String> DOORS = Map.of(
            "driver_link", "token_hash",
            "report_link", "token_hash",
            "calendar_link", "token_hash",
            "mail_recipient", "token_hash");

    private static final String MIGRATIONS = "flyway_schema_history";
    private static final String OF_SHOP = "of_shop";
    private static final String HERE = "nullif(current_setting('" + SHOP + "', true), '')::uuid";
    private static final String HELD = "current_setting('" + DOOR + "', true)";

    /** What keeps the service from passing by the fences. */
    enum Bound {
        BY_ROLE,
        AS_OWNER
    }

    private final Connection owner;

    /** @param owner signed in as the user of the settings, who owns the tables; in a transaction */
    RowFences(Connection owner) {
        this.owner = owner;
    }

    /** Puts up what is missing. */
    Bound raise() throws SQLException {
        run("select pg_advisory_xact_lock(hashtextextended('row fences', 0))");
        makeRole();
        boolean role =
                isTrue("select coalesce((select pg_has_role(current_user, oid, 'set') from pg_roles where rolname = '"
                        + ROLE + "'), false)");
        if (!role) {
            if (isTrue("select rolsuper or rolbypassrls from pg_roles where rolname = current_user")) {
                throw new NotDone(
                        "found a database user whom no row-level security binds, and who may not act as the role "
                                + ROLE + ", expected one who may",
                        "Let an administrator of the database do this once: create role " + ROLE + " nologin; grant "
                                + ROLE + " to the user of spring.datasource.username.");
            }
            LOG.info("the role {} is not there and may not be made: the tables bind their owner instead", ROLE);
        }
        Map<String, Map<String, String>> present = policies();
        for (Table table : tables()) {
            if (role && !table.granted()) {
                run("grant select, insert, update, delete on " + table.name() + " to " + ROLE);
            }
            if (OPEN.contains(table.name())) {
                continue;
            }
            if (!table.fenced()) {
                run("alter table " + table.name() + " enable row level security");
            }
            if (table.ownerBound() == role) {
                run("alter table " + table.name() + (role ? " no force" : " force") + " row level security");
            }
            make(table.name(), wanted(table), present.getOrDefault(table.name(), Map.of()));
        }
        if (role) {
            run("grant usage on schema " + string("select quote_ident(current_schema)") + " to " + ROLE);
        }
        return role ? Bound.BY_ROLE : Bound.AS_OWNER;
    }

    /** Lets the owner of the tables see all rows again, where they bind him: a migration that saw none would change none. */
    void lower() throws SQLException {
        for (Table table : tables()) {
            if (table.ownerBound()) {
                run("alter table " + table.name() + " no force row level security");
            }
        }
    }

    /** Another service may be making it for another database at the same moment. */
    private void makeRole() throws SQLException {
        run("""
                do $$
                begin
                    if not exists (select from pg_roles where rolname = '%1$s') then
                        create role %1$s nologin;
                    end if;
                    if not pg_has_role(current_user, '%1$s', 'set') then
                        execute format('grant %1$s to %%I', current_user);
                    end if;
                exception when insufficient_privilege or duplicate_object or unique_violation then null;
                end $$""".formatted(ROLE));
    }

    /** A table as it is found. */
    private record Table(String name, boolean ofShop, boolean granted, boolean fenced, boolean ownerBound) {}

    private List<Table> tables() throws SQLException {
        List<Table> tables = new ArrayList<>();
        try (Statement select = owner.createStatement();
                ResultSet rows = select.executeQuery("""
                        select c.relname, c.relrowsecurity, c.relforcerowsecurity,
                               exists (select from pg_attribute a where a.attrelid = c.oid and a.attname = 'shop_id') of_shop,
                               coalesce((select has_table_privilege(r.oid, c.oid, 'delete') from pg_roles r where r.rolname = '%s'),
                                        false) granted
                        from pg_class c
                        where c.relnamespace = current_schema::regnamespace and c.relkind in ('r', 'p') and c.relname <> '%s'
                        order by c.relname""".formatted(ROLE, MIGRATIONS))) {
            while (rows.next()) {
                tables.add(new Table(
                        rows.getString("relname"),
                        rows.getBoolean("of_shop"),
                        rows.getBoolean("granted"),
                        rows.getBoolean("relrowsecurity"),
                        rows.getBoolean("relforcerowsecurity")));
            }
        }
        return tables;
    }

    /** What is to be allowed, by name. */
    private Map<String, String> wanted(Table table) throws SQLException {
        Map<String, String> wanted = new TreeMap<>();
        if (table.name().equals("shop")) {
            wanted.put(OF_SHOP, "using (id = " + HERE + ")");
            wanted.put("which_there_are", "for select using (" + HELD + " = '" + Durably.SHOPS + "')");
        } else if (table.ofShop()) {
            wanted.put(OF_SHOP, "using (shop_id = " + HERE + ")");
        } else {
            List<String> wholes = wholes(table.name());
            if (!wholes.isEmpty()) {
                wanted.put(OF_SHOP, "using (" + String.join(" and ", wholes) + ")");
            }
        }
        if (DOORS.containsKey(table.name())) {
            wanted.put("by_secret", "for select using (" + DOORS.get(table.name()) + " = " + HELD + ")");
        }
        return wanted;
    }

    /**
     * A row without a shop of its own is a part of the rows that it refers to, and is seen and written with them: a copy of their shop in
     * each part could only differ from theirs, and to fill it in would write the logs, which may be gigabytes, anew.
     */
    private List<String> wholes(String part) throws SQLException {
        List<String> wholes = new ArrayList<>();
        try (PreparedStatement select = owner.prepareStatement("""
                select w.relname whole, pa.attname part_column, wa.attname whole_column
                from pg_constraint k
                join pg_class p on p.oid = k.conrelid
                join pg_class w on w.oid = k.confrelid
                join pg_attribute pa on pa.attrelid = p.oid and pa.attnum = k.conkey[1]
                join pg_attribute wa on wa.attrelid = w.oid and wa.attnum = k.confkey[1]
                where k.contype = 'f' and p.relnamespace = current_schema::regnamespace and p.relname = ?
                order by k.conname""")) {
            select.setString(1, part);
            try (ResultSet keys = select.executeQuery()) {
                while (keys.next()) {
                    wholes.add("exists (select from %1$s w where w.%2$s = %3$s.%4$s)"
                            .formatted(
                                    keys.getString("whole"),
                                    keys.getString("whole_column"),
                                    part,
                                    keys.getString("part_column")));
                }
            }
        }
        return wholes;
    }

    /** What each policy was made of stands in its comment, so that one that has to change is made anew, and no other is touched. */
    private Map<String, Map<String, String>> policies() throws SQLException {
        Map<String, Map<String, String>> policies = new HashMap<>();
        try (Statement select = owner.createStatement();
                ResultSet rows = select.executeQuery("""
                        select c.relname, p.polname, coalesce(obj_description(p.oid, 'pg_policy'), '') made_of
                        from pg_policy p join pg_class c on c.oid = p.polrelid
                        where c.relnamespace = current_schema::regnamespace""")) {
            while (rows.next()) {
                policies.computeIfAbsent(rows.getString("relname"), table -> new TreeMap<>())
                        .put(rows.getString("polname"), rows.getString("made_of"));
            }
        }
        return policies;
    }

    private void make(String table, Map<String, String> wanted, Map<String, String> present) throws SQLException {
        for (Map.Entry<String, String> policy : present.entrySet()) {
            if (!policy.getValue().equals(wanted.get(policy.getKey()))) {
                run("drop policy " + policy.getKey() + " on " + table);
            }
        }
        for (Map.Entry<String, String> policy : wanted.entrySet()) {
            String name = policy.getKey();
            if (!policy.getValue().equals(present.get(name))) {
                run("create policy " + name + " on " + table + " " + policy.getValue());
                run("comment on policy " + name + " on " + table + " is '"
                        + policy.getValue().replace("'", "''") + "'");
            }
        }
    }

    private void run(String sql) throws SQLException {
        try (Statement statement = owner.createStatement()) {
            statement.execute(sql);
        }
    }

    private boolean isTrue(String sql) throws SQLException {
        return string(sql).equals("t");
    }

    private String string(String sql) throws SQLException {
        try (Statement statement = owner.createStatement();
                ResultSet rows = statement.executeQuery(sql)) {
            rows.next();
            return rows.getString(1);
        }
    }
}
