package dev.stayfixed.drive.running;

import static dev.stayfixed.English.words;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.stayfixed.drive.Finding;
import dev.stayfixed.drive.condition.SignalRange;
import dev.stayfixed.drive.signal.Rows;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.drive.signal.SignalRow;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tools.jackson.databind.json.JsonMapper;

/** A thermostat that stuck open and fuel trims that were off; scenarios of our own. */
class RunningCheckTest {

    private static final WarmUp WARM_UP = new WarmUp(
            88,
            Duration.ofMinutes(12),
            new SignalRange(Signal.ENGINE_SPEED, 700, 3_000),
            SignalRange.atMost(Signal.COOLANT, 40),
            Optional.of(new SignalRange(Signal.AMBIENT, 5, 35)));

    private static final Steady IDLE =
            new Steady(new SignalRange(Signal.LONG_TRIM, -10, 10), EngineState.IDLE, Duration.ofSeconds(30));

    private static Run run(RunningCheck check, List<SignalRow> rows) {
        RunMeter meter = check.meter();
        rows.forEach(meter);
        return meter.run();
    }

    private static String said(RunningCheck check, List<SignalRow> rows) {
        Finding found = check.judge(run(check, rows));
        return found.held() + " " + words(found.reason());
    }

    /** A row each second: the coolant climbs from its start to its end and stays there. */
    private static List<SignalRow> warming(double first, double last, int seconds, int lasts) {
        return IntStream.rangeClosed(0, lasts)
                .mapToObj(s -> "%d ENGINE_SPEED=1800 AMBIENT=15 COOLANT=%s"
                        .formatted(s, first + (last - first) * Math.min(1, (double) s / seconds)))
                .flatMap(row -> Rows.of(row).stream())
                .toList();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        20 | 90 | 597  | 900  | YES reached 88 °C after 9 min 40 s, 12 min allowed
        20 | 88 | 720  | 900  | YES reached 88 °C after 12 min, 12 min allowed
        20 | 88 | 721  | 900  | NO reached 88 °C only after 12 min 1 s, 12 min allowed
        20 | 74 | 600  | 720  | NO did not reach 88 °C: 74 °C at most in 12 min, 12 min allowed
        20 | 74 | 600  | 700  | UNKNOWN the record ends after 11 min 40 s with 74 °C at most, 12 min allowed, so the run does not tell
        41 | 90 | 300  | 900  | UNKNOWN coolant temperature was 41 °C at the start, wanted at most 40 °C, so the run does not tell
        """)
    void a_cold_start_comes_to_its_temperature_in_time_or_not(
            double first, double last, int seconds, int lasts, String expected) {
        assertThat(said(WARM_UP, warming(first, last, seconds, lasts))).isEqualTo(expected);
    }

    @Test
    void what_was_not_recorded_or_not_held_tells_nothing() {
        assertThat(said(WARM_UP, Rows.everySecond(0, 800, "ENGINE_SPEED=1800 COOLANT=20")))
                .isEqualTo("UNKNOWN ambient temperature was not recorded, so the run does not tell");
        assertThat(said(WARM_UP, List.of())).startsWith("UNKNOWN engine speed was not recorded");
        assertThat(said(WARM_UP, Rows.everySecond(0, 800, "ENGINE_SPEED=0 COOLANT=20 AMBIENT=15")))
                .isEqualTo(
                        "UNKNOWN the record ends after 0 s with 20 °C at most, 12 min allowed, so the run does not tell");
        assertThat(said(
                        WARM_UP,
                        Rows.join(
                                Rows.everySecond(0, 400, "ENGINE_SPEED=1800 COOLANT=20 AMBIENT=15"),
                                Rows.everySecond(401, 800, "ENGINE_SPEED=0"))))
                .isEqualTo("UNKNOWN engine speed 700 to 3000 rpm did not hold for 6 min 39 s of 13 min 20 s,"
                        + " so the run does not tell");
    }

    @Test
    @DisplayName("a target that was passed while nothing was recorded may have been reached in time")
    void gaps() {
        List<SignalRow> gap = Rows.join(
                Rows.everySecond(0, 700, "ENGINE_SPEED=1800 COOLANT=40 AMBIENT=15"),
                Rows.everySecond(730, 740, "ENGINE_SPEED=1800 COOLANT=90"));
        assertThat(said(WARM_UP, gap))
                .startsWith("UNKNOWN 88 °C was seen after 12 min 10 s, but 30 s before it were not recorded");
        List<SignalRow> long_gap = Rows.join(
                Rows.everySecond(0, 100, "ENGINE_SPEED=1800 COOLANT=40 AMBIENT=15"),
                Rows.everySecond(300, 310, "ENGINE_SPEED=1800 COOLANT=90"));
        assertThat(said(WARM_UP, long_gap)).startsWith("UNKNOWN 3 min 20 s of 5 min were not recorded");
    }

    @Test
    void a_log_that_began_late_counts_from_the_engine_start_that_the_car_tells() {
        List<SignalRow> late = Rows.join(
                Rows.of("0 ENGINE_SPEED=1800 COOLANT=30 AMBIENT=15 RUN_TIME=300"),
                Rows.everySecond(1, 500, "COOLANT=30"),
                Rows.of("501 COOLANT=88"));
        assertThat(said(WARM_UP, late)).startsWith("NO reached 88 °C only after 13 min 21 s");
    }

    @Test
    void two_starts_have_to_be_alike() {
        Run cold = run(WARM_UP, warming(10, 90, 700, 800));
        Run mild = run(WARM_UP, warming(20, 90, 700, 800));
        Run warm = run(WARM_UP, warming(21, 90, 700, 800));
        assertThat(WARM_UP.unlike(cold, mild)).isEmpty();
        assertThat(WARM_UP.unlike(cold, warm).map(why -> words(why)))
                .hasValue("coolant temperature at the start differs by 11 K, 10 K at most");
    }

    private static final String AT_IDLE = "ENGINE_SPEED=800 VEHICLE_SPEED=0 COOLANT=85 LONG_TRIM=";
    private static final String ON_THE_ROAD = "ENGINE_SPEED=2000 VEHICLE_SPEED=80 COOLANT=85 LONG_TRIM=";

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        100 | 2  | 0   | 0  | YES inside -10 to 10 % for 100 % of 100 s at warm idle, 2 % on average
        90  | 2  | 10  | 20 | YES inside -10 to 10 % for 90 % of 100 s at warm idle, 3.8 % on average
        89  | 2  | 11  | 20 | NO inside -10 to 10 % for only 89 % of 100 s at warm idle, 4 % on average
        29  | 2  | 0   | 0  | UNKNOWN only 29 s at warm idle recorded, 30 s wanted, so the run does not tell
        """)
    void a_signal_lies_in_its_band_for_nine_tenths_of_the_time_in_the_state(
            int inside, String value, int outside, String other, String expected) {
        List<SignalRow> rows = Rows.join(
                Rows.everySecond(0, 99, ON_THE_ROAD + "30"),
                Rows.everySecond(100, 99 + inside, AT_IDLE + value),
                outside == 0 ? List.of() : Rows.everySecond(100 + inside, 99 + inside + outside, AT_IDLE + other),
                Rows.everySecond(100 + inside + outside, 300 + inside + outside, ON_THE_ROAD + "30"));
        assertThat(said(IDLE, rows)).isEqualTo(expected);
    }

    @Test
    void a_signal_that_was_not_recorded_tells_nothing() {
        assertThat(said(IDLE, Rows.everySecond(0, 100, "ENGINE_SPEED=800 VEHICLE_SPEED=0 COOLANT=85")))
                .isEqualTo("UNKNOWN long-term fuel trim, bank 1 was not recorded, so the run does not tell");
    }

    @Test
    void a_curve_is_short_and_keeps_its_peaks() {
        List<SignalRow> rows = IntStream.rangeClosed(0, 20_000)
                .mapToObj(s -> s == 7_777 ? s + " LONG_TRIM=55" : s + " LONG_TRIM=" + (s % 7))
                .flatMap(row -> Stream.of(row + " ENGINE_SPEED=800 VEHICLE_SPEED=0 COOLANT=85"))
                .flatMap(row -> Rows.of(row).stream())
                .toList();
        List<Run.Point> curve = run(IDLE, rows).curve();
        assertThat(curve).hasSizeBetween(100, 200).isSortedAccordingTo((a, b) -> Long.compare(a.at(), b.at()));
        assertThat(curve).anyMatch(point -> point.value() == 55);
    }

    @Test
    void what_is_kept_of_a_run_is_the_same_again() {
        Run run = run(WARM_UP, warming(20, 90, 597, 900));
        String kept = JsonMapper.shared().writeValueAsString(run);
        assertThat(JsonMapper.shared().readValue(kept, Run.class)).isEqualTo(run);
        assertThat(kept.length()).isLessThan(12_000);
    }

    @Test
    void figures_that_make_no_check_are_refused() {
        assertThatThrownBy(() -> new WarmUp(
                        40, Duration.ofMinutes(1), WARM_UP.engineSpeed(), WARM_UP.coldest(), Optional.empty()))
                .hasMessageContaining("expected a colder start");
        assertThatThrownBy(() -> new Steady(IDLE.range(), EngineState.IDLE, Duration.ZERO))
                .hasMessageContaining("expected more than 0");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        WARM_UP          | coolant temperature of 71 °C within 15 min of a start with coolant at most 40 °C, engine speed 500 to 4000 rpm
        IDLE_TRIMS       | long-term fuel trim, bank 1 -10 to 10 % at warm idle for nine tenths of at least 30 s
        CRUISE_TRIMS     | long-term fuel trim, bank 1 -10 to 10 % at cruise for nine tenths of at least 60 s
        CHARGING_VOLTAGE | control module voltage 13.2 to 14.8 V with the engine running for nine tenths of at least 60 s
        """)
    void a_preset_wants(RunningPreset preset, String wanted) {
        assertThat(preset.typical().map(check -> words(check.said()))).hasValue(wanted);
    }
}
