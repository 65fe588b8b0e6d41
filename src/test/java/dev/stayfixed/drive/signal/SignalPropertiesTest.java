package dev.stayfixed.drive.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What has to be true of every drive; the seed of a failure stands in the test's name. */
class SignalPropertiesTest {

    static LongStream seeds() {
        return LongStream.range(0, 300);
    }

    static List<SignalRow> drive(long seed) {
        Random random = new Random(seed);
        List<SignalRow> rows = new ArrayList<>();
        long time = 0;
        for (int i = 0; i < 200; i++) {
            Map<Signal, Double> values = new EnumMap<>(Signal.class);
            put(random, values, Signal.ENGINE_SPEED, random.nextInt(10) == 0 ? 0 : 700 + random.nextInt(2_000));
            put(random, values, Signal.VEHICLE_SPEED, Math.max(0, random.nextInt(130) - 40));
            put(random, values, Signal.COOLANT, 15 + random.nextInt(80));
            put(random, values, Signal.LOAD, random.nextInt(101));
            rows.add(new SignalRow(time, values));
            time += random.nextInt(40) == 0 ? 5_001 + random.nextInt(60_000) : random.nextInt(5_001);
        }
        return rows;
    }

    private static void put(Random random, Map<Signal, Double> values, Signal signal, double value) {
        if (random.nextInt(3) > 0) {
            values.put(signal, value);
        }
    }

    static SignalFacts facts(List<SignalRow> rows) {
        SignalMeter meter = SignalFacts.meter(SignalRules.EXACT, OptionalDouble.of(15));
        rows.forEach(meter);
        return meter.facts();
    }

    /** Rows without values put between two rows (not into a gap, which they would bridge). */
    static List<SignalRow> finer(List<SignalRow> rows, Random random) {
        List<SignalRow> finer = new ArrayList<>();
        for (int i = 0; i < rows.size(); i++) {
            finer.add(rows.get(i));
            long from = rows.get(i).millis();
            long length = i + 1 < rows.size() ? rows.get(i + 1).millis() - from : 0;
            if (length > 1 && length <= Timeline.LONGEST_STEP) {
                finer.add(new SignalRow(from + 1 + random.nextInt((int) length - 1), Map.of()));
            }
        }
        return finer;
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void splitting_rows_changes_nothing(long seed) {
        List<SignalRow> rows = drive(seed);
        SignalFacts coarse = facts(rows);
        SignalFacts fine = facts(finer(rows, new Random(seed)));
        assertThat(fine.times()).isEqualTo(coarse.times());
        assertThat(fine.extents()).isEqualTo(coarse.extents());
        assertThat(fine.warmUps()).isEqualTo(coarse.warmUps());
        assertThat(fine.rows().counted()).isEqualTo(coarse.rows().counted());
        assertThat(fine.distance().orElseThrow()).isCloseTo(coarse.distance().orElseThrow(), within(1e-9));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void twice_the_speed_is_twice_the_distance(long seed) {
        List<SignalRow> rows = drive(seed);
        List<SignalRow> faster = rows.stream()
                .map(row -> {
                    Map<Signal, Double> values = new EnumMap<>(Signal.class);
                    values.putAll(row.values());
                    values.computeIfPresent(Signal.VEHICLE_SPEED, (s, v) -> v * 2);
                    return new SignalRow(row.millis(), values);
                })
                .toList();
        assertThat(facts(faster).distance().orElseThrow())
                .isCloseTo(2 * facts(rows).distance().orElseThrow(), within(1e-9));
        assertThat(facts(faster).trapezoidDistance().orElseThrow())
                .isCloseTo(2 * facts(rows).trapezoidDistance().orElseThrow(), within(1e-9));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void where_the_clock_begins_does_not_matter_and_a_summary_can_always_be_made(long seed) {
        List<SignalRow> rows = drive(seed);
        List<SignalRow> later = rows.stream()
                .map(row -> new SignalRow(row.millis() + 1_700_000_000_000L, row.values()))
                .toList();
        assertThat(facts(later)).isEqualTo(facts(rows));
        assertThat(facts(later).summary()).isEqualTo(facts(rows).summary());
        assertThat(facts(rows).times().longestIdle())
                .isLessThanOrEqualTo(facts(rows).times().running());
    }
}
