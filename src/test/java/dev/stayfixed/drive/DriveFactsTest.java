package dev.stayfixed.drive;

import static dev.stayfixed.English.words;
import static dev.stayfixed.Found.found;
import static dev.stayfixed.Found.no;
import static dev.stayfixed.Found.unknown;
import static dev.stayfixed.Found.yes;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.stayfixed.ReferenceRows;
import dev.stayfixed.ReferenceRows.Row;
import dev.stayfixed.obd.Ignition;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class DriveFactsTest {

    private static final double METRES_PER_FOOT = 0.3048;

    static Stream<Row> rows() {
        return ReferenceRows.in(DriveFactsTest.class, "facts.csv").stream();
    }

    @ParameterizedTest
    @MethodSource("rows")
    void holdsEveryCheckRow(Row row) {
        switch (row.kind()) {
            case "warm-up" -> assertThat(warmUp(row.inputs()).held()).hasToString(row.expected());
            case "minimum" ->
                assertThat(facts(row.inputs()).minimumCycle().held()).hasToString(row.expected());
            case "denominator" ->
                assertThat(facts(row.inputs()).generalDenominator().held()).hasToString(row.expected());
            case "pressure-ft" ->
                assertThat(Atmosphere.pressureAt(number(row.input()) * METRES_PER_FOOT))
                        .isCloseTo(number(row.expected()), within(0.006));
            case "altitude-ft" ->
                assertThat(Atmosphere.altitudeAt(number(row.input())) / METRES_PER_FOOT)
                        .isCloseTo(number(row.expected()), within(1.0));
            case "rise" -> assertThat(DriveRules.EXACT.warmUpRise()).isCloseTo(number(row.expected()), within(0.005));
            case "limit-m" ->
                assertThat(DriveRules.WHOLE_DEGREES.highestAltitude()).isEqualTo(number(row.expected()));
            default -> throw new IllegalArgumentException("no such kind: " + row);
        }
    }

    @Test
    void ranEveryRowOfItsFile() {
        List<Integer> ids = rows().map(Row::id).distinct().sorted().toList();
        assertThat(ids)
                .containsExactly(
                        1, 2, 3, 4, 5, 6, 57, 58, 59, 60, 61, 115, 116, 117, 340, 341, 342, 343, 344, 345, 346, 347,
                        348, 350, 352, 354);
    }

    @Test
    void saysByHowMuchTheMinimumCycleWasMissed() {
        assertThat(words(facts(List.of("599", "300", "30")).minimumCycle().reason()))
                .isEqualTo("engine run time 599 s, at least 600 s needed: 1 s short");
        assertThat(words(facts(List.of("600", "300", "30")).minimumCycle().reason()))
                .isEqualTo("engine run time 600 s, at least 600 s needed; time at 25 mph (40 km/h) or more 300 s,"
                        + " at least 300 s needed; longest unbroken idle 30 s, at least 30 s needed");
    }

    @Test
    void aMissedConditionDecidesWhateverIsUnknown() {
        DriveSummary summary = summary(Map.of(DriveQuantity.LONGEST_IDLE, 29.0));
        DriveFacts facts = DriveFacts.of(summary, Ignition.SPARK, DriveRules.WHOLE_DEGREES);
        assertThat(facts.minimumCycle().isNo()).isTrue();
        assertThat(words(facts.drivingCycle().reason())).isEqualTo("no engine run time was recorded");
        assertThat(facts.warmUpCycle().held()).isEqualTo(Finding.Held.UNKNOWN);
        assertThat(words(facts.warmUpCycle().reason()))
                .isEqualTo("coolant temperature at start and at its highest were not both recorded");
    }

    @Test
    void whatIsMissingIsUnknownAndNamed() {
        DriveSummary summary = summary(Map.of(
                DriveQuantity.RUN_TIME,
                900.0,
                DriveQuantity.FAST_TIME,
                400.0,
                DriveQuantity.LONGEST_IDLE,
                60.0,
                DriveQuantity.AMBIENT,
                20.0));
        Finding denominator =
                DriveFacts.of(summary, Ignition.SPARK, DriveRules.WHOLE_DEGREES).generalDenominator();
        assertThat(found(denominator))
                .isEqualTo(unknown("barometric pressure was not recorded, so the altitude is not known;"
                        + " 2438.4 m at most are allowed"));
    }

    @Test
    void anEngineThatDidNotRunIsNoDrivingCycle() {
        assertThat(found(DriveFacts.of(summary(Map.of(DriveQuantity.RUN_TIME, 0.0)), Ignition.SPARK, DriveRules.EXACT)
                        .drivingCycle()))
                .isEqualTo(no("the engine did not run"));
        assertThat(found(DriveFacts.of(summary(Map.of(DriveQuantity.RUN_TIME, 1.0)), Ignition.SPARK, DriveRules.EXACT)
                        .drivingCycle()))
                .isEqualTo(yes("the engine ran for 1 s"));
    }

    @Test
    void explainsTheWarmUp() {
        assertThat(words(warmUp(List.of("whole", "spark", "20", "65.5")).reason()))
                .isEqualTo("coolant rose 45.5 K, 22 needed, and reached 65.5 °C, 71 needed");
    }

    @Test
    void explainsTheAltitude() {
        assertThat(found(facts(List.of("600", "300", "30", "20", "75")).generalDenominator()))
                .isEqualTo(no("75 kPa of air pressure is about 2466 m above sea level, 2438.4 m at most are allowed"));
    }

    @Test
    void refusesValuesThatNoDriveHas() {
        assertThatThrownBy(() -> summary(Map.of(DriveQuantity.PEAK_COOLANT, 900.0)))
                .hasMessage("highest coolant temperature: found 900.0, expected -50.0 to 215.0 °C");
        assertThatThrownBy(() -> summary(Map.of(DriveQuantity.RUN_TIME, Double.NaN)))
                .hasMessage("engine run time: found NaN, expected 0.0 to 345600.0 s");
        assertThatThrownBy(() -> summary(Map.of(DriveQuantity.START_COOLANT, 90.0, DriveQuantity.PEAK_COOLANT, 89.0)))
                .hasMessage(
                        "highest coolant temperature: found 89.0 °C, expected at least the 90.0 °C at engine start");
        assertThatThrownBy(() -> summary(Map.of(DriveQuantity.RUN_TIME, 10.0, DriveQuantity.FAST_TIME, 11.0)))
                .hasMessage(
                        "time at 25 mph (40 km/h) or more: found 11.0 s, expected at most the engine run time of 10.0 s");
        assertThat(summary(Map.of(DriveQuantity.RUN_TIME, 11.0, DriveQuantity.FAST_TIME, 11.0))
                        .value(DriveQuantity.FAST_TIME))
                .hasValue(11.0);
        assertThat(summary(Map.of(DriveQuantity.START_COOLANT, 90.0, DriveQuantity.PEAK_COOLANT, 90.0))
                        .value(DriveQuantity.SOAK))
                .isEmpty();
    }

    @Test
    void takesWhatItLacksFromElsewhereAndKeepsItsOwn() {
        DriveSummary own = summary(Map.of(DriveQuantity.RUN_TIME, 10.0));
        DriveSummary completed = own.completedBy(Map.of(DriveQuantity.RUN_TIME, 99.0, DriveQuantity.AMBIENT, 5.0));
        assertThat(completed.values()).isEqualTo(Map.of(DriveQuantity.RUN_TIME, 10.0, DriveQuantity.AMBIENT, 5.0));
    }

    @Test
    void conditionsSayByHowMuchTheyWereMissed() {
        DriveSummary summary = summary(Map.of(DriveQuantity.FUEL_LEVEL, 14.9, DriveQuantity.SOAK, 8.0));
        EnablingCondition fuel =
                new EnablingCondition(DriveQuantity.FUEL_LEVEL, OptionalDouble.of(15), OptionalDouble.of(85));
        assertThat(found(fuel.heldIn(summary))).isEqualTo(no("fuel level 14.9 %, 15 to 85 % needed: 0.1 % short"));
        assertThat(found(fuel.heldIn(summary(Map.of(DriveQuantity.FUEL_LEVEL, 85.1)))))
                .isEqualTo(no("fuel level 85.1 %, 15 to 85 % needed: 0.1 % over"));
        assertThat(fuel.heldIn(summary(Map.of(DriveQuantity.FUEL_LEVEL, 15.0))).isYes())
                .isTrue();
        assertThat(fuel.heldIn(summary(Map.of(DriveQuantity.FUEL_LEVEL, 85.0))).isYes())
                .isTrue();
        assertThat(found(fuel.heldIn(DriveSummary.UNKNOWN)))
                .isEqualTo(unknown("fuel level was not recorded, 15 to 85 % needed"));
        EnablingCondition soak =
                new EnablingCondition(DriveQuantity.SOAK, OptionalDouble.of(8), OptionalDouble.empty());
        assertThat(words(soak.heldIn(summary).reason()))
                .isEqualTo("engine-off time before the start 8 h, at least 8 h needed");
        EnablingCondition cold =
                new EnablingCondition(DriveQuantity.START_COOLANT, OptionalDouble.empty(), OptionalDouble.of(35));
        assertThat(found(cold.heldIn(summary(Map.of(DriveQuantity.START_COOLANT, 36.0)))))
                .isEqualTo(no("coolant temperature at engine start 36 °C, at most 35 °C needed: 1 K over"));
    }

    @Test
    void conditionsNeedASensibleLimit() {
        assertThatThrownBy(
                        () -> new EnablingCondition(DriveQuantity.SOAK, OptionalDouble.empty(), OptionalDouble.empty()))
                .hasMessageContaining("found no limit, expected a lower or an upper limit or both");
        assertThatThrownBy(() -> new EnablingCondition(DriveQuantity.SOAK, OptionalDouble.of(9), OptionalDouble.of(8)))
                .hasMessage("engine-off time before the start: found limits 9.0 to 8.0, expected the lower one first");
        assertThat(new EnablingCondition(DriveQuantity.SOAK, OptionalDouble.of(8), OptionalDouble.of(8))
                        .heldIn(summary(Map.of(DriveQuantity.SOAK, 8.0)))
                        .isYes())
                .isTrue();
    }

    @Test
    void operatingPointsAreChecked() {
        assertThat(new OperatingPoint(0, 0, -50)).isNotNull();
        assertThat(new OperatingPoint(16_384, 100, 215)).isNotNull();
        assertThatThrownBy(() -> new OperatingPoint(-1, 20, 80)).hasMessageContaining("engine speed: found -1.0");
        assertThatThrownBy(() -> new OperatingPoint(16_385, 20, 80)).hasMessageContaining("0 to 16384 rpm");
        assertThatThrownBy(() -> new OperatingPoint(800, 101, 80)).hasMessageContaining("load: found 101.0");
        assertThatThrownBy(() -> new OperatingPoint(800, -1, 80)).hasMessageContaining("load: found -1.0");
        assertThatThrownBy(() -> new OperatingPoint(800, 20, 216)).hasMessageContaining("coolant: found 216.0");
        assertThatThrownBy(() -> new OperatingPoint(800, 20, Double.NaN)).hasMessageContaining("coolant: found NaN");
    }

    private static Finding warmUp(List<String> input) {
        DriveRules rules = input.get(0).equals("exact") ? DriveRules.EXACT : DriveRules.WHOLE_DEGREES;
        Ignition ignition = Ignition.valueOf(input.get(1).toUpperCase(Locale.ROOT));
        DriveSummary summary = summary(Map.of(
                DriveQuantity.START_COOLANT, number(input.get(2)), DriveQuantity.PEAK_COOLANT, number(input.get(3))));
        return DriveFacts.of(summary, ignition, rules).warmUpCycle();
    }

    private static DriveFacts facts(List<String> input) {
        List<DriveQuantity> quantities = List.of(
                DriveQuantity.RUN_TIME,
                DriveQuantity.FAST_TIME,
                DriveQuantity.LONGEST_IDLE,
                DriveQuantity.AMBIENT,
                DriveQuantity.BAROMETER);
        Map<DriveQuantity, Double> values = new HashMap<>();
        for (int i = 0; i < input.size(); i++) {
            values.put(quantities.get(i), number(input.get(i)));
        }
        return DriveFacts.of(summary(values), Ignition.SPARK, DriveRules.WHOLE_DEGREES);
    }

    private static DriveSummary summary(Map<DriveQuantity, Double> values) {
        return new DriveSummary(values, List.of(), Optional.empty());
    }

    private static double number(String text) {
        return Double.parseDouble(text);
    }
}
