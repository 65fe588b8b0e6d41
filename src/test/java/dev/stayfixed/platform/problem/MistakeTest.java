package dev.stayfixed.platform.problem;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MistakeTest {

    private static final Path SERVICE = Path.of("src", "main", "java", "dev", "stayfixed");

    /** A text that begins as a JSON pointer in URI form; "#" alone is one, too, where a mistake is made of it. */
    private static final Pattern POINTER = Pattern.compile("\"#/|Mistake\\(\\s*\"#|said\\(\\s*\"#");

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "''                    | #",
                "vin                   | #/vin",
                "faults[0].code        | #/faults/0/code",
                "parts[12]             | #/parts/12",
                "faultIds[]            | #/faultIds/",
                "parts[1].<list element> | #/parts/1/<list element>",
                "a[0][1].b             | #/a/0/1/b",
            })
    void aPathBecomesAPointerWhereAnAnswerIsWritten(String path, String pointer) {
        assertThat(Problem.Place.of(new Mistake(path, "x", "y")).pointer()).isEqualTo(pointer);
    }

    @Test
    void anyNameThatSomebodySendsIsOneStep() {
        for (String name : List.of("a.b", "a[0]", "it's", "back\\slash", "'", "]", "", "a\nb.c", "plain")) {
            assertThat(PropertyPath.pointer(PropertyPath.of(List.of("faults", 3, name, "code"))))
                    .isEqualTo("#/faults/3/" + name + "/code");
        }
        assertThat(PropertyPath.pointer(PropertyPath.of(List.of("a/b~c")))).isEqualTo("#/a~1b~0c");
    }

    @Test
    void theSentenceNamesThePlaceAsItsReaderDoes() {
        Refused refused = Refused.content(List.of(
                new Mistake("faults[0].code", "x", "a code"),
                Mistake.within("vin", "at position 3: found O, expected a digit"),
                Mistake.said("parts", "parts: found 101, expected at most 100")));
        assertThat(refused).hasMessage("faults[0].code: found x, expected a code (and 2 more)");
        Problem problem = Problem.of(refused, "/jobs");
        assertThat(problem.detail()).isEqualTo("#/faults/0/code: found x, expected a code (and 2 more)");
        assertThat(problem.errors())
                .containsExactly(
                        new Problem.Place(
                                "#/faults/0/code", "x", "a code", "#/faults/0/code: found x, expected a code"),
                        new Problem.Place("#/vin", "O", "a digit", "#/vin at position 3: found O, expected a digit"),
                        new Problem.Place("#/parts", "101", "at most 100", "parts: found 101, expected at most 100"));
    }

    @Test
    void aPlaceInTimeIsNamedInTheSentenceOnly() {
        Refused refused = Refused.at(ProblemType.TIME_IN_FUTURE, new Mistake("openedAt", "2050", "a time up to now"));
        Problem problem = Problem.of(refused, "/jobs");
        assertThat(problem.detail()).isEqualTo("#/openedAt: found 2050, expected a time up to now");
        assertThat(problem.errors()).isEmpty();
    }

    @Test
    void pointersAreWrittenWithTheAnswerOnly() throws IOException {
        try (Stream<Path> files = Files.walk(SERVICE)) {
            List<Path> withPointers = files.filter(f -> f.toString().endsWith(".java"))
                    .filter(f -> !f.startsWith(SERVICE.resolve(Path.of("platform", "problem"))))
                    .filter(MistakeTest::namesAPointer)
                    .toList();
            assertThat(withPointers).isEmpty();
        }
    }

    @Test
    void aPlantedPointerIsFound() {
        assertThat(POINTER.matcher("throw Refused.content(new Mistake(\"#/faultIds\", ids, \"ids\"));")
                        .find())
                .isTrue();
        assertThat(POINTER.matcher("throw Refused.content(new Mistake(\n    \"#\", ids, \"ids\"));")
                        .find())
                .isTrue();
        assertThat(POINTER.matcher("new Mistake(\"faultIds\", ids, \"#1\")").find())
                .isFalse();
    }

    private static boolean namesAPointer(Path file) {
        try {
            return POINTER.matcher(Files.readString(file)).find();
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }
}
