package dev.stayfixed.drive.signal;

import static dev.stayfixed.English.words;
import static dev.stayfixed.Found.found;
import static dev.stayfixed.Found.no;
import static dev.stayfixed.Found.yes;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.stayfixed.drive.DriveFacts;
import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.drive.DriveRules;
import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.drive.Finding;
import dev.stayfixed.drive.OperatingPoint;
import dev.stayfixed.obd.Ignition;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Small drives whose facts were worked out by hand; the definitions are those of 13 CCR 1968.2 (c) and (d). */
class SignalMeterTest {

    private static SignalFacts facts(List<SignalRow> rows) {
        return facts(rows, OptionalDouble.empty());
    }

    private static SignalFacts facts(List<SignalRow> rows, OptionalDouble released) {
        SignalMeter meter = SignalFacts.meter(SignalRules.EXACT, released);
        rows.forEach(meter);
        return meter.facts();
    }

    @Test
    void a_value_holds_until_the_next_row() {
        SignalFacts facts = facts(Rows.of(
                "0 ENGINE_SPEED=800 VEHICLE_SPEED=0",
                "2 VEHICLE_SPEED=36",
                "4 ENGINE_SPEED=2000",
                "5 VEHICLE_SPEED=72"));
        assertThat(facts.times().running()).isEqualTo(5_000);
        assertThat(facts.distance().orElseThrow()).isCloseTo(0.03, within(1e-12));
        // means: 18 for 2 s, 36 for 2 s, 54 for 1 s
        assertThat(facts.trapezoidDistance().orElseThrow()).isCloseTo((36 + 72 + 54) / 3600.0, within(1e-12));
        assertThat(facts.times().longestIdle()).isEqualTo(2_000);
        assertThat(facts.engineStart()).isEqualTo(OptionalLong.of(0));
        assertThat(facts.extent(Signal.VEHICLE_SPEED)).contains(new Extent(0, 72, 0, 72, 3));
    }

    @Test
    void exactly_five_seconds_count_and_a_millisecond_more_counts_for_nothing() {
        SignalFacts facts = facts(Rows.of(
                "0 ENGINE_SPEED=800 VEHICLE_SPEED=0", "5", "10.001", "12 VEHICLE_SPEED=1", "13 VEHICLE_SPEED=50"));
        assertThat(facts.rows()).isEqualTo(new RowTimes(5, 13_000, 7_999, 1, 5_001, 5_001, 5_000, 0, 0));
        assertThat(facts.times().running()).isEqualTo(7_999);
        assertThat(facts.times().longestIdle()).isEqualTo(5_000);
        assertThat(facts.times().longestStandstill()).isEqualTo(5_000);
    }

    /** Every interval counts for nothing; but the engine ran at each row, and the coolant started and peaked where it did. */
    @Test
    void rows_far_apart_tell_the_least_and_the_most_but_not_zero() {
        SignalFacts facts = facts(Rows.of(
                "0 ENGINE_SPEED=800 VEHICLE_SPEED=0 COOLANT=20",
                "10 ENGINE_SPEED=2000 VEHICLE_SPEED=80",
                "20 COOLANT=60",
                "30 COOLANT=90"));
        assertThat(facts.times().running()).isZero();
        assertThat(facts.unrecorded()).isEqualTo(30_000);
        DriveSummary summary = facts.summary();
        assertThat(summary.value(DriveQuantity.RUN_TIME)).hasValue(0);
        assertThat(summary.atMost(DriveQuantity.RUN_TIME)).hasValue(30);
        assertThat(summary.atMost(DriveQuantity.FAST_TIME)).hasValue(30);
        assertThat(summary.value(DriveQuantity.DISTANCE)).isEmpty();
        assertThat(summary.value(DriveQuantity.START_COOLANT)).hasValue(20);
        assertThat(summary.value(DriveQuantity.PEAK_COOLANT)).hasValue(90);
        DriveFacts drive = DriveFacts.of(summary, Ignition.SPARK, DriveRules.EXACT);
        assertThat(found(drive.drivingCycle()))
                .isEqualTo(yes("the engine ran for at least 0 s; rows more than 5 s apart tell no time"));
        assertThat(drive.warmUpCycle().isYes()).isTrue();
        // not even 30 s of running can be 600 s
        assertThat(drive.minimumCycle().isNo()).isTrue();
    }

    @Test
    void what_may_have_been_enough_is_not_known() {
        List<String> rows = new ArrayList<>();
        for (int second = 0; second <= 900; second += 10) {
            rows.add(second + " ENGINE_SPEED=2000 VEHICLE_SPEED=80");
        }
        DriveSummary summary = facts(Rows.of(rows.toArray(new String[0]))).summary();
        DriveFacts drive = DriveFacts.of(summary, Ignition.SPARK, DriveRules.EXACT);
        assertThat(drive.minimumCycle().held()).isEqualTo(Finding.Held.UNKNOWN);
        assertThat(words(drive.minimumCycle().reason()))
                .contains("may have been up to 900 s, in time that was not recorded");
        // a run time that the scan tells settles it
        assertThat(summary.completedBy(Map.of(DriveQuantity.RUN_TIME, 870.0)).value(DriveQuantity.RUN_TIME))
                .hasValue(870);
        assertThat(summary.completedBy(Map.of(DriveQuantity.RUN_TIME, 870.0)).atMost(DriveQuantity.RUN_TIME))
                .isEmpty();
        assertThat(summary.completedBy(Map.of(DriveQuantity.RUN_TIME, 2_000.0)).value(DriveQuantity.RUN_TIME))
                .hasValue(0);
    }

    @Test
    void an_engine_that_was_off_at_every_row_did_not_run() {
        DriveSummary summary = facts(Rows.of("0 ENGINE_SPEED=0", "10 ENGINE_SPEED=0", "20 ENGINE_SPEED=0"))
                .summary();
        assertThat(summary.atMost(DriveQuantity.RUN_TIME)).isEmpty();
        assertThat(found(
                        DriveFacts.of(summary, Ignition.SPARK, DriveRules.EXACT).drivingCycle()))
                .isEqualTo(no("the engine did not run"));
    }

    @Test
    void repeated_and_backward_times_add_nothing_and_are_counted() {
        SignalFacts facts = facts(Rows.of(
                "10 ENGINE_SPEED=800", "11", "11 VEHICLE_SPEED=90", "9", "10.5 VEHICLE_SPEED=60", "12", "12.5"));
        assertThat(facts.rows().nonIncreasing()).isEqualTo(3);
        assertThat(facts.rows().farthestBackward()).isEqualTo(2_000);
        assertThat(facts.rows().wall()).isEqualTo(2_500);
        assertThat(facts.distance().orElseThrow()).isCloseTo(60 * 1.5 / 3600, within(1e-12));
    }

    @Test
    void the_engine_runs_from_400_rpm_on() {
        SignalFacts facts = facts(Rows.of("0 ENGINE_SPEED=0", "1 ENGINE_SPEED=399.9", "3 ENGINE_SPEED=400", "4", "5"));
        assertThat(facts.times().running()).isEqualTo(2_000);
        assertThat(facts.engineStart()).isEqualTo(OptionalLong.of(3_000));
    }

    @ParameterizedTest
    @CsvSource({"40.2336, 1000", "40.2335, 0", "41, 1000", "40, 0"})
    void fast_is_25_mph_or_more(double speed, long millis) {
        assertThat(facts(Rows.of("0 VEHICLE_SPEED=" + speed, "1")).times().fast())
                .isEqualTo(millis);
    }

    @ParameterizedTest
    @CsvSource({"1.609344, 1000", "1.6094, 0", "1, 1000", "0, 1000"})
    void idle_is_1_mph_or_less(double speed, long millis) {
        MotionTimes times =
                facts(Rows.of("0 ENGINE_SPEED=700 VEHICLE_SPEED=" + speed, "1")).times();
        assertThat(times.longestIdle()).isEqualTo(millis);
        assertThat(times.longestStandstill()).isEqualTo(millis);
    }

    @Test
    void a_speed_converted_from_25_mph_is_fast() {
        assertThat(facts(Rows.of("0 VEHICLE_SPEED=" + 25 * 1.609344, "1"))
                        .times()
                        .fast())
                .isEqualTo(1_000);
    }

    @Test
    void a_standstill_with_the_engine_stopped_is_no_idle_and_breaks_it() {
        MotionTimes times = facts(Rows.of(
                        "0 ENGINE_SPEED=800 VEHICLE_SPEED=0",
                        "2 ENGINE_SPEED=0",
                        "4 ENGINE_SPEED=800",
                        "7 VEHICLE_SPEED=20",
                        "8"))
                .times();
        assertThat(times.longestIdle()).isEqualTo(3_000);
        assertThat(times.longestStandstill()).isEqualTo(7_000);
    }

    @Test
    void idle_with_the_pedal_released_is_counted_where_the_released_value_is_known() {
        List<SignalRow> rows = Rows.of(
                "0 ENGINE_SPEED=800 VEHICLE_SPEED=0",
                "1 PEDAL=14.6",
                "3 PEDAL=14.7",
                "4 PEDAL=14",
                "8 VEHICLE_SPEED=5",
                "9");
        assertThat(facts(rows, OptionalDouble.of(14.6)).times().longestIdleReleased())
                .isEqualTo(OptionalLong.of(4_000));
        assertThat(facts(rows).times().longestIdleReleased()).isEmpty();
    }

    @Test
    void a_gap_ends_the_idle_with_the_pedal_released_too() {
        List<SignalRow> rows =
                Rows.of("0 ENGINE_SPEED=800 VEHICLE_SPEED=0 PEDAL=14", "2", "20", "23", "24 VEHICLE_SPEED=9", "25");
        assertThat(facts(rows, OptionalDouble.of(14.6)).times().longestIdleReleased())
                .isEqualTo(OptionalLong.of(4_000));
    }

    @Test
    void nothing_is_known_before_the_first_value() {
        SignalFacts facts = facts(Rows.of("0 COOLANT=20", "3 VEHICLE_SPEED=50", "4 ENGINE_SPEED=900", "5"));
        assertThat(facts.times()).isEqualTo(new MotionTimes(1_000, 2_000, 0, OptionalLong.empty(), 0));
        assertThat(facts(Rows.of("0 COOLANT=20", "1")).distance()).isEmpty();
        assertThat(facts(Rows.of("0 COOLANT=20", "1")).trapezoidDistance()).isEmpty();
    }

    /** 40 °F are 22.22 K and 160 °F are 71.11 °C; first and peak in °C. Rounded limits: SAE J1979 PID $30, from memory. */
    @ParameterizedTest
    @CsvSource({
        "20,71.2,true,true,true",
        "20,71,false,true,true",
        "20,70,false,true,true",
        "20,69.9,false,false,true",
        "55,90,true,true,true",
        "70,90,false,false,false",
        "68,90,false,true,false",
        "68,91,true,true,true",
        "20,61,false,false,true",
        "20,59.9,false,false,false",
    })
    void warm_up_cycle_by_each_rule(double first, double peak, boolean exact, boolean rounded, boolean compression) {
        SignalFacts facts = facts(Rows.of("0 COOLANT=" + first, "60 COOLANT=" + peak, "61 COOLANT=30"));
        assertThat(facts.warmUpCycle(WarmUpRule.SPARK_EXACT)).contains(exact);
        assertThat(facts.warmUpCycle(WarmUpRule.SPARK_ROUNDED)).contains(rounded);
        assertThat(facts.warmUpCycle(WarmUpRule.COMPRESSION_EXACT)).contains(compression);
        assertThat(facts.coolantRise().orElseThrow()).isCloseTo(peak - first, within(1e-9));
    }

    @Test
    void the_moment_of_the_warm_up_is_kept() {
        SignalFacts facts = facts(Rows.of("5 COOLANT=20", "7 COOLANT=72", "9 COOLANT=80"));
        assertThat(facts.warmUps())
                .isEqualTo(Map.of(
                        WarmUpRule.SPARK_EXACT, 2_000L,
                        WarmUpRule.SPARK_ROUNDED, 2_000L,
                        WarmUpRule.COMPRESSION_EXACT, 2_000L));
        assertThat(facts(Rows.of("0 ENGINE_SPEED=1")).warmUpCycle(WarmUpRule.SPARK_EXACT))
                .isEmpty();
        assertThat(facts(Rows.of("0 ENGINE_SPEED=1")).coolantRise()).isEmpty();
    }

    /** 600 s running, 300 s at 25 mph, 30 s of idle in this drive: the idle comes last and completes it. */
    @Test
    void the_minimum_cycle_is_complete_with_its_last_part() {
        List<SignalRow> rows = Rows.join(
                Rows.everySecond(0, 569, "ENGINE_SPEED=2000 VEHICLE_SPEED=60"),
                Rows.everySecond(570, 640, "ENGINE_SPEED=800 VEHICLE_SPEED=0"));
        SignalFacts facts = facts(rows);
        assertThat(facts.times()).isEqualTo(new MotionTimes(640_000, 570_000, 70_000, OptionalLong.empty(), 70_000));
        assertThat(facts.minimumCycleAt()).isEqualTo(OptionalLong.of(600_000));
        assertThat(facts.times().isMinimumCycle(SignalRules.EXACT)).isTrue();
    }

    @ParameterizedTest
    @CsvSource({"599999,300000,30000", "600000,299999,30000", "600000,300000,29999"})
    void a_millisecond_short_is_no_minimum_cycle(long run, long fast, long idle) {
        MotionTimes times = new MotionTimes(run, fast, idle, OptionalLong.empty(), idle);
        assertThat(times.isMinimumCycle(SignalRules.EXACT)).isFalse();
        assertThat(new MotionTimes(600_000, 300_000, 30_000, OptionalLong.empty(), 0).isMinimumCycle(SignalRules.EXACT))
                .isTrue();
    }

    @Test
    void the_lamp_counts_only_with_the_engine_running() {
        assertThat(facts(Rows.of("0 MIL=1 ENGINE_SPEED=0", "1 MIL=0 ENGINE_SPEED=800", "2"))
                        .milOn())
                .contains(false);
        assertThat(facts(Rows.of("0 MIL=0 ENGINE_SPEED=800", "1 MIL=1", "2 MIL=0"))
                        .milOn())
                .contains(true);
        assertThat(facts(Rows.of("0 MIL=1", "2")).milOn()).isEmpty();
    }

    @Test
    void operating_points_are_the_means_of_cells_in_which_the_drive_stayed_ten_seconds() {
        List<SignalRow> rows = Rows.join(
                Rows.everySecond(0, 4, "ENGINE_SPEED=2000 LOAD=40 COOLANT=80"),
                Rows.everySecond(5, 9, "ENGINE_SPEED=2100 LOAD=44 COOLANT=84"),
                Rows.everySecond(10, 18, "ENGINE_SPEED=3000 LOAD=60 COOLANT=85"),
                Rows.everySecond(19, 40, "ENGINE_SPEED=300 LOAD=60 COOLANT=85"));
        assertThat(facts(rows).operatingPoints()).containsExactly(new OperatingPoint(2050, 42, 82));
        assertThat(facts(rows).summary().operatingPoints()).hasSize(1);
    }

    @Test
    void the_summary_states_what_was_recorded() {
        List<SignalRow> rows = Rows.join(
                Rows.of("0 COOLANT=20 AMBIENT=9 BAROMETER=99 FUEL_LEVEL=41 ENGINE_SPEED=800 VEHICLE_SPEED=0 MIL=0"),
                Rows.of("4 COOLANT=24 AMBIENT=3 BAROMETER=97 FUEL_LEVEL=40 VEHICLE_SPEED=72", "8 COOLANT=22"));
        DriveSummary summary = facts(rows).summary();
        assertThat(summary.values())
                .isEqualTo(Map.of(
                        DriveQuantity.START_COOLANT, 20.0,
                        DriveQuantity.PEAK_COOLANT, 24.0,
                        DriveQuantity.AMBIENT, 3.0,
                        DriveQuantity.BAROMETER, 97.0,
                        DriveQuantity.FUEL_LEVEL, 41.0,
                        DriveQuantity.RUN_TIME, 8.0,
                        DriveQuantity.FAST_TIME, 4.0,
                        DriveQuantity.LONGEST_IDLE, 4.0,
                        DriveQuantity.DISTANCE, 0.08));
        assertThat(summary.milOn()).contains(false);
    }

    @Test
    void the_summary_never_states_more_time_at_speed_than_run_time() {
        SignalFacts late = facts(Rows.of("0 VEHICLE_SPEED=90", "4 ENGINE_SPEED=2000", "6"));
        assertThat(late.times().fast()).isEqualTo(6_000);
        assertThat(late.summary().value(DriveQuantity.FAST_TIME)).hasValue(2.0);
        SignalFacts without = facts(Rows.of("0 VEHICLE_SPEED=90", "4", "6"));
        assertThat(without.summary().values())
                .containsOnlyKeys(DriveQuantity.FAST_TIME, DriveQuantity.DISTANCE)
                .containsEntry(DriveQuantity.FAST_TIME, 6.0);
    }

    @Test
    void the_summary_leaves_out_what_no_drive_can_have() {
        assertThat(facts(Rows.of("0 FUEL_LEVEL=150 ENGINE_SPEED=800", "1"))
                        .summary()
                        .values())
                .containsOnlyKeys(DriveQuantity.RUN_TIME);
    }

    @Test
    void an_empty_drive_has_no_facts() {
        SignalFacts facts = facts(List.of());
        assertThat(facts.rows().rows()).isZero();
        assertThat(facts.engineStart()).isEmpty();
        assertThat(facts.minimumCycleAt()).isEmpty();
        assertThat(facts.summary()).isEqualTo(DriveSummary.UNKNOWN);
    }

    @Test
    void a_row_refuses_what_is_no_number() {
        assertThatThrownBy(() -> new SignalRow(0, Map.of(Signal.COOLANT, Double.NaN)))
                .hasMessage("coolant temperature: found NaN, expected a number of °C");
    }

    @Test
    void signals_know_their_pid_and_range() {
        assertThat(Signal.COOLANT.pid()).hasValue(5);
        assertThat(Signal.MIL.pid()).isEmpty();
        assertThat(Signal.COOLANT.isPlausible(150)).isTrue();
        assertThat(Signal.COOLANT.isPlausible(-50)).isTrue();
        assertThat(Signal.COOLANT.isPlausible(150.1)).isFalse();
        assertThat(Signal.COOLANT.isPlausible(-50.1)).isFalse();
        assertThat(Signal.COOLANT.isPlausible(Double.NaN)).isFalse();
        assertThat(Signal.COOLANT.lowest()).isEqualTo(-50);
        assertThat(Signal.COOLANT.highest()).isEqualTo(150);
        for (Signal signal : Signal.values()) {
            assertThat(signal.words()).isNotBlank();
            assertThat(signal.unit()).isNotBlank();
            assertThat(signal.pid().orElse(1)).isNotNegative();
        }
    }
}
