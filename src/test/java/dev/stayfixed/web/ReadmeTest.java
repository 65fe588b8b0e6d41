package dev.stayfixed.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import dev.stayfixed.platform.OnH2;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.json.JsonMapper;

/** The README is true: its example gives its answer, and the files and commands that it names are there. */
@OnH2
class ReadmeTest extends OverHttp {

    private static final Pattern BLOCK = Pattern.compile("```(\\w+)\n(.*?)```", Pattern.DOTALL);
    private static final Pattern LINK = Pattern.compile("\\]\\(([^)#:]+)\\)");

    @Test
    void theExampleGivesTheAnswerThatIsPrinted() throws IOException, InterruptedException {
        boolean canRun = Stream.of("bash", "curl", "grep").allMatch(ReadmeTest::isInstalled);
        if (!"true".equals(System.getenv("CI"))) {
            assumeTrue(canRun, "skipped: the README's example needs bash, curl and grep, and one of them is missing");
        }
        assertThat(canRun).as("bash, curl and grep").isTrue();
        String script =
                blocks("sh").filter(block -> block.contains("curl")).findFirst().orElseThrow();
        Process shell = new ProcessBuilder("bash", "-c", script.replace("localhost:8080", "127.0.0.1:" + port))
                .redirectErrorStream(true)
                .start();
        Answer answer = new Answer(
                200,
                client.get("/api/v1/jobs").headers(),
                new String(shell.getInputStream().readAllBytes(), StandardCharsets.UTF_8));
        assertThat(shell.waitFor()).as(answer.body()).isZero();
        Answer printed =
                new Answer(200, answer.headers(), blocks("json").findFirst().orElseThrow());
        for (String pointer : List.of(
                "/ruleSet",
                "/faults/0/code",
                "/faults/0/standing/state",
                "/faults/0/standing/words",
                "/faults/0/next",
                "/faults/0/attempts/0/steps/0/outcome",
                "/faults/0/attempts/0/steps/0/reason",
                "/faults/0/attempts/0/steps/1/outcome",
                "/faults/0/attempts/0/steps/1/reason",
                "/faults/0/attempts/0/steps/1/standingAfter")) {
            assertThat(answer.at(pointer)).as(pointer).isNotEmpty().isEqualTo(printed.at(pointer));
        }
    }

    @Test
    void everyFileItLinksToIsThere() throws IOException {
        assertThat(LINK.matcher(readme()).results().map(link -> Path.of(link.group(1))))
                .isNotEmpty()
                .allMatch(Files::exists);
    }

    @Test
    void theJarItNamesIsTheOneThatIsBuilt() throws IOException {
        Matcher name = Pattern.compile("<finalName>(.+)</finalName>").matcher(Files.readString(Path.of("pom.xml")));
        assertThat(name.find()).isTrue();
        assertThat(Pattern.compile("[\\w/.-]+\\.jar")
                        .matcher(readme())
                        .results()
                        .map(MatchResult::group))
                .isNotEmpty()
                .containsOnly("target/" + name.group(1) + ".jar", "target/fast/" + name.group(1) + ".jar");
    }

    @Test
    void everyRequestItNamesIsServed() throws IOException {
        String described = client.get("/api/openapi").body();
        List<String> paths = Pattern.compile("`[A-Z ]+(?:and `)?[A-Z]* ?(/api/v1/[^`]+)`")
                .matcher(readme())
                .results()
                .map(request -> request.group(1))
                .toList();
        List<String> served = JsonMapper.shared().readTree(described).at("/paths").propertyNames().stream()
                .map(path -> path.replaceAll("\\{[^}]+}", "{id}"))
                .toList();
        assertThat(paths)
                .hasSizeGreaterThan(5)
                .allSatisfy(path -> assertThat(served).contains(path));
    }

    private static Stream<String> blocks(String language) throws IOException {
        return BLOCK.matcher(readme())
                .results()
                .filter(block -> block.group(1).equals(language))
                .map(ReadmeTest::content);
    }

    private static String content(MatchResult block) {
        return block.group(2);
    }

    private static String readme() throws IOException {
        return Files.readString(Path.of("README.md"), StandardCharsets.UTF_8);
    }

    private static boolean isInstalled(String program) {
        return Stream.of(System.getenv("PATH").split(java.io.File.pathSeparator, -1))
                .anyMatch(folder -> Files.isExecutable(Path.of(folder, program)));
    }
}
