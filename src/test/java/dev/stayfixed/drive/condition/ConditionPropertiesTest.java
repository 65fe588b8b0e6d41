package dev.stayfixed.drive.condition;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.drive.signal.SignalRow;
import dev.stayfixed.drive.signal.Timeline;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What has to be true of every drive; the seed of a failure stands in the test's name. */
class ConditionPropertiesTest {

    private static final ConditionSet SET = ConditionSet.anyOrder(
            "all kinds",
            new AtStart(SignalRange.atMost(Signal.COOLANT, 50)),
            Reach.value(Signal.COOLANT, 70).within(Duration.ofMinutes(5)),
            Hold.unbroken(new SignalRange(Signal.VEHICLE_SPEED, 30, 70), Duration.ofSeconds(12)),
            Hold.cumulative(
                    new SignalRange(Signal.VEHICLE_SPEED, 30, 70),
                    Duration.ofSeconds(100),
                    SignalRange.atLeast(Signal.COOLANT, 40)));

    static LongStream seeds() {
        return LongStream.range(0, 200);
    }

    private static List<SignalRow> drive(Random random) {
        List<SignalRow> rows = new ArrayList<>();
        long time = 0;
        for (int i = 0; i < 150; i++) {
            rows.add(new SignalRow(
                    time,
                    random.nextInt(3) == 0
                            ? Map.of(Signal.COOLANT, 20.0 + random.nextInt(70))
                            : Map.of(Signal.VEHICLE_SPEED, (double) random.nextInt(100))));
            time += random.nextInt(30) == 0 ? 6_000 : 2 + random.nextInt(4_999);
        }
        return rows;
    }

    private static List<SignalRow> finer(List<SignalRow> rows) {
        List<SignalRow> finer = new ArrayList<>();
        for (int i = 0; i < rows.size(); i++) {
            finer.add(rows.get(i));
            long from = rows.get(i).millis();
            long length = i + 1 < rows.size() ? rows.get(i + 1).millis() - from : 0;
            if (length > 1 && length <= Timeline.LONGEST_STEP) {
                finer.add(new SignalRow(from + length / 2, Map.of()));
            }
        }
        return finer;
    }

    private static ConditionReport report(List<SignalRow> rows) {
        Evaluation evaluation = SET.evaluation(OptionalDouble.empty());
        rows.forEach(evaluation);
        return evaluation.report();
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void splitting_rows_changes_nothing(long seed) {
        List<SignalRow> rows = drive(new Random(seed));
        assertThat(report(finer(rows))).isEqualTo(report(rows));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void intervals_lie_apart_in_order_and_within_the_drive(long seed) {
        List<SignalRow> rows = drive(new Random(seed));
        long end = rows.get(rows.size() - 1).millis();
        for (ConditionResult result : report(rows).results()) {
            long before = -1;
            for (Interval interval : result.held()) {
                assertThat(interval.from()).isGreaterThan(before);
                assertThat(interval.to()).isGreaterThan(interval.from()).isLessThanOrEqualTo(end);
                before = interval.to();
            }
        }
    }
}
