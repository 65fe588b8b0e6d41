package dev.stayfixed.wording;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/**
 * The rules say values, and so do pages: no text of several words stands in their sources, but for refusals of what cannot be read,
 * constants by name (patterns, tables) and the files that are listed here with the reason.
 */
class NoSentencesTest {

    private static final Path SERVICE = Path.of("src", "main", "java", "dev", "stayfixed");

    /** Two words in a row. */
    private static final Pattern WORDS = Pattern.compile("[a-z]{2,}[,;:]? (?:[a-z%$]|$)");

    private static final Pattern REFUSAL = Pattern.compile(
            "Exception[(.]|\\brefused\\(|\\bunexpected\\(|\\brequireProbability\\(|\\bcheck(?:Byte|Word|Range)\\(|static final|@SuppressWarnings");

    private static final Pattern OF_PAGES =
            Pattern.compile(".*/pages/.*|(?:worklist|customer|reports|learning|telling)/[A-Z].*");

    /** A literal of HTML, SVG or SQL. */
    private static final Pattern MARKUP = Pattern.compile(
            "<|='|^[\"\\s]*(?:select|insert|update|delete|from|where|and|or|order|limit|union|join|set) ");

    /** What a refusal calls it; what people read stands in the bundle under the same name. */
    private static final List<String> NAMES_IN_REFUSALS =
            List.of("drive/DriveQuantity", "drive/signal/Signal", "obd/MonitorGroup", "obd/FuelSystemStatus");

    /** What is looked for in logs and in what tools print, in whatever language. */
    private static final List<String> WORD_LISTS =
            List.of("obd/WordMonitor", "recording/CommonWords", "recording/PidNames", "recording/SourceUnit");

    /** For people who look for a mistake of ours. */
    private static final List<String> DEBUGGING = List.of("verification/UnitState", "recording/LogRow");

    @Test
    @DisplayName("pure rooms hold no finished sentence; a file that holds none any more leaves the list")
    void sentencesStandInTheBundle() throws IOException {
        Set<String> found = new TreeSet<>();
        for (String room : List.of("obd", "drive", "verification", "recording", "reason")) {
            try (Stream<Path> files = Files.walk(SERVICE.resolve(room))) {
                for (Path file :
                        files.filter(f -> f.toString().endsWith(".java")).toList()) {
                    if (holdsSentence(Files.readString(file))) {
                        found.add(SERVICE.relativize(file)
                                .toString()
                                .replace('\\', '/')
                                .replace(".java", ""));
                    }
                }
            }
        }
        assertThat(found)
                .isEqualTo(Stream.of(NAMES_IN_REFUSALS, WORD_LISTS, DEBUGGING)
                        .flatMap(List::stream)
                        .collect(Collectors.toCollection(TreeSet::new)));
    }

    /** The sample of the first rendering, keys of the turnstile, SQL in pieces, and the lines of a scan as a reader prints them. */
    private static final List<String> READ_BY_NOBODY = List.of(
            "reports/FirstRendering",
            "reports/pages/SharedReportPage",
            "customer/pages/DriverDoor",
            "worklist/OpenJobOrder",
            "web/pages/TickedScan");

    /** Beside refusals: the log, headers, locks, statements, and what the description of the interface says. */
    private static final Pattern NOT_ON_PAGES = Pattern.compile(
            "Refused(?:\\.\\w+)?\\(|LOG\\.|\\.hold\\(|[hH]eader\\(|\\.sql\\(|\\bmissing\\(|@(?:Operation|Tag|ApiResponse|Schema|Parameter)");

    @Test
    @DisplayName("pages hold no finished sentence: words stand in the bundles")
    void wordsOfPagesStandInTheBundles() throws IOException {
        Set<String> found = new TreeSet<>();
        try (Stream<Path> files = Files.walk(SERVICE)) {
            for (Path file : files.filter(f -> f.toString().endsWith(".java")).toList()) {
                String name =
                        SERVICE.relativize(file).toString().replace('\\', '/').replace(".java", "");
                if (OF_PAGES.matcher(name).matches() && holdsSentence(Files.readString(file), NOT_ON_PAGES)) {
                    found.add(name);
                }
            }
        }
        assertThat(found).isEqualTo(new TreeSet<>(READ_BY_NOBODY));
    }

    @Test
    void aPlantedSentenceIsFound() {
        assertThat(holdsSentence("class A { String a() { return \"the lamp \" + b + \" is on\"; } }"))
                .isTrue();
        assertThat(holdsSentence("class A { // \"the lamp is on\"\n /* \"the lamp is on\" */ String a = \"lamp\"; }"))
                .isFalse();
        assertThat(holdsSentence("class A { void a() { throw new IllegalStateException(\"the lamp is on\"); } }"))
                .isFalse();
        assertThat(holdsSentence("class A { char a = '\"'; String b = \"the \\\" lamp is on\"; }"))
                .isTrue();
    }

    private static boolean holdsSentence(String source) {
        return holdsSentence(source, REFUSAL);
    }

    private static boolean holdsSentence(String source, Pattern besideRefusals) {
        return statements(source).stream()
                .filter(s -> !besideRefusals.matcher(s.code()).find())
                .anyMatch(s -> s.literals().stream()
                                .anyMatch(text -> WORDS.matcher(text).find()
                                        && !MARKUP.matcher(text).find())
                        && !REFUSAL.matcher(s.code()).find());
    }

    /** The code of a statement without its literals, and these. */
    private record Statement(String code, List<String> literals) {}

    private static List<Statement> statements(String source) {
        List<Statement> statements = new ArrayList<>();
        StringBuilder code = new StringBuilder();
        List<String> literals = new ArrayList<>();
        for (int at = 0; at < source.length(); ) {
            char c = source.charAt(at);
            int end = endOfPiece(source, at);
            if (c == '"' && end > at) {
                literals.add(source.substring(at + 1, end - 1));
            } else if (c == ';' || c == '{' || c == '}') {
                statements.add(new Statement(code.toString(), List.copyOf(literals)));
                code.setLength(0);
                literals.clear();
            } else if (end == at + 1) {
                code.append(c);
            }
            at = end;
        }
        statements.add(new Statement(code.toString(), literals));
        return statements;
    }

    /** Behind the comment or the literal that begins here, otherwise behind this character. */
    private static int endOfPiece(String source, int at) {
        if (source.startsWith("//", at)) {
            int end = source.indexOf('\n', at);
            return end < 0 ? source.length() : end;
        }
        if (source.startsWith("/*", at)) {
            return source.indexOf("*/", at) + 2;
        }
        if (source.startsWith("\"\"\"", at)) {
            return source.indexOf("\"\"\"", at + 3) + 3;
        }
        char quote = source.charAt(at);
        if (quote != '"' && quote != '\'') {
            return at + 1;
        }
        int end = at + 1;
        while (source.charAt(end) != quote) {
            end += source.charAt(end) == '\\' ? 2 : 1;
        }
        return end + 1;
    }
}
