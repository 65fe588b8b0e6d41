package dev.stayfixed.platform;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.customer.Visit;
import dev.stayfixed.obd.Answer;
import dev.stayfixed.people.Role;
import dev.stayfixed.people.Scope;
import dev.stayfixed.telling.EventKind;
import dev.stayfixed.verification.Trips;
import dev.stayfixed.worklist.Attention;
import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.MessageFormat;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Properties;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** The bundles of texts: every key that is used is there, and none is there for nothing. */
class MessagesTest {

    private static final Path MAIN = Path.of("src", "main");
    private static final Path BUNDLES = MAIN.resolve(Path.of("resources", "messages"));
    private static final Path TEMPLATES = MAIN.resolve(Path.of("resources", "templates"));

    /** Texts of which a constant chooses one. */
    private static final Map<String, Collection<? extends Enum<?>>> CHOICES = Map.ofEntries(
            Map.entry("customer.ended", List.of(Visit.Reason.values())),
            Map.entry("worklist.attention", List.of(Attention.values())),
            Map.entry("worklist.advice", List.of(Attention.values())),
            Map.entry("worklist.todo", EventKind.forFirstPage()),
            Map.entry("jobs.proof.trips", List.of(Trips.values())),
            Map.entry("jobs.car.list", List.of(Answer.CodeList.Kind.values())),
            Map.entry("telling.mail.todo", EventKind.forTechnician()),
            Map.entry("telling.driver.headline", EventKind.forDriver()),
            Map.entry("telling.driver.meaning", EventKind.forDriver()),
            Map.entry("telling.driver.next", EventKind.forDriver()),
            Map.entry("people.role", List.of(Role.values())),
            Map.entry("people.scope", List.of(Scope.values())));

    private static final Pattern KEY_IN_TEMPLATE = Pattern.compile("#\\{([\\w.-]+)|#messages\\.msg\\('([\\w.-]+)'");
    private static final Pattern KEY_IN_JAVA = Pattern.compile("\"([a-z]+(?:\\.[\\w-]+)+)\"");

    private static Map<String, String> texts(Path bundle) {
        Properties properties = new Properties();
        try (Reader in = Files.newBufferedReader(bundle)) {
            properties.load(in);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
        return properties.stringPropertyNames().stream()
                .collect(Collectors.toMap(key -> key, properties::getProperty, (a, b) -> a, TreeMap::new));
    }

    /** By room. */
    private static Map<String, Map<String, String>> english() throws IOException {
        try (Stream<Path> files = Files.list(BUNDLES)) {
            return files.collect(Collectors.toMap(MessagesTest::name, MessagesTest::texts, (a, b) -> a, TreeMap::new));
        }
    }

    private static String name(Path bundle) {
        return Objects.requireNonNull(bundle.getFileName()).toString().replace(".properties", "");
    }

    private static List<Path> files(Path under, String end) throws IOException {
        try (Stream<Path> files = Files.walk(under)) {
            return files.filter(file -> file.toString().endsWith(end)).toList();
        }
    }

    @Test
    void eachKeyBeginsWithItsRoomAndEachBundleIsRead() throws IOException {
        Properties settings = new Properties();
        try (Reader in = Files.newBufferedReader(MAIN.resolve(Path.of("resources", "application.properties")))) {
            settings.load(in);
        }
        assertThat(settings.getProperty("stayfixed.bundles").split(","))
                .containsExactlyInAnyOrderElementsOf(english().keySet().stream()
                        .map(name -> "messages/" + name)
                        .toList());
        english()
                .forEach((room, texts) ->
                        assertThat(texts.keySet()).allMatch(key -> key.startsWith(room + "."), "begins with " + room));
    }

    @Test
    void eachKeyThatIsUsedIsThereAndNoneIsThereForNothing() throws IOException {
        Set<String> there = english().values().stream()
                .flatMap(texts -> texts.keySet().stream())
                .collect(Collectors.toCollection(TreeSet::new));
        Set<String> used = new TreeSet<>(keysOfChoices());
        there.stream().filter(EntryTexts::isOfARecord).forEach(used::add);
        used.addAll(keysIn(files(TEMPLATES, ".html"), KEY_IN_TEMPLATE, key -> true));
        Set<String> rooms = english().keySet();
        used.addAll(keysIn(
                files(MAIN.resolve("java"), ".java"),
                KEY_IN_JAVA,
                key -> rooms.contains(key.substring(0, key.indexOf('.'))) && !CHOICES.containsKey(key)));
        assertThat(there).isEqualTo(used);
    }

    private static Set<String> keysOfChoices() {
        return CHOICES.entrySet().stream()
                .flatMap(choice -> choice.getValue().stream().map(one -> choice.getKey() + "." + one.name()))
                .collect(Collectors.toSet());
    }

    private static Set<String> keysIn(List<Path> files, Pattern key, Predicate<String> which) throws IOException {
        Set<String> keys = new TreeSet<>();
        for (Path file : files) {
            Matcher found = key.matcher(Files.readString(file));
            while (found.find()) {
                keys.add(found.group(1) != null ? found.group(1) : found.group(2));
            }
        }
        keys.removeIf(which.negate());
        return keys;
    }

    @Test
    @DisplayName(
            "in a MessageFormat one apostrophe quotes what follows and vanishes, so it stands twice, in every text")
    void apostrophesStandTwice() throws IOException {
        english()
                .values()
                .forEach(texts -> texts.forEach((key, text) -> {
                    assertThat(text.replace("''", "")).as(key).doesNotContain("'");
                    assertThat(new MessageFormat(text, Locale.ENGLISH)).as(key).isNotNull();
                }));
    }

    @Test
    void whatIsPutInStandsAsItIs() {
        Texts texts = new Texts(TextsConfiguration.of("messages-of-a-test"));
        assertThat(texts.of("year", 2012, 1.5)).isEqualTo("2012, the driver's 1.5");
        assertThat(texts.of("lines", 1)).isEqualTo("1 line");
        assertThat(texts.of("lines", 12_000)).isEqualTo("12000 lines");
        assertThat(texts.of("lines", 0)).isEqualTo("0 lines");
    }

    @Test
    void templatesHoldNoTextOfTheirOwn() throws IOException {
        for (Path template : files(TEMPLATES, ".html")) {
            assertThat(TextsOfTemplate.in(Files.readString(template)))
                    .as(template.toString())
                    .isSubsetOf("Stayfixed", "UTC", "VIN");
        }
    }

    @Test
    @DisplayName(
            "between tags, in what is read of them and in what they compute a text is found; samples, names and keys are none")
    void aPlantedTextIsFound() {
        assertThat(TextsOfTemplate.in("<p>Back to the job</p>")).containsExactly("Back to the job");
        assertThat(TextsOfTemplate.in("<p aria-label=\"Drives\"></p>")).containsExactly("Drives");
        assertThat(TextsOfTemplate.in("<p th:text=\"${a} ? 'kept' : |of ${b}|\">kept</p>"))
                .containsExactly("kept", "?  : |of |");
        assertThat(TextsOfTemplate.in("<p th:text=\"${a == 'ON' ? #messages.msg('jobs.job.on') : b['off']}\">on</p>"))
                .isEmpty();
        assertThat(TextsOfTemplate.in("<p th:replace=\"~{parts :: text(${form}, 'source', 'Which one')}\"></p>"))
                .containsExactly("Which one");
        assertThat(TextsOfTemplate.in("<p th:replace=\"~{parts :: text(${form}, ${code}, |Code ${i + 1}|)}\"></p>"))
                .containsExactly("Code");
        assertThat(TextsOfTemplate.in("<p>[[#{jobs.job.on(${a})}]]</p>")).isEmpty();
    }
}
