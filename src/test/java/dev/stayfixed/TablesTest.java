package dev.stayfixed;

import static java.util.regex.Pattern.CASE_INSENSITIVE;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** A table is named in the room that owns it, and nowhere else; the list of open jobs alone reads the tables of others. */
class TablesTest {

    private static final Path SOURCES = Path.of("src/main/java/dev/stayfixed");
    private static final Path MIGRATIONS = Path.of("db-migrations");

    /** It writes its own table only. */
    private static final String READER_OF_ALL = "worklist";

    /** Those of sessions are written by their library. */
    private static final Set<String> OF_LIBRARIES = Set.of("web_session", "web_session_attributes");

    private static final Pattern CREATED = Pattern.compile("create table (\\w+)", CASE_INSENSITIVE);
    private static final Pattern DROPPED = Pattern.compile("drop table (\\w+)", CASE_INSENSITIVE);
    private static final Pattern READ = Pattern.compile("\\b(?:from|join)\\s+(\\w+)", CASE_INSENSITIVE);
    private static final Pattern WRITTEN = Pattern.compile(
            "\\b(?:insert into|delete from|update)\\s+(\\w+)|\\b\\w*Table\\(\\s*name = \"(\\w+)\"", CASE_INSENSITIVE);

    /** The rooms by what they do to each table. */
    private record Use(Map<String, Set<String>> owners, Map<String, Set<String>> readers) {

        static Use of(Map<String, List<String>> sources, Set<String> tables) {
            Use use = new Use(new TreeMap<>(), new TreeMap<>());
            sources.forEach((room, texts) -> texts.forEach(text -> {
                note(WRITTEN.matcher(text), room, tables, use.owners());
                note(READ.matcher(text.replaceAll("(?i)delete from", "")), room, tables, use.readers());
            }));
            return use;
        }

        private static void note(Matcher named, String room, Set<String> tables, Map<String, Set<String>> rooms) {
            while (named.find()) {
                String table = named.group(1) != null ? named.group(1) : named.group(2);
                if (table != null && tables.contains(table)) {
                    rooms.computeIfAbsent(table, t -> new TreeSet<>()).add(room);
                }
            }
        }

        /** The tables that more than one room owns, or that are read by a room that may not. */
        Set<String> shared() {
            Set<String> shared = new TreeSet<>();
            owners.forEach((table, rooms) -> {
                if (rooms.size() > 1) {
                    shared.add(table + " is written by " + rooms);
                }
                Set<String> strangers = new TreeSet<>(readers.getOrDefault(table, Set.of()));
                strangers.removeAll(rooms);
                strangers.remove(READER_OF_ALL);
                if (!strangers.isEmpty()) {
                    shared.add(table + " of " + rooms + " is read by " + strangers);
                }
            });
            return shared;
        }
    }

    @Test
    void everyTableHasOneRoom() throws IOException {
        Use use = Use.of(sources(), tables());
        assertThat(use.shared()).isEmpty();
        Set<String> ours = tables();
        ours.removeAll(OF_LIBRARIES);
        assertThat(use.owners().keySet()).as("tables that somebody writes").containsAll(ours);
    }

    @Test
    void aTableOfTwoRoomsIsFound() {
        Use use = Use.of(
                Map.of(
                        "one",
                        List.of("jdbc.sql(\"insert into thing (id) values (?)\")"),
                        "two",
                        List.of("@Table(name = \"thing\")"),
                        "three",
                        List.of("select t.id\n from   thing t"),
                        READER_OF_ALL,
                        List.of("left join thing t")),
                Set.of("thing"));
        assertThat(use.shared())
                .containsExactly("thing is written by [one, two]", "thing of [one, two] is read by [three]");
    }

    private static Set<String> tables() throws IOException {
        Set<String> tables = new TreeSet<>();
        try (Stream<Path> scripts = Files.list(MIGRATIONS)) {
            scripts.sorted().map(TablesTest::text).forEach(script -> {
                CREATED.matcher(script).results().forEach(found -> tables.add(found.group(1)));
                DROPPED.matcher(script).results().forEach(found -> tables.remove(found.group(1)));
            });
        }
        return tables;
    }

    private static Map<String, List<String>> sources() throws IOException {
        Map<String, List<String>> texts = new TreeMap<>();
        try (Stream<Path> files = Files.walk(SOURCES)) {
            files.filter(file -> file.toString().endsWith(".java"))
                    .filter(file -> file.getNameCount() > SOURCES.getNameCount() + 1)
                    .forEach(file -> texts.computeIfAbsent(
                                    SOURCES.relativize(file).getName(0).toString(), room -> new ArrayList<>())
                            .add(text(file)));
        }
        return texts;
    }

    private static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
