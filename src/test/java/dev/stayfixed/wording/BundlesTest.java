package dev.stayfixed.wording;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaField;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import dev.stayfixed.reason.Kind;
import dev.stayfixed.reason.Shape;
import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
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

/** Every kind has its text, with its parts, and no text is there that nobody uses. */
class BundlesTest {

    private static final JavaClasses SERVICE = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("dev.stayfixed");

    private static final Path BUNDLE = Path.of("src", "main", "resources", "reasons.properties");
    private static final Set<String> PATTERNS = Set.of("Day", "Minute");
    private static final String ONE = ".one";
    private static final Pattern PLACE = Pattern.compile("\\{(\\w+)(?:\\.number)?}");
    private static final Map<String, Kind> KINDS = new TreeMap<>();

    static {
        kindsOfReasons()
                .forEach(type -> Arrays.stream(type.getEnumConstants())
                        .map(Kind.class::cast)
                        .forEach(kind -> assertThat(KINDS.put(kind.key(), kind))
                                .as(kind.key())
                                .isNull()));
    }

    private static Stream<Class<?>> kindsOfReasons() {
        return SERVICE.stream()
                .filter(c -> c.isAssignableTo(Kind.class) && c.isEnum())
                .<Class<?>>map(JavaClass::reflect)
                .filter(Class::isEnum);
    }

    private static Map<String, String> texts() throws IOException {
        Properties properties = new Properties();
        try (Reader in = Files.newBufferedReader(BUNDLE)) {
            properties.load(in);
        }
        return properties.stringPropertyNames().stream()
                .collect(Collectors.toMap(key -> key, properties::getProperty, (a, b) -> a, TreeMap::new));
    }

    @Test
    void many_kinds_are_there() {
        assertThat(KINDS).hasSizeGreaterThan(200);
    }

    @Test
    void each_kind_has_its_text_and_each_text_its_kind() throws IOException {
        Set<String> keys = new TreeSet<>(texts().keySet());
        keys.removeAll(PATTERNS);
        keys.removeIf(key -> key.endsWith(ONE) && KINDS.containsKey(key.substring(0, key.length() - ONE.length())));
        assertThat(keys).isEqualTo(KINDS.keySet());
    }

    @Test
    void each_text_names_the_parts_of_its_kind() throws IOException {
        texts().forEach((key, text) -> {
            if (PATTERNS.contains(key)) {
                return;
            }
            Set<String> parts = Set.copyOf(kind(key).parts());
            assertThat(parts).as(key + " = " + text).containsAll(places(text));
            if (!key.endsWith(ONE)) {
                assertThat(places(text)).as(key + " = " + text).isEqualTo(parts);
            }
            assertThat(PLACE.matcher(text).replaceAll("")).as(key).doesNotContain("{", "}");
        });
    }

    @Test
    @DisplayName("no key stands twice in a file: the first of two texts would never be read")
    void each_key_stands_once() throws IOException {
        assertThat(Files.readAllLines(BUNDLE).stream()
                        .filter(line -> !line.isBlank() && !line.startsWith("#"))
                        .map(line -> line.split(" *=", 2)[0]))
                .doesNotHaveDuplicates();
    }

    @Test
    @DisplayName("a kind that only makes reasons is made somewhere: its text is used")
    void each_reason_is_given_somewhere() {
        List<String> unused = SERVICE.stream()
                .filter(c -> c.isAssignableTo(Kind.class)
                        && c.isEnum()
                        && c.getSimpleName().endsWith("Reason"))
                .flatMap(c -> c.getFields().stream())
                .filter(field -> field.getRawType().equals(field.getOwner()))
                .filter(BundlesTest::isNowhereElse)
                .map(JavaField::getFullName)
                .toList();
        assertThat(unused).isEmpty();
    }

    private static boolean isNowhereElse(JavaField constant) {
        return constant.getAccessesToSelf().stream()
                .allMatch(access -> access.getOriginOwner().equals(constant.getOwner()));
    }

    @Test
    @DisplayName("answers of the interface tell reasons apart by their names alone")
    void no_two_reasons_have_one_name() {
        assertThat(KINDS.values().stream()
                        .filter(kind -> !kind.parts().isEmpty() && !(kind instanceof Shape))
                        .map(Kind::name))
                .doesNotHaveDuplicates();
    }

    private static Kind kind(String key) {
        return Objects.requireNonNull(
                KINDS.get(key.endsWith(ONE) ? key.substring(0, key.length() - ONE.length()) : key), key);
    }

    private static Set<String> places(String text) {
        Matcher place = PLACE.matcher(text);
        Set<String> names = new TreeSet<>();
        while (place.find()) {
            names.add(place.group(1));
        }
        return names;
    }
}
