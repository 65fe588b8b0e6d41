package dev.stayfixed.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import dev.stayfixed.platform.MovingClock;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;

/**
 * Argued scenarios, replayed against the running service: our own, and those of a folder beside the project where it exists. Every
 * scenario carries its argument; where one fails, the message holds what was expected, what was found, and why.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
abstract class ArguedScenarios {

    private static final Path BESIDE = Path.of("../shared/scenarios/cases.jsonl");

    /** Every kind of judgement that a scenario can try. */
    private static final Set<String> KINDS = Set.of(
            "last-scan",
            "one-cycle-twice",
            "missing-from-list",
            "other-unit",
            "misfire-counts",
            "in-use-counter",
            "group-reach",
            "not-confirmed",
            "clear-not-taken",
            "repair-date",
            "lamp-reported",
            "lamp-and-count",
            "plain-reader",
            "circuit-in-group",
            "no-cycle-bit",
            "words",
            "hex-codes",
            "next-words",
            "stays-right");

    @LocalServerPort
    int port;

    @Autowired
    MovingClock clock;

    private final Set<String> played = new TreeSet<>();
    private Client client = new Client(0);

    @BeforeAll
    void connect() {
        client = new Client(port);
    }

    static List<Scenario> ours() {
        return Scenario.ofResource("argued-scenarios.jsonl");
    }

    /** One that holds nothing stands for all where there is no such file. */
    static List<Scenario> beside() {
        return Files.isRegularFile(BESIDE)
                ? Scenario.ofFile(BESIDE)
                : List.of(new Scenario(tools.jackson.databind.json.JsonMapper.shared()
                        .readTree("{\"id\":\"none\",\"title\":\"no scenarios beside the project\"}")));
    }

    @Order(1)
    @ParameterizedTest(name = "{0}")
    @MethodSource("ours")
    void isAsArgued(Scenario scenario) {
        check(scenario);
    }

    @Order(1)
    @ParameterizedTest(name = "{0}")
    @MethodSource("beside")
    void isAsArguedBesideTheProject(Scenario scenario) {
        assumeTrue(Files.isRegularFile(BESIDE), "no scenarios at " + BESIDE);
        check(scenario);
    }

    private void check(Scenario scenario) {
        ScenarioFindings findings = new ScenarioPlay(client, clock::forward).play(scenario);
        List<String> wrong = findings.wrong(scenario.said().at("/expect"));
        played.add(scenario.id());
        assertThat(wrong)
                .as("%s%nwhy: %s%nsource: %s%n", scenario, scenario.why(), scenario.source())
                .isEmpty();
    }

    @Order(2)
    @Test
    void everyScenarioWasPlayedAndEveryKindIsAmongThem() {
        List<Scenario> all = Files.isRegularFile(BESIDE)
                ? java.util.stream.Stream.concat(ours().stream(), beside().stream())
                        .toList()
                : ours();
        assertThat(all.stream().map(Scenario::id)).doesNotHaveDuplicates();
        assertThat(played).isEqualTo(all.stream().map(Scenario::id).collect(Collectors.toCollection(TreeSet::new)));
        assertThat(ours()).hasSizeGreaterThanOrEqualTo(60);
        assertThat(ours().stream().map(Scenario::kind)).containsAll(KINDS);
        assertThat(all.stream().map(Scenario::kind))
                .allSatisfy(kind -> assertThat(KINDS).contains(kind));
        assertThat(ours()).allSatisfy(ours -> {
            assertThat(ours.why()).as(ours.id()).isNotBlank();
            assertThat(ours.source()).as(ours.id()).isNotBlank();
            assertThat(ours.said().at("/expect")).as(ours.id()).isNotEmpty();
        });
    }
}
