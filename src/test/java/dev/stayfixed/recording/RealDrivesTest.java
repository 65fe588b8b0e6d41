package dev.stayfixed.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import dev.stayfixed.drive.signal.Extent;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.drive.signal.SignalFacts;
import dev.stayfixed.drive.signal.SignalMeter;
import dev.stayfixed.drive.signal.SignalRules;
import dev.stayfixed.drive.signal.WarmUpRule;
import java.io.IOException;
import java.io.InputStream;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * Recorded drives of real cars, read without human help, against values that another program computed from the same definitions.
 * Sources: M. Weber, Automotive OBD-II Dataset, Karlsruhe Institute of Technology, DOI 10.35097/1130 (CC BY 4.0); nds_data of the
 * DrivePlotR package (MIT). The data are not part of this project: the folder is named by the system property stayfixed.data.
 */
class RealDrivesTest {

    private static final Path DATA = Path.of(System.getProperty("stayfixed.data", "../shared/data"));

    @TestFactory
    Stream<DynamicTest> oneCarInTheCity() throws IOException {
        return drives("kit", "", 7);
    }

    @TestFactory
    Stream<DynamicTest> drivesInMilesWithGaps() throws IOException {
        return drives("nds", "drives", 11);
    }

    @Test
    void a_column_that_a_person_maps_is_read_as_told() throws IOException {
        assumeData("nds");
        for (Map<String, String> expected : expected("nds")) {
            double[] sum = new double[1];
            LogMapping steps = new LogMapping(
                    "time_utc",
                    TimeFormat.ISO_WITH_OFFSET,
                    DecimalMark.POINT,
                    List.of(new ColumnMapping("distance_miles", Signal.TRIP_DISTANCE, SourceUnit.KILOMETRES)));
            try (InputStream in =
                    Files.newInputStream(DATA.resolve("nds/drives").resolve(value(expected, "file")))) {
                new LogReader(LogLimits.USUAL)
                        .read(
                                in,
                                steps,
                                row -> sum[0] += row.value(Signal.TRIP_DISTANCE).orElse(0));
            }
            assertThat(printed(sum[0])).isEqualTo(value(expected, "own_distance_miles_sum"));
        }
    }

    private static Stream<DynamicTest> drives(String set, String folder, int count) throws IOException {
        assumeData(set);
        List<Map<String, String>> expected = expected(set);
        assertThat(expected).hasSize(count);
        return expected.stream()
                .map(row -> DynamicTest.dynamicTest(
                        value(row, "file"),
                        () -> check(DATA.resolve(set).resolve(folder).resolve(value(row, "file")), row)));
    }

    private static void assumeData(String set) {
        assumeTrue(
                Files.isDirectory(DATA.resolve(set)),
                "no recorded drives at " + DATA.resolve(set) + "; set the system property stayfixed.data");
    }

    private static void check(Path file, Map<String, String> expected) throws IOException {
        OptionalDouble released = Optional.ofNullable(expected.get("pedal_released_at_or_below"))
                .map(v -> OptionalDouble.of(Double.parseDouble(v)))
                .orElseGet(OptionalDouble::empty);
        SignalMeter meter = SignalFacts.meter(SignalRules.EXACT, released);
        AtomicLong rowsWithRpm = new AtomicLong();
        LogReading reading;
        try (InputStream in = Files.newInputStream(file)) {
            reading = new LogReader(LogLimits.USUAL).readAsProposed(in, row -> {
                row.value(Signal.ENGINE_SPEED).ifPresent(v -> rowsWithRpm.incrementAndGet());
                meter.accept(row);
            });
        }
        assertThat(reading.report().implausible()).isEmpty();
        Map<String, String> found = columns(meter.facts());
        found.put("file", file.getFileName().toString());
        found.put("pedal_released_at_or_below", released.isEmpty() ? "" : printed(released.getAsDouble()));
        found.put("first_time", reading.report().firstTime());
        found.put("last_time", reading.report().lastTime());
        found.put("rows_with_rpm", rowsWithRpm.toString());
        Map<String, String> same = new TreeMap<>(found);
        same.keySet().retainAll(expected.keySet());
        assertThat(same).isEqualTo(new TreeMap<>(withoutUncheckable(expected)));
    }

    /** The sum of the file's own distance column is checked by itself. */
    private static Map<String, String> withoutUncheckable(Map<String, String> expected) {
        Map<String, String> copy = new LinkedHashMap<>(expected);
        copy.remove("own_distance_miles_sum");
        return copy;
    }

    private static Map<String, String> columns(SignalFacts facts) {
        Map<String, String> c = new LinkedHashMap<>();
        c.put("rows", String.valueOf(facts.rows().rows()));
        c.put("wall_s", seconds(facts.rows().wall()));
        c.put("gaps_over_5s", String.valueOf(facts.rows().gaps()));
        c.put("gap_s", seconds(facts.rows().gapTime()));
        c.put("longest_gap_s", seconds(facts.rows().longestGap()));
        c.put("longest_counted_step_s", seconds(facts.rows().longestStep()));
        c.put("nonincreasing", String.valueOf(facts.rows().nonIncreasing()));
        c.put("counted_s", seconds(facts.rows().counted()));
        c.put("engine_run_s", seconds(facts.times().running()));
        c.put("distance_km", printed(facts.distance().orElseThrow()));
        c.put("distance_miles", printed(facts.distance().orElseThrow() / 1.609344));
        c.put("distance_trapezoid_km", printed(facts.trapezoidDistance().orElseThrow()));
        c.put("fast_s", seconds(facts.times().fast()));
        c.put("longest_idle_s", seconds(facts.times().longestIdle()));
        c.put("longest_idle_pedal_released_s", moment(facts.times().longestIdleReleased()));
        c.put("longest_standstill_s", seconds(facts.times().longestStandstill()));
        c.put("run600", String.valueOf(facts.times().runsLongEnough(SignalRules.EXACT)));
        c.put("fast300", String.valueOf(facts.times().isFastLongEnough(SignalRules.EXACT)));
        c.put("idle30", String.valueOf(facts.times().idlesLongEnough(SignalRules.EXACT)));
        c.put("all3", String.valueOf(facts.times().isMinimumCycle(SignalRules.EXACT)));
        c.put("all3_at_s", moment(facts.minimumCycleAt()));
        c.putAll(signals(facts));
        return c;
    }

    private static Map<String, String> signals(SignalFacts facts) {
        Map<String, String> c = new LinkedHashMap<>();
        Optional<Extent> coolant = facts.extent(Signal.COOLANT);
        Optional<Extent> ambient = facts.extent(Signal.AMBIENT);
        Optional<Extent> trip = facts.extent(Signal.TRIP_DISTANCE);
        c.put("max_speed_kmh", printed(facts.extent(Signal.VEHICLE_SPEED).map(Extent::highest)));
        c.put("coolant_start", printed(coolant.map(Extent::first)));
        c.put("coolant_max", printed(coolant.map(Extent::highest)));
        c.put("coolant_end", printed(coolant.map(Extent::last)));
        c.put("ambient_start", printed(ambient.map(Extent::first)));
        c.put("ambient_min", printed(ambient.map(Extent::lowest)));
        c.put("intake_start", printed(facts.extent(Signal.INTAKE_AIR).map(Extent::first)));
        c.put(
                "coolant_minus_ambient_at_start",
                printed(coolant.flatMap(start -> ambient.map(a -> start.first() - a.first()))));
        c.put(
                "warm_up_cycle",
                facts.warmUpCycle(WarmUpRule.SPARK_EXACT).map(String::valueOf).orElse(""));
        c.put(
                "warm_up_rounded_22_70",
                facts.warmUpCycle(WarmUpRule.SPARK_ROUNDED).map(String::valueOf).orElse(""));
        Long warm = facts.warmUps().get(WarmUpRule.SPARK_EXACT);
        c.put("warm_up_at_s", warm == null ? "" : seconds(warm));
        c.put("own_cumulative_first", digits(trip.map(e -> e.first() / 1.609344), 6));
        c.put("own_cumulative_last", digits(trip.map(e -> e.last() / 1.609344), 6));
        return c;
    }

    private static String seconds(long millis) {
        return printed(millis / 1000.0);
    }

    private static String moment(OptionalLong millis) {
        return millis.isEmpty() ? "" : seconds(millis.getAsLong());
    }

    private static String printed(double value) {
        return digits(Optional.of(value), 4);
    }

    private static String printed(Optional<Double> value) {
        return digits(value, 4);
    }

    private static String digits(Optional<Double> value, int places) {
        return value.map(v -> new BigDecimal(v).setScale(places, RoundingMode.HALF_EVEN))
                .map(v -> v.signum() == 0 ? "0" : v.stripTrailingZeros().toPlainString())
                .orElse("");
    }

    private static String value(Map<String, @Nullable String> row, String column) {
        String value = row.get(column);
        assertThat(value).as(column).isNotNull();
        return value == null ? "" : value;
    }

    private static List<Map<String, String>> expected(String set) throws IOException {
        try (CsvReader<NamedCsvRecord> rows =
                CsvReader.builder().ofNamedCsvRecord(DATA.resolve(set + "/expected.csv"))) {
            return rows.stream()
                    .map(NamedCsvRecord::getFieldsAsMap)
                    .map(RealDrivesTest::plain)
                    .toList();
        }
    }

    /** Some numbers are printed in scientific notation. */
    private static Map<String, String> plain(Map<String, String> row) {
        Map<String, String> copy = new LinkedHashMap<>();
        row.forEach((column, text) ->
                copy.put(column, text.matches("-?[0-9.]+e-?\\d+") ? new BigDecimal(text).toPlainString() : text));
        return copy;
    }
}
