package dev.stayfixed;

import static java.util.regex.Pattern.CASE_INSENSITIVE;
import static java.util.regex.Pattern.DOTALL;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The first fence between shops: every statement over a table that has a shop names it. */
class ShopsInStatementsTest {

    private static final Path SOURCES = Path.of("src/main/java/dev/stayfixed");
    private static final Path MIGRATIONS = Path.of("db-migrations");

    private static final Pattern CREATED =
            Pattern.compile("create table (\\w+) \\((.*?)\\n\\);", CASE_INSENSITIVE | DOTALL);

    /** A text block, or literals that are added to each other. */
    private static final Pattern TEXT =
            Pattern.compile("\"\"\"(.*?)\"\"\"|(?:\"(?:[^\"\\\\\\n]|\\\\.)*\"(?:\\s*\\+\\s*)?)+", DOTALL);

    private static final Pattern STATEMENT = Pattern.compile("\\b(?:select|insert into|update|delete from)\\s");
    private static final Pattern TABLE = Pattern.compile("\\b(?:from|join|into|update)\\s+(\\w+)");

    /** Of an insert, the columns are filled in. */
    private static final String FILLED_IN = "%s";

    @Test
    void everyStatementNamesTheShop() throws IOException {
        Set<String> tables = tables();
        assertThat(tables).contains("vehicle", "delivery").doesNotContain("shop", "measurement");
        List<String> without = new ArrayList<>();
        try (Stream<Path> files = Files.walk(SOURCES)) {
            // A step of the migrations is for the rows of all shops.
            files.filter(file ->
                            file.toString().endsWith(".java") && !text(file).contains("extends JavaStep"))
                    .forEach(file -> withoutShop(text(file), tables)
                            .forEach(found -> without.add(SOURCES.relativize(file) + ": " + found)));
        }
        assertThat(without).isEmpty();
    }

    @Test
    void aStatementWithoutItIsFound() {
        Set<String> tables = Set.of("job");
        assertThat(withoutShop("jdbc.sql(\"select * from job\" + \" where id = ?\")", tables))
                .containsExactly("select * from job where id = ?");
        assertThat(withoutShop("\"update job set a = ? where shop_id = ?\", \"select a from other\"", tables))
                .isEmpty();
    }

    private static List<String> withoutShop(String source, Set<String> tables) {
        return TEXT.matcher(source)
                .results()
                .map(MatchResult::group)
                .map(text -> text.replaceAll("\"\\s*\\+\\s*\"", "")
                        .replace("\"", "")
                        .replaceAll("\\s+", " ")
                        .strip())
                .filter(text ->
                        STATEMENT.matcher(text).find() && !text.contains("shop_id") && !text.contains(FILLED_IN))
                .filter(text -> TABLE.matcher(text).results().anyMatch(named -> tables.contains(named.group(1))))
                .toList();
    }

    private static Set<String> tables() throws IOException {
        Set<String> tables = new TreeSet<>();
        try (Stream<Path> scripts = Files.list(MIGRATIONS)) {
            scripts.forEach(script -> CREATED.matcher(text(script))
                    .results()
                    .filter(found -> found.group(2).contains("shop_id"))
                    .forEach(found -> tables.add(found.group(1))));
        }
        return tables;
    }

    private static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
