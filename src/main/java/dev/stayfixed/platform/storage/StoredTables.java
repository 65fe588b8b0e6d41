package dev.stayfixed.platform.storage;

import java.sql.Connection;
import java.sql.DatabaseMetaData;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** The tables of one database, as it describes them itself; that of the migrations is left out. */
final class StoredTables {

    private static final String MIGRATIONS = "flyway_schema_history";

    /** Rows that the driver of PostgreSQL fetches at once; one may hold a quarter of a megabyte. */
    private static final int AT_ONCE = 50;

    private final Connection connection;
    private final Map<String, Table> tables;

    /**
     * One of them.
     *
     * @param name as the database writes it
     * @param columns by their names in small letters
     */
    record Table(String name, Map<String, Column> columns) {}

    /**
     * One of its columns.
     *
     * @param name as the database writes it
     * @param type as the database calls it
     * @param counting whether the database numbers the rows by it
     */
    record Column(String name, String type, boolean counting) {}

    /** Takes rows one by one. */
    @FunctionalInterface
    interface Rows {
        void row(@Nullable Object[] values) throws SQLException;
    }

    private StoredTables(Connection connection, Map<String, Table> tables) {
        this.connection = connection;
        this.tables = tables;
    }

    static StoredTables of(Connection connection) throws SQLException {
        Map<String, Table> tables = new TreeMap<>();
        DatabaseMetaData data = connection.getMetaData();
        try (ResultSet columns = data.getColumns(connection.getCatalog(), connection.getSchema(), "%", "%")) {
            Set<String> kept = names(connection);
            while (columns.next()) {
                String name = columns.getString("TABLE_NAME");
                if (kept.contains(name)) {
                    String column = columns.getString("COLUMN_NAME");
                    tables.computeIfAbsent(small(name), t -> new Table(name, new TreeMap<>()))
                            .columns()
                            .put(
                                    small(column),
                                    new Column(
                                            column,
                                            columns.getString("TYPE_NAME"),
                                            "YES".equals(columns.getString("IS_AUTOINCREMENT"))));
                }
            }
        }
        return new StoredTables(connection, tables);
    }

    private static Set<String> names(Connection connection) throws SQLException {
        Set<String> names = new TreeSet<>();
        try (ResultSet rows = connection
                .getMetaData()
                .getTables(
                        connection.getCatalog(), connection.getSchema(), "%", new String[] {"TABLE", "BASE TABLE"})) {
            while (rows.next()) {
                String name = rows.getString("TABLE_NAME");
                if (!name.equals(MIGRATIONS)) {
                    names.add(name);
                }
            }
        }
        return names;
    }

    private static String small(String name) {
        return name.toLowerCase(Locale.ROOT);
    }

    Set<String> names() {
        return tables.keySet();
    }

    Table table(String name) {
        Table table = tables.get(name);
        if (table == null) {
            throw new IllegalArgumentException("no table " + name);
        }
        return table;
    }

    /** The columns of each table, by name. */
    Map<String, Set<String>> shape() {
        Map<String, Set<String>> shape = new TreeMap<>();
        tables.forEach((name, table) -> shape.put(name, table.columns().keySet()));
        return shape;
    }

    /** What each column of a table holds, in the order of their names; only PostgreSQL calls the types so. */
    List<ValueKind> kinds(String name) {
        return table(name).columns().entrySet().stream()
                .map(column -> ValueKind.of(column.getValue().type())
                        .orElseThrow(() -> new NotDone(
                                "stayfixed.move-from: found the type "
                                        + column.getValue().type() + " at the column " + name + "." + column.getKey()
                                        + ", expected one that the move knows",
                                "This is a mistake of ours: ValueKind lacks the type. Nothing was moved.")))
                .toList();
    }

    /** Every table after those that it refers to. */
    List<String> inOrder() throws SQLException {
        Map<String, Set<String>> waiting = new TreeMap<>();
        for (Table table : tables.values()) {
            waiting.put(small(table.name()), referredTo(table));
        }
        List<String> order = new ArrayList<>();
        while (!waiting.isEmpty()) {
            Set<String> free = waiting.entrySet().stream()
                    .filter(table -> order.containsAll(table.getValue()))
                    .map(Map.Entry::getKey)
                    .collect(Collectors.toCollection(TreeSet::new));
            if (free.isEmpty()) {
                throw new NotDone(
                        "stayfixed.move-from: found tables that refer to each other in a circle: " + waiting.keySet(),
                        "This is a mistake of ours: the move fills a table after those that it refers to. Nothing was moved.");
            }
            order.addAll(free);
            waiting.keySet().removeAll(free);
        }
        return order;
    }

    private Set<String> referredTo(Table table) throws SQLException {
        Set<String> names = new TreeSet<>();
        try (ResultSet keys = connection
                .getMetaData()
                .getImportedKeys(connection.getCatalog(), connection.getSchema(), table.name())) {
            while (keys.next()) {
                names.add(small(keys.getString("PKTABLE_NAME")));
            }
        }
        return names;
    }

    /** Reads a table through, a few rows at a time, and says what it holds. */
    TableSum read(String name, List<ValueKind> kinds, Rows rows) throws SQLException {
        TableSum.Adding sum = new TableSum.Adding();
        try (PreparedStatement select =
                connection.prepareStatement("select " + columns(name) + " from " + quoted(name))) {
            select.setFetchSize(AT_ONCE);
            try (ResultSet found = select.executeQuery()) {
                while (found.next()) {
                    @Nullable Object[] values = new @Nullable Object[kinds.size()];
                    for (int i = 0; i < values.length; i++) {
                        values[i] = kinds.get(i).read(found, i + 1);
                    }
                    sum.add(kinds, values);
                    rows.row(values);
                }
            }
        }
        return sum.sum();
    }

    String quoted(String name) {
        return quote(table(name).name());
    }

    /** The columns of a table, in the order of their names. */
    String columns(String name) {
        return table(name).columns().values().stream()
                .map(column -> quote(column.name()))
                .collect(Collectors.joining(", "));
    }

    /** The columns by which the database numbers rows. */
    List<Column> counting(String name) {
        return table(name).columns().values().stream().filter(Column::counting).toList();
    }

    private static String quote(String name) {
        return '"' + name + '"';
    }

    /** What each table holds. */
    Map<String, TableSum> sums(StoredTables described) throws SQLException {
        Map<String, TableSum> sums = new LinkedHashMap<>();
        for (String name : tables.keySet()) {
            sums.put(name, read(name, described.kinds(name), values -> {}));
        }
        return sums;
    }
}
