package dev.stayfixed.platform.storage;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.sql.Types;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * With {@code --stayfixed.move-from=jdbc:h2:file:...} a start on PostgreSQL takes over all rows of an H2 file, in one transaction, before
 * anything else reads or writes. It ends with the start of the service only if every table holds what it held in the file. It names no
 * table: both databases say what they hold.
 */
final class MoveFromH2 {

    private static final Logger LOG = LoggerFactory.getLogger(MoveFromH2.class);

    /** Nothing is changed in the file, it is not made where it is missing, and a long table is not kept in memory. */
    private static final String READ_ONLY = ";MODE=PostgreSQL;ACCESS_MODE_DATA=r;IFEXISTS=TRUE;LAZY_QUERY_EXECUTION=1";

    private static final String AGAIN = " Nothing was moved, and nothing was changed in the file.";
    private static final int ROWS_AT_ONCE = 500;
    private static final int BYTES_AT_ONCE = 4 << 20;

    private final String from;

    /** @param from the address of the file, as in spring.datasource.url; another user than ours with ;USER=...;PASSWORD=... */
    MoveFromH2(String from) {
        this.from = from.strip();
    }

    /**
     * Migrates an empty PostgreSQL and fills it.
     *
     * @throws NotDone when nothing was moved
     */
    void into(Flyway flyway) {
        DataSource database = flyway.getConfiguration().getDataSource();
        if (Product.of(database) != Product.POSTGRESQL) {
            throw new NotDone(
                    "stayfixed.move-from: found an H2 as the database to move to, expected a PostgreSQL",
                    "Start with --spring.profiles.active=postgresql and STAYFIXED_DB_PASSWORD, as docker-compose.yml says.");
        }
        try (Connection source = open()) {
            needSameMigrations(source, flyway);
            flyway.migrate();
            try (Connection target = database.getConnection()) {
                target.setAutoCommit(false);
                Map<String, TableSum> moved = move(source, target, flyway);
                target.commit();
                LOG.info(
                        "moved from {}; each table compared with its copy, in rows and digest:\n{}",
                        from,
                        printed(moved));
            }
        } catch (SQLException e) {
            throw new NotDone(
                    "stayfixed.move-from: the move from " + from + " ended with: " + e.getMessage(),
                    "Mend what it says and repeat the command; the PostgreSQL is still empty." + AGAIN,
                    e);
        }
    }

    private Connection open() {
        if (!from.startsWith("jdbc:h2:")) {
            throw new NotDone(
                    "stayfixed.move-from: found " + from + ", expected the address of an H2 file",
                    "Write it as jdbc:h2:file:./data/stayfixed for the file data/stayfixed.mv.db.");
        }
        try {
            String address = from + READ_ONLY;
            return address.toUpperCase(Locale.ROOT).contains(";USER=")
                    ? DriverManager.getConnection(address)
                    : DriverManager.getConnection(address, "stayfixed", "");
        } catch (SQLException e) {
            throw new NotDone(
                    "stayfixed.move-from: " + from + " cannot be opened: " + e.getMessage(),
                    "Stop the service that uses the file, and check the path: jdbc:h2:file:./data/stayfixed for the file"
                            + " data/stayfixed.mv.db." + AGAIN,
                    e);
        }
    }

    private void needSameMigrations(Connection source, Flyway flyway) throws SQLException {
        Set<String> expected = Arrays.stream(flyway.info().all())
                .filter(migration -> migration.getVersion() != null)
                .map(migration -> migration.getVersion().getVersion())
                .collect(Collectors.toCollection(TreeSet::new));
        Set<String> found = new TreeSet<>();
        try (Statement select = source.createStatement();
                ResultSet rows = select.executeQuery(
                        "select \"version\" from \"flyway_schema_history\" where \"success\" and \"version\" is not null")) {
            while (rows.next()) {
                found.add(rows.getString(1));
            }
        }
        if (!found.equals(expected)) {
            Set<String> missing = new TreeSet<>(expected);
            missing.removeAll(found);
            found.removeAll(expected);
            throw new NotDone(
                    "stayfixed.move-from: found " + from + " without the migrations " + missing
                            + " and with the unknown ones " + found + ", expected those of this program",
                    "Start this program once on the H2 file, without the profile postgresql, stop it, and repeat the command."
                            + AGAIN);
        }
    }

    private Map<String, TableSum> move(Connection from, Connection to, Flyway flyway) throws SQLException {
        StoredTables source = StoredTables.of(from);
        StoredTables target = StoredTables.of(to);
        if (!source.shape().equals(target.shape())) {
            throw new NotDone(
                    "stayfixed.move-from: found other tables or columns in the file (" + source.shape()
                            + ") than expected (" + target.shape() + ")",
                    "The file was made by another program, or was changed by hand." + AGAIN);
        }
        List<String> order = target.inOrder();
        try (Statement lock = to.createStatement()) {
            lock.execute("lock table " + order.stream().map(target::quoted).collect(Collectors.joining(", "))
                    + " in access exclusive mode");
        }
        needFresh(target, flyway);
        List<String> backwards = new ArrayList<>(order);
        Collections.reverse(backwards);
        for (String table : backwards) {
            try (Statement delete = to.createStatement()) {
                delete.execute("delete from " + target.quoted(table));
            }
        }
        Map<String, TableSum> expected = new TreeMap<>();
        for (String table : order) {
            expected.put(table, copy(table, source, target, to));
            numberOn(table, target, from, to);
        }
        compare(expected, target.sums(target));
        return expected;
    }

    /** What the migrations put into an empty database may be there, as it is in one that is made for the comparison. */
    private static void needFresh(StoredTables target, Flyway flyway) throws SQLException {
        Map<String, TableSum> found = target.sums(target);
        String url = "jdbc:h2:mem:as-migrated;MODE=PostgreSQL";
        try (Connection open = DriverManager.getConnection(url)) {
            Flyway.configure()
                    .configuration(flyway.getConfiguration())
                    .placeholders(StorageConfiguration.words(Product.H2))
                    .defaultSchema("PUBLIC")
                    .dataSource(url, "", "")
                    .load()
                    .migrate();
            Map<String, TableSum> fresh = StoredTables.of(open).sums(target);
            List<String> filled = found.entrySet().stream()
                    .filter(table -> !table.getValue().equals(fresh.get(table.getKey())))
                    .map(Map.Entry::getKey)
                    .toList();
            if (!filled.isEmpty()) {
                throw new NotDone(
                        "stayfixed.move-from: found rows in the PostgreSQL, in " + filled
                                + ", expected an empty database",
                        "Move into a new database: createdb, and its name as STAYFIXED_DB_NAME. If it is the one that was filled by this"
                                + " command, start without stayfixed.move-from. A service that was started on it before has left its alarms"
                                + " in it, so that is no new one either." + AGAIN);
            }
        }
    }

    private static TableSum copy(String table, StoredTables source, StoredTables target, Connection to)
            throws SQLException {
        List<ValueKind> kinds = target.kinds(table);
        String places = String.join(", ", Collections.nCopies(kinds.size(), "?"));
        try (PreparedStatement insert = to.prepareStatement(
                "insert into " + target.quoted(table) + " (" + target.columns(table) + ") values (" + places + ")")) {
            Batch batch = new Batch(insert);
            TableSum sum = source.read(table, kinds, batch::add);
            batch.send();
            return sum;
        }
    }

    /** Rows on their way, so many that the way is worth it, and no more than memory bears. */
    private static final class Batch {

        private final PreparedStatement insert;
        private int rows;
        private int bytes;

        Batch(PreparedStatement insert) {
            this.insert = insert;
        }

        void add(@Nullable Object[] values) throws SQLException {
            for (int i = 0; i < values.length; i++) {
                Object value = values[i];
                if (value == null) {
                    insert.setNull(i + 1, Types.NULL);
                } else {
                    insert.setObject(i + 1, value);
                    bytes +=
                            value instanceof byte[] raw ? raw.length : value instanceof String text ? text.length() : 0;
                }
            }
            insert.addBatch();
            rows++;
            if (rows >= ROWS_AT_ONCE || bytes >= BYTES_AT_ONCE) {
                send();
            }
        }

        void send() throws SQLException {
            insert.executeBatch();
            rows = 0;
            bytes = 0;
        }
    }

    /** The next row gets the number that it would have had in the file. */
    private static void numberOn(String table, StoredTables target, Connection from, Connection to)
            throws SQLException {
        for (StoredTables.Column column : target.counting(table)) {
            long next;
            try (PreparedStatement select = from.prepareStatement(
                    "select identity_base from information_schema.columns where table_schema = current_schema"
                            + " and lower(table_name) = ? and lower(column_name) = ?")) {
                select.setString(1, table);
                select.setString(2, column.name());
                try (ResultSet found = select.executeQuery()) {
                    if (!found.next()) {
                        throw new IllegalStateException("no column " + table + "." + column.name());
                    }
                    next = found.getLong(1);
                }
            }
            try (Statement restart = to.createStatement()) {
                restart.execute("alter table " + target.quoted(table) + " alter column \"" + column.name()
                        + "\" restart with " + next);
            }
        }
    }

    private static void compare(Map<String, TableSum> expected, Map<String, TableSum> found) {
        List<String> others = expected.entrySet().stream()
                .filter(table -> !table.getValue().equals(found.get(table.getKey())))
                .map(table ->
                        table.getKey() + ": found " + found.get(table.getKey()) + ", expected " + table.getValue())
                .toList();
        if (!others.isEmpty() || !found.keySet().equals(expected.keySet())) {
            throw new NotDone(
                    "stayfixed.move-from: the copies differ from the file: " + others,
                    "This is a mistake of ours; stay with the H2 file and report it." + AGAIN);
        }
    }

    private static String printed(Map<String, TableSum> moved) {
        return moved.entrySet().stream()
                .map(table -> "%-32s %10d  %s"
                        .formatted(
                                table.getKey(),
                                table.getValue().rows(),
                                table.getValue().digest()))
                .collect(Collectors.joining("\n"));
    }
}
