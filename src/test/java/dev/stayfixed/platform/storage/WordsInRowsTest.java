package dev.stayfixed.platform.storage;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.drive.running.EngineState;
import dev.stayfixed.jobs.EngineCheck;
import dev.stayfixed.jobs.Job;
import dev.stayfixed.jobs.ShopSettings;
import dev.stayfixed.learning.Comeback;
import dev.stayfixed.obd.Ignition;
import dev.stayfixed.reports.ReportFacts;
import dev.stayfixed.telling.delivery.Delivery;
import dev.stayfixed.verification.EvidenceGrade;
import dev.stayfixed.verification.RecordedConditions;
import dev.stayfixed.verification.StateName;
import dev.stayfixed.verification.Trips;
import dev.stayfixed.verification.bench.BenchCheck;
import dev.stayfixed.worklist.Attention;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** The words that a column may hold are those that the program writes: a word more needs a migration, which this test asks for. */
class WordsInRowsTest {

    private static final Pattern WORDS =
            Pattern.compile("alter table (\\w+) add constraint \\w+ check \\((\\w+) in \\(([^)]*)\\)\\)");

    static Stream<Arguments> columns() {
        return Stream.of(
                Arguments.of("vehicle.ignition", names(Ignition.class)),
                Arguments.of("shop.units", names(ShopSettings.Units.class)),
                Arguments.of("job.state", names(Job.State.class)),
                Arguments.of("job_state_change.state", names(Job.State.class)),
                Arguments.of("job_part.state", names(Job.State.class)),
                Arguments.of(
                        "open_job.need",
                        // whether a job has stalled depends on the day, so it is never stored
                        names(Attention.class).stream()
                                .filter(need -> !need.equals(Attention.STALLED.name()))
                                .toList()),
                Arguments.of("fault.trips", names(Trips.class)),
                Arguments.of("fault.weakest_evidence", names(EvidenceGrade.class)),
                Arguments.of("fault.standing_state", names(StateName.class)),
                Arguments.of("fault.conditions_origin", names(RecordedConditions.Origin.class)),
                Arguments.of("measurement.bench_check", names(BenchCheck.class)),
                Arguments.of("engine_check.engine_state", names(EngineState.class)),
                Arguments.of("engine_check_run.side", names(EngineCheck.Side.class)),
                Arguments.of("issued_report.state", names(ReportFacts.State.class)),
                Arguments.of("delivery.state", names(Delivery.State.class)),
                Arguments.of("comeback.seen_by", names(Comeback.SeenBy.class)),
                Arguments.of("attempt_outcome.state", names(StateName.class)));
    }

    @ParameterizedTest
    @MethodSource("columns")
    void areThoseOfTheType(String column, List<String> words) throws IOException {
        assertThat(stored().get(column)).containsExactlyInAnyOrderElementsOf(words);
    }

    private static List<String> names(Class<? extends Enum<?>> type) {
        return Arrays.stream(type.getEnumConstants()).map(Enum::name).toList();
    }

    private static Map<String, List<String>> stored() throws IOException {
        Map<String, List<String>> words = new TreeMap<>();
        try (Stream<Path> scripts = Files.list(Path.of("db-migrations"))) {
            for (Path script : scripts.sorted().toList()) {
                WORDS.matcher(Files.readString(script))
                        .results()
                        .forEach(found -> words.put(
                                found.group(1) + "." + found.group(2),
                                Arrays.stream(found.group(3).split(","))
                                        .map(word -> word.strip().replace("'", ""))
                                        .toList()));
            }
        }
        return words;
    }
}
