package dev.stayfixed.drive.condition;

import static dev.stayfixed.English.words;
import static dev.stayfixed.Found.found;
import static dev.stayfixed.Found.no;
import static dev.stayfixed.Found.unknown;
import static dev.stayfixed.Found.yes;
import static dev.stayfixed.drive.signal.Signal.AMBIENT;
import static dev.stayfixed.drive.signal.Signal.BAROMETER;
import static dev.stayfixed.drive.signal.Signal.COOLANT;
import static dev.stayfixed.drive.signal.Signal.ENGINE_SPEED;
import static dev.stayfixed.drive.signal.Signal.FUEL_LEVEL;
import static dev.stayfixed.drive.signal.Signal.INTAKE_AIR;
import static dev.stayfixed.drive.signal.Signal.VEHICLE_SPEED;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.drive.Finding;
import dev.stayfixed.drive.signal.Rows;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.drive.signal.SignalRow;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Drives written by hand against conditions; what was met and missed was worked out by hand. */
class EvaluationTest {

    private static final SignalRange STEADY = new SignalRange(VEHICLE_SPEED, 70, 110);
    private static final SignalRange WARM = SignalRange.atLeast(COOLANT, 70);
    private static final Duration MINUTE = Duration.ofMinutes(1);

    private static ConditionReport report(ConditionSet set, List<SignalRow> rows) {
        Evaluation evaluation = set.evaluation(OptionalDouble.empty());
        rows.forEach(evaluation);
        return evaluation.report();
    }

    private static ConditionResult result(Condition condition, List<SignalRow> rows) {
        return report(ConditionSet.anyOrder("one", condition), rows).results().get(0);
    }

    private static ConditionResult result(Condition condition, String... rows) {
        return result(condition, Rows.of(rows));
    }

    private static Finding finding(Condition condition, String... rows) {
        return result(condition, rows).finding();
    }

    @Test
    void what_was_stated_beside_the_log_tells_what_the_log_cannot() {
        AtStart fuel = new AtStart(SignalRange.atLeast(FUEL_LEVEL, 15));
        ConditionSet set = ConditionSet.anyOrder("one", fuel, Hold.unbroken(STEADY, MINUTE));
        ConditionReport silent = report(set, Rows.everySecond(0, 100, "VEHICLE_SPEED=80"));
        assertThat(silent.overall().held()).isEqualTo(Finding.Held.UNKNOWN);
        assertThat(silent.with(DriveSummary.UNKNOWN)).isEqualTo(silent);
        assertThat(silent.with(fuel(55)).overall().isYes()).isTrue();
        assertThat(found(silent.with(fuel(10)).overall()))
                .isEqualTo(no("fuel level was 10 % at the start, at least 15 % needed: 5 % short"));
        ConditionReport heard = report(
                set,
                Rows.join(Rows.of("0 FUEL_LEVEL=10 VEHICLE_SPEED=80"), Rows.everySecond(1, 100, "VEHICLE_SPEED=80")));
        assertThat(heard.with(fuel(55))).as("the log is believed").isEqualTo(heard);
    }

    private static DriveSummary fuel(double percent) {
        return new DriveSummary(Map.of(DriveQuantity.FUEL_LEVEL, percent), List.of(), Optional.empty());
    }

    @Test
    void a_hold_that_was_missed_says_by_how_much_and_where_it_came_closest() {
        List<SignalRow> rows = Rows.join(
                Rows.everySecond(0, 99, "VEHICLE_SPEED=80"),
                Rows.everySecond(100, 750, "VEHICLE_SPEED=50"),
                Rows.everySecond(751, 791, "VEHICLE_SPEED=90"),
                Rows.everySecond(792, 800, "VEHICLE_SPEED=120"));
        ConditionResult missed = result(Hold.unbroken(STEADY, Duration.ofMinutes(2)), rows);
        assertThat(found(missed.finding()))
                .isEqualTo(
                        no(
                                "vehicle speed 70 to 110 km/h held 100 s of 2 min unbroken; the longest stretch began at 0:00"));
        assertThat(missed.held()).containsExactly(new Interval(0, 100_000), new Interval(751_000, 792_000));
        assertThat(missed.metAt()).isEmpty();
        assertThat(words(missed.toDo().orElseThrow()))
                .isEqualTo("Keep vehicle speed 70 to 110 km/h for at least 2 min without a break.");
        ConditionResult met = result(Hold.cumulative(STEADY, Duration.ofMinutes(2)), rows);
        assertThat(found(met.finding()))
                .isEqualTo(
                        yes(
                                "vehicle speed 70 to 110 km/h held 2 min 21 s in total, 2 min needed; the longest stretch began at 0:00"));
        assertThat(met.metAt()).isEqualTo(OptionalLong.of(771_000));
        assertThat(met.toDo()).isEmpty();
    }

    @Test
    void the_longest_stretch_is_told_by_its_beginning() {
        List<SignalRow> rows = Rows.join(
                Rows.everySecond(0, 9, "VEHICLE_SPEED=80"),
                Rows.everySecond(10, 750, "VEHICLE_SPEED=50"),
                Rows.everySecond(751, 791, "VEHICLE_SPEED=90"),
                Rows.everySecond(792, 800, "VEHICLE_SPEED=120"));
        assertThat(words(result(Hold.unbroken(STEADY, MINUTE), rows).finding().reason()))
                .isEqualTo(
                        "vehicle speed 70 to 110 km/h held 41 s of 60 s unbroken; the longest stretch began at 12:31");
    }

    @ParameterizedTest
    @CsvSource({"3.999, NO", "4, YES", "4.5, YES"})
    void a_hold_is_met_at_exactly_its_time(String end, Finding.Held held) {
        Hold hold = Hold.unbroken(STEADY, Duration.ofSeconds(4));
        assertThat(finding(hold, "0 VEHICLE_SPEED=70", end + " VEHICLE_SPEED=60", "9")
                        .held())
                .isEqualTo(held);
    }

    @Test
    void a_gap_holds_nothing_and_ends_an_unbroken_hold() {
        Hold unbroken = Hold.unbroken(STEADY, Duration.ofSeconds(8));
        String[] rows = {"0 VEHICLE_SPEED=80", "4", "9.001", "14.001", "15 VEHICLE_SPEED=0"};
        assertThat(words(finding(unbroken, rows).reason()))
                .isEqualTo("vehicle speed 70 to 110 km/h held 6 s of 8 s unbroken; the longest stretch began at 0:09");
        assertThat(result(Hold.cumulative(STEADY, Duration.ofSeconds(8)), rows).held())
                .containsExactly(new Interval(0, 4_000), new Interval(9_001, 15_000));
        assertThat(finding(Hold.cumulative(STEADY, Duration.ofMillis(9_999)), rows)
                        .isYes())
                .isTrue();
        assertThat(finding(Hold.cumulative(STEADY, Duration.ofSeconds(10)), rows)
                        .isNo())
                .isTrue();
    }

    @Test
    void a_miss_never_shows_the_same_number_twice() {
        Hold tenMinutes = Hold.unbroken(STEADY, Duration.ofMinutes(10));
        assertThat(words(finding(tenMinutes, spread("VEHICLE_SPEED=80", "599.6 VEHICLE_SPEED=0"))
                        .reason()))
                .startsWith("vehicle speed 70 to 110 km/h held 599.6 s of 600 s unbroken");
        assertThat(words(finding(tenMinutes, spread("VEHICLE_SPEED=80", "599.998 VEHICLE_SPEED=0"))
                        .reason()))
                .startsWith("vehicle speed 70 to 110 km/h held 599.998 s of 600 s unbroken");
        assertThat(words(finding(Hold.unbroken(STEADY, MINUTE), "0 VEHICLE_SPEED=69.97", "4", "5")
                        .reason()))
                .contains("it came to 69.97 km/h at best, 0.03 km/h short");
        assertThat(words(finding(new AtStart(SignalRange.atMost(COOLANT, 40)), "0 COOLANT=40.004")
                        .reason()))
                .contains("40.004 °C at the start, at most 40 °C needed: 0.004 K over");
    }

    /** A row every five seconds with these values, until the last row. */
    private static String[] spread(String values, String last) {
        List<String> rows = new java.util.ArrayList<>();
        for (int second = 0; second < 600; second += 5) {
            rows.add(second + " " + values);
        }
        rows.add(last);
        return rows.toArray(new String[0]);
    }

    @Test
    void rows_too_far_apart_to_tell_are_no_miss() {
        Hold minute = Hold.unbroken(STEADY, MINUTE);
        Finding sparse = finding(
                minute,
                "0 VEHICLE_SPEED=80",
                "10 VEHICLE_SPEED=80",
                "20 VEHICLE_SPEED=80",
                "30 VEHICLE_SPEED=80",
                "40 VEHICLE_SPEED=80",
                "50 VEHICLE_SPEED=80",
                "60 VEHICLE_SPEED=80");
        assertThat(found(sparse))
                .isEqualTo(unknown("vehicle speed 70 to 110 km/h held 0 s of 60 s unbroken in recorded time; 60 s more"
                        + " were not recorded, in gaps of more than 5 s"));
        assertThat(finding(minute, "0 VEHICLE_SPEED=20", "60 VEHICLE_SPEED=30", "120 VEHICLE_SPEED=20")
                        .isNo())
                .isTrue();
    }

    @Test
    void exactly_five_seconds_between_rows_still_hold() {
        assertThat(finding(Hold.unbroken(STEADY, Duration.ofSeconds(10)), "0 VEHICLE_SPEED=80", "5", "10")
                        .isYes())
                .isTrue();
    }

    @Test
    void what_stood_in_the_way_is_named() {
        Hold hold = Hold.unbroken(STEADY, MINUTE, WARM, new SignalRange(ENGINE_SPEED, 1_000, 3_000));
        List<SignalRow> rows = Rows.join(
                Rows.everySecond(0, 24, "VEHICLE_SPEED=80 COOLANT=60 ENGINE_SPEED=2000"),
                Rows.everySecond(25, 34, "VEHICLE_SPEED=80 COOLANT=75 ENGINE_SPEED=3500"),
                Rows.everySecond(35, 75, "VEHICLE_SPEED=80 COOLANT=75 ENGINE_SPEED=2000"));
        assertThat(words(result(hold, rows).finding().reason()))
                .isEqualTo("vehicle speed 70 to 110 km/h held 40 s of 60 s unbroken; the longest stretch began at 0:35;"
                        + " meanwhile coolant temperature at least 70 °C did not hold for 25 s");
        assertThat(words(finding(hold, "0 VEHICLE_SPEED=80 COOLANT=60 ENGINE_SPEED=2000", "4", "5")
                        .reason()))
                .isEqualTo("vehicle speed 70 to 110 km/h held 0 s of 60 s unbroken;"
                        + " meanwhile coolant temperature at least 70 °C did not hold for 5 s");
    }

    @Test
    void a_range_that_was_never_reached_says_how_far_off_it_was() {
        Hold hold = Hold.unbroken(STEADY, MINUTE);
        assertThat(words(finding(hold, "0 VEHICLE_SPEED=0", "1 VEHICLE_SPEED=64", "2 VEHICLE_SPEED=3")
                        .reason()))
                .isEqualTo("vehicle speed 70 to 110 km/h was never reached; it came to 64 km/h at best, 6 km/h short");
        assertThat(words(finding(hold, "0 VEHICLE_SPEED=130", "1 VEHICLE_SPEED=112.5", "2 VEHICLE_SPEED=150")
                        .reason()))
                .isEqualTo(
                        "vehicle speed 70 to 110 km/h was never reached; it came down to 112.5 km/h at best, 2.5 km/h over");
        assertThat(words(finding(hold, "0 VEHICLE_SPEED=80").reason()))
                .isEqualTo("vehicle speed 70 to 110 km/h held 0 s of 60 s unbroken");
    }

    @Test
    void what_was_not_recorded_is_unknown_and_not_missed() {
        Hold hold = Hold.unbroken(STEADY, MINUTE, WARM);
        assertThat(found(finding(hold, "0 COOLANT=80", "1")))
                .isEqualTo(unknown(
                        "vehicle speed was not recorded; what is needed is vehicle speed 70 to 110 km/h for 60 s"
                                + " unbroken, with coolant temperature at least 70 °C"));
        assertThat(words(finding(hold, "0 VEHICLE_SPEED=80", "1").reason()))
                .startsWith("coolant temperature was not recorded");
        assertThat(found(finding(Reach.value(COOLANT, 70), "0 VEHICLE_SPEED=80", "1")))
                .isEqualTo(unknown(
                        "coolant temperature was not recorded; what is needed is coolant temperature of 70 °C"));
        assertThat(found(finding(new AtStart(WARM), "0 VEHICLE_SPEED=80", "1")))
                .isEqualTo(unknown("coolant temperature was not recorded; what is needed is at least 70 °C"));
        assertThat(found(finding(new AtStart(WARM), "0 VEHICLE_SPEED=80", "60.001 COOLANT=80")))
                .isEqualTo(
                        unknown(
                                "coolant temperature was first recorded 60 s after the start; what is needed is at least 70 °C"));
        assertThat(finding(new AtStart(WARM), "0", "60 COOLANT=80").isYes()).isTrue();
    }

    /** SAE J1979 PID $2F bytes $27, $26, $D8, $D9 against 15 to 85 %. */
    @ParameterizedTest
    @CsvSource({"15.29, YES", "14.90, NO", "84.71, YES", "85.10, NO"})
    void fuel_level_at_the_start(double level, Finding.Held held) {
        AtStart fuel = new AtStart(new SignalRange(FUEL_LEVEL, 15, 85));
        assertThat(finding(fuel, "0 FUEL_LEVEL=" + level, "1 FUEL_LEVEL=50").held())
                .isEqualTo(held);
    }

    @Test
    void a_start_value_says_how_far_off_it_was() {
        AtStart fuel = new AtStart(new SignalRange(FUEL_LEVEL, 15, 85));
        assertThat(words(finding(fuel, "0 FUEL_LEVEL=12").reason()))
                .isEqualTo("fuel level was 12 % at the start, 15 to 85 % needed: 3 % short");
        assertThat(words(finding(fuel, "0 FUEL_LEVEL=90").reason()))
                .isEqualTo("fuel level was 90 % at the start, 15 to 85 % needed: 5 % over");
        assertThat(words(finding(fuel, "0 FUEL_LEVEL=40").reason()))
                .isEqualTo("fuel level was 40 % at the start, 15 to 85 % needed");
    }

    /** Intake air 30 °C and coolant 38 °C are 14.4 °F apart, 36 °C are 10.8 °F: New York State inspection programme, 12 °F. */
    @ParameterizedTest
    @CsvSource({"38, NO", "36, YES", "20, YES"})
    void difference_at_the_start(double coolant, Finding.Held held) {
        StartDifference difference = new StartDifference(COOLANT, INTAKE_AIR, 12 / 1.8);
        assertThat(finding(difference, "0 COOLANT=" + coolant, "1 INTAKE_AIR=30 COOLANT=70")
                        .held())
                .isEqualTo(held);
    }

    @Test
    void a_difference_says_how_far_off_it_was_and_what_was_not_recorded() {
        StartDifference difference = new StartDifference(COOLANT, INTAKE_AIR, 6);
        assertThat(words(finding(difference, "0 COOLANT=38 INTAKE_AIR=30").reason()))
                .isEqualTo(
                        "coolant temperature stood 8 K above intake air temperature at the start, at most 6 K allowed: 2 K over");
        assertThat(finding(difference, "0 COOLANT=36 INTAKE_AIR=30").isYes()).isTrue();
        assertThat(words(finding(difference, "0 COOLANT=38").reason()))
                .isEqualTo("intake air temperature was not recorded");
        assertThat(words(finding(difference, "0 INTAKE_AIR=38").reason()))
                .isEqualTo("coolant temperature was not recorded");
        assertThat(words(difference.said()))
                .isEqualTo("coolant temperature at most 6 K above intake air temperature at the start");
    }

    @ParameterizedTest
    @CsvSource({"7.9833, NO", "8, YES", "9, YES"})
    void soak_of_eight_hours(double hours, Finding.Held held) {
        Evaluation evaluation =
                ConditionSet.anyOrder("evap", new Soak(Duration.ofHours(8))).evaluation(OptionalDouble.of(hours));
        assertThat(evaluation.report().overall().held()).isEqualTo(held);
    }

    @Test
    void a_soak_says_how_short_it_was() {
        Soak soak = new Soak(Duration.ofHours(8));
        assertThat(words(soak.tracker(OptionalDouble.of(7.5)).result().finding().reason()))
                .isEqualTo("the engine was off for 7 h 30 min of 8 h: 30 min short");
        assertThat(found(soak.tracker(OptionalDouble.empty()).result().finding()))
                .isEqualTo(unknown("it is not known how long the engine was off before; 8 h are needed"));
        assertThat(soak.tracker(OptionalDouble.of(8)).isMet()).isTrue();
        assertThat(soak.tracker(OptionalDouble.of(7)).isMet()).isFalse();
        assertThat(words(soak.toDo())).isEqualTo("Leave the engine off for at least 8 h before the start.");
        assertThat(words(soak.said())).isEqualTo("engine off for at least 8 h before the start");
    }

    @Test
    void a_value_is_reached_in_time_counted_from_the_engine_start() {
        Reach reach = Reach.value(COOLANT, 70).within(Duration.ofSeconds(10));
        String[] inTime = {
            "0 ENGINE_SPEED=0 COOLANT=20", "4 ENGINE_SPEED=800", "9", "14 COOLANT=70", "16 COOLANT=60", "17"
        };
        ConditionResult met = result(reach, inTime);
        assertThat(found(met.finding()))
                .isEqualTo(yes("coolant temperature of 70 °C was reached after 10 s, 10 s allowed"));
        assertThat(met.metAt()).isEqualTo(OptionalLong.of(14_000));
        assertThat(met.held()).containsExactly(new Interval(14_000, 16_000));
        assertThat(found(finding(reach, "0 ENGINE_SPEED=800 COOLANT=20", "5", "10", "10.5 COOLANT=70")))
                .isEqualTo(no("coolant temperature of 70 °C was reached after 10.5 s, 10 s allowed: 0.5 s late"));
        assertThat(found(finding(reach, "0 ENGINE_SPEED=800 COOLANT=20", "5", "10 COOLANT=63")))
                .isEqualTo(no("coolant temperature of 70 °C was not reached: it came to 63 °C, 7 K short, in 10 s"));
        assertThat(found(finding(Reach.value(COOLANT, 70), "0 COOLANT=70")))
                .isEqualTo(yes("coolant temperature of 70 °C was reached after 0 s"));
    }

    @Test
    void a_log_without_engine_speed_starts_with_its_first_row() {
        Reach reach = Reach.value(COOLANT, 70).within(Duration.ofSeconds(8));
        assertThat(finding(reach, "0 COOLANT=20", "4", "8 COOLANT=70").isYes()).isTrue();
        assertThat(finding(reach, "0 COOLANT=20", "4", "8.1 COOLANT=70").isNo()).isTrue();
    }

    @Test
    void a_rise_counts_from_the_first_value() {
        Reach rise = Reach.rise(COOLANT, 20);
        assertThat(found(finding(rise, "0 COOLANT=30", "4 COOLANT=50")))
                .isEqualTo(yes("a rise in coolant temperature of 20 K was reached after 4 s"));
        assertThat(words(finding(rise, "0 COOLANT=30", "4 COOLANT=49").reason()))
                .isEqualTo(
                        "a rise in coolant temperature of 20 K was not reached: it came to 49 °C, 1 K short, in 4 s");
        assertThat(words(Reach.rise(ENGINE_SPEED, 500).said())).isEqualTo("a rise in engine speed of 500 rpm");
    }

    @Test
    void what_must_hold_until_the_value_is_reached_counts_after_the_lead_in() {
        SignalRange held = new SignalRange(ENGINE_SPEED, 2_000, 2_500);
        Reach reach = new Reach(COOLANT, 70, false, Optional.empty(), Duration.ofSeconds(5), List.of(held));
        assertThat(finding(
                                reach,
                                "0 ENGINE_SPEED=800 COOLANT=20",
                                "5 ENGINE_SPEED=2200",
                                "9 COOLANT=70",
                                "10 ENGINE_SPEED=800",
                                "11")
                        .isYes())
                .isTrue();
        assertThat(found(finding(
                        reach,
                        "0 ENGINE_SPEED=800 COOLANT=20",
                        "5 ENGINE_SPEED=2200",
                        "7 ENGINE_SPEED=800",
                        "9 ENGINE_SPEED=2200",
                        "11 COOLANT=70")))
                .isEqualTo(no("coolant temperature of 70 °C was reached after 11 s,"
                        + " but engine speed 2000 to 2500 rpm did not hold for 2 s"));
        assertThat(found(finding(
                        reach,
                        "0 ENGINE_SPEED=800 COOLANT=20",
                        "5 ENGINE_SPEED=2200",
                        "15 COOLANT=69",
                        "16 COOLANT=70")))
                .isEqualTo(unknown("coolant temperature of 70 °C was reached after 16 s,"
                        + " but 10 s before it were not recorded"));
        assertThat(finding(Reach.value(COOLANT, 70), "0 COOLANT=20 ENGINE_SPEED=900", "15 COOLANT=70")
                        .isYes())
                .isTrue();
    }

    @Test
    void in_order_means_one_after_another() {
        ConditionSet set = ConditionSet.inOrder(
                "egr",
                new AtStart(SignalRange.atMost(AMBIENT, 30)),
                Hold.unbroken(STEADY, Duration.ofSeconds(10)),
                Hold.unbroken(SignalRange.atMost(VEHICLE_SPEED, 4), Duration.ofSeconds(5)));
        List<SignalRow> idleFirst = Rows.join(
                Rows.everySecond(0, 9, "VEHICLE_SPEED=0 AMBIENT=20"), Rows.everySecond(10, 30, "VEHICLE_SPEED=90"));
        ConditionReport wrong = report(set, idleFirst);
        assertThat(wrong.results())
                .extracting(r -> r.finding().held())
                .containsExactly(Finding.Held.YES, Finding.Held.YES, Finding.Held.NO);
        assertThat(wrong.results().get(2).held()).isEmpty();
        List<SignalRow> right = Rows.join(idleFirst, Rows.everySecond(31, 40, "VEHICLE_SPEED=0"));
        assertThat(report(set, right).overall().isYes()).isTrue();
        ConditionReport waiting = report(set, Rows.everySecond(0, 9, "VEHICLE_SPEED=0 AMBIENT=20"));
        assertThat(found(waiting.results().get(2).finding()))
                .isEqualTo(no("not looked for, because vehicle speed 70 to 110 km/h for 10 s unbroken has to be met"
                        + " before it"));
        assertThat(waiting.open()).hasSize(2);
        assertThat(report(new ConditionSet("egr", false, set.conditions()), idleFirst)
                        .overall()
                        .isYes())
                .isTrue();
    }

    @Test
    void a_value_reached_too_early_is_reached_when_its_turn_comes() {
        ConditionSet set =
                ConditionSet.inOrder("order", Hold.unbroken(STEADY, Duration.ofSeconds(4)), Reach.value(COOLANT, 70));
        ConditionReport report =
                report(set, Rows.of("0 VEHICLE_SPEED=0 COOLANT=80", "4 VEHICLE_SPEED=80", "8 VEHICLE_SPEED=0", "10"));
        assertThat(report.results().get(1).metAt()).isEqualTo(OptionalLong.of(10_000));
    }

    @Test
    void what_was_missed_decides_before_what_is_unknown() {
        ConditionSet set = ConditionSet.anyOrder(
                "all", new AtStart(SignalRange.atLeast(BAROMETER, 75)), new AtStart(WARM), Reach.value(COOLANT, 30));
        assertThat(found(report(set, Rows.of("0 COOLANT=20", "1 COOLANT=30")).overall()))
                .isEqualTo(no("coolant temperature was 20 °C at the start, at least 70 °C needed: 50 K short"));
        assertThat(found(report(set, Rows.of("0 COOLANT=70")).overall()))
                .isEqualTo(unknown("barometric pressure was not recorded; what is needed is at least 75 kPa"));
        assertThat(words(report(set, Rows.of("0 COOLANT=70 BAROMETER=99"))
                        .overall()
                        .reason()))
                .isEqualTo("barometric pressure was 99 kPa at the start, at least 75 kPa needed;"
                        + " coolant temperature was 70 °C at the start, at least 70 °C needed;"
                        + " coolant temperature of 30 °C was reached after 0 s");
    }

    @Test
    void limits_that_make_no_sense_are_refused() {
        assertThatThrownBy(() -> new SignalRange(COOLANT, 80, 70))
                .hasMessage(
                        "coolant temperature: found limits 80.0 to 70.0, expected at least one limit, the lower one first");
        assertThatThrownBy(() -> new SignalRange(COOLANT, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Hold.unbroken(STEADY, Duration.ZERO))
                .hasMessage("vehicle speed: found a time of PT0S, expected more than 0");
        assertThatThrownBy(() -> Hold.unbroken(STEADY, Duration.ofSeconds(-1)))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Soak(Duration.ZERO))
                .hasMessage("engine-off time: found PT0S, expected more than 0");
        assertThatThrownBy(() -> new Soak(Duration.ofHours(-1))).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Reach.rise(COOLANT, 0))
                .hasMessage("coolant temperature: found 0.0, expected a number above 0");
        assertThatThrownBy(() -> Reach.value(COOLANT, Double.NaN))
                .hasMessage("coolant temperature: found NaN, expected a number");
        assertThat(words(Reach.value(COOLANT, 0).said())).isEqualTo("coolant temperature of 0 °C");
        assertThatThrownBy(() -> new StartDifference(COOLANT, Signal.LOAD, 3))
                .hasMessage(
                        "difference at the start: found coolant temperature and calculated load, expected two temperatures");
        assertThatThrownBy(() -> new StartDifference(Signal.LOAD, COOLANT, 3))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new StartDifference(COOLANT, COOLANT, 3)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> ConditionSet.anyOrder("none"))
                .hasMessage("none: found no condition, expected at least one");
    }

    @Test
    void intervals_are_kept_up_to_a_number_and_counted_beyond_it() {
        List<SignalRow> rows = new ArrayList<>();
        for (int i = 0; i < 12_000; i++) {
            rows.addAll(Rows.of(i + " VEHICLE_SPEED=" + (i % 2 == 0 ? 80 : 0)));
        }
        ConditionResult result = result(Hold.cumulative(STEADY, Duration.ofMinutes(100)), rows);
        assertThat(result.held()).hasSize(IntervalLog.MOST);
        assertThat(result.held().get(0).length()).isEqualTo(1_000);
        assertThat(result.finding().isYes()).isTrue();
    }
}
