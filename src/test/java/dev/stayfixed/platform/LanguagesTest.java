package dev.stayfixed.platform;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.MessageFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Properties;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The file of each language beside English: it says whole rooms, all that drivers and customers read among them, and nothing else. */
class LanguagesTest {

    private static final Path RESOURCES = Path.of("src", "main", "resources");
    private static final Path TEMPLATES = RESOURCES.resolve("templates");

    /** What the rules say. */
    private static final String REASONS = "reasons";

    /** Whose texts a driver or a customer sees. */
    private static final Set<String> READERS = Set.of(REASONS, "archive", "customer", "reports", "telling", "web");

    /** Of dates, and differ. */
    private static final Set<String> PATTERNS = Set.of("Day", "Minute");

    private static final Pattern PLACE = Pattern.compile("\\{(\\d+|[a-z]\\w*)(?:\\.number)?[,}]");
    private static final Pattern KEY_IN_TEMPLATE = Pattern.compile("#\\{([a-z]+)\\.|#messages\\.msg\\('([a-z]+)\\.");

    private static Map<String, String> texts(Path file) {
        Properties properties = new Properties();
        try (Reader in = Files.newBufferedReader(file)) {
            properties.load(in);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return properties.stringPropertyNames().stream()
                .collect(Collectors.toMap(key -> key, properties::getProperty, (a, b) -> a, TreeMap::new));
    }

    private static String name(Path file) {
        return Objects.requireNonNull(file.getFileName()).toString().replace(".properties", "");
    }

    /** By room. */
    private static Map<String, Map<String, String>> english() throws IOException {
        try (Stream<Path> rooms = Files.list(RESOURCES.resolve("messages"))) {
            return Stream.concat(rooms, Stream.of(RESOURCES.resolve(REASONS + ".properties")))
                    .collect(Collectors.toMap(LanguagesTest::name, LanguagesTest::texts, (a, b) -> a, TreeMap::new));
        }
    }

    static List<Path> languages() throws IOException {
        try (Stream<Path> files = Files.list(RESOURCES.resolve("languages"))) {
            return files.sorted().toList();
        }
    }

    @Test
    void englishGermanAndSpanishAreSpoken() {
        assertThat(new Languages(new TextSettings("en", List.of())).choices())
                .containsExactly(
                        new Languages.Choice("en", "English"),
                        new Languages.Choice("de", "Deutsch"),
                        new Languages.Choice("es", "Español"));
    }

    @ParameterizedTest
    @MethodSource("languages")
    void aLanguageSaysWholeRoomsAndNothingElse(Path file) throws IOException {
        Set<String> said = new TreeSet<>(texts(file).keySet());
        for (Map.Entry<String, Map<String, String>> room : english().entrySet()) {
            Set<String> keys = room.getValue().keySet();
            if (READERS.contains(room.getKey()) || keys.stream().anyMatch(said::contains)) {
                assertThat(said).as(room.getKey()).containsAll(keys);
            }
            said.removeAll(keys);
        }
        assertThat(said).as("said in no room of the English texts").isEmpty();
    }

    @ParameterizedTest
    @MethodSource("languages")
    void eachTextHasThePlacesOfTheEnglishOne(Path file) throws IOException {
        Map<String, String> english = new TreeMap<>();
        english().values().forEach(english::putAll);
        texts(file).forEach((key, text) -> {
            if (!PATTERNS.contains(key)) {
                assertThat(places(text)).as(key).isEqualTo(places(english.getOrDefault(key, "")));
            }
        });
    }

    @ParameterizedTest
    @MethodSource("languages")
    @DisplayName("apostrophes of a MessageFormat stand twice, and it can be read")
    void eachMessageCanBeRead(Path file) throws IOException {
        Set<String> reasons = texts(RESOURCES.resolve(REASONS + ".properties")).keySet();
        texts(file).forEach((key, text) -> {
            if (!reasons.contains(key)) {
                assertThat(text.replace("''", "")).as(key).doesNotContain("'");
                assertThat(new MessageFormat(text, Locale.forLanguageTag(name(file))))
                        .as(key)
                        .isNotNull();
            }
        });
    }

    @ParameterizedTest
    @MethodSource("languages")
    void eachKeyStandsOnce(Path file) throws IOException {
        assertThat(Files.readAllLines(file).stream()
                        .filter(line -> !line.isBlank() && !line.startsWith("#"))
                        .map(line -> line.split(" *=", 2)[0]))
                .doesNotHaveDuplicates();
    }

    @Test
    @DisplayName("what readers see is made of texts of the rooms that each language has to say")
    void readersSeeNoTextOfAnotherRoom() throws IOException {
        Set<String> rooms = new TreeSet<>();
        try (Stream<Path> files = Files.walk(TEMPLATES)) {
            for (Path template : files.filter(file -> file.startsWith(TEMPLATES.resolve("driver"))
                            || file.startsWith(TEMPLATES.resolve("report"))
                            || file.endsWith("layout.html"))
                    .filter(Files::isRegularFile)
                    .toList()) {
                Matcher key = KEY_IN_TEMPLATE.matcher(Files.readString(template));
                while (key.find()) {
                    rooms.add(key.group(1) != null ? key.group(1) : key.group(2));
                }
            }
        }
        assertThat(READERS).containsAll(rooms);
        assertThat(rooms).contains("customer", "reports");
    }

    private static Set<String> places(String text) {
        Set<String> places = new TreeSet<>();
        Matcher place = PLACE.matcher(text);
        while (place.find()) {
            places.add(place.group(1));
        }
        return places;
    }
}
