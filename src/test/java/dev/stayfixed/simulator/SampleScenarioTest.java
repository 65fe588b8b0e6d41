package dev.stayfixed.simulator;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.obd.Scan;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class SampleScenarioTest {

    private static final Path FOLDER = Path.of("sample-logs");
    private static final int LARGEST_LOG = 300_000;

    private static final Map<String, String> WRITTEN = SampleScenario.files();

    @Test
    void theCommittedFilesAreWhatTheGeneratorWrites() throws IOException {
        Set<String> expected = new TreeSet<>(WRITTEN.keySet());
        expected.add("README.md");
        assertThat(committed()).isEqualTo(expected);
        for (Map.Entry<String, String> file : WRITTEN.entrySet()) {
            assertThat(FOLDER.resolve(file.getKey()))
                    .as("run SampleScenario.main after a change of the stories")
                    .hasContent(file.getValue());
        }
    }

    private static Set<String> committed() throws IOException {
        try (Stream<Path> paths = Files.walk(FOLDER)) {
            return paths.filter(Files::isRegularFile)
                    .map(path -> FOLDER.relativize(path).toString().replace('\\', '/'))
                    .collect(Collectors.toCollection(TreeSet::new));
        }
    }

    @Test
    void everyLineOfEveryScanIsUnderstood() {
        Map<String, String> scans = WRITTEN.entrySet().stream()
                .filter(file -> file.getKey().endsWith(".txt"))
                .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue));
        assertThat(scans).hasSizeGreaterThan(30);
        scans.forEach((name, text) -> assertThat(Scan.read(text).lines())
                .as(name)
                .noneMatch(line -> line.outcome() == Scan.Line.Outcome.NOT_UNDERSTOOD));
    }

    @Test
    void everyFileThatAStepNamesIsThere() {
        String steps = WRITTEN.getOrDefault("scenario.json", "");
        Set<String> named = Stream.of(steps.split("\"file:", -1))
                .skip(1)
                .map(part -> part.substring(0, part.indexOf('"')))
                .collect(Collectors.toSet());
        assertThat(WRITTEN.keySet()).containsAll(named);
        assertThat(named).hasSize((int)
                WRITTEN.keySet().stream().filter(name -> name.endsWith(".txt")).count());
    }

    @Test
    void theReadmeExplainsEachCar() throws IOException {
        String readme = Files.readString(FOLDER.resolve("README.md"));
        WRITTEN.keySet().stream()
                .filter(name -> name.contains("/"))
                .map(name -> name.substring(0, name.indexOf('/')))
                .distinct()
                .forEach(folder -> assertThat(readme).contains("`" + folder + "/`"));
    }

    @Test
    void theLogsAreSmall() {
        assertThat(WRITTEN.entrySet().stream().filter(file -> file.getKey().endsWith(".csv")))
                .hasSize(5)
                .allMatch(file -> file.getValue().length() < LARGEST_LOG);
    }
}
