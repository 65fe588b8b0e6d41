package dev.stayfixed.customer;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.English;
import dev.stayfixed.drive.condition.AtStart;
import dev.stayfixed.drive.condition.Condition;
import dev.stayfixed.drive.condition.ConditionSet;
import dev.stayfixed.drive.condition.Hold;
import dev.stayfixed.drive.condition.Reach;
import dev.stayfixed.drive.condition.SignalRange;
import dev.stayfixed.drive.condition.Soak;
import dev.stayfixed.drive.condition.StartDifference;
import dev.stayfixed.drive.condition.TypicalConditions;
import dev.stayfixed.drive.signal.Signal;
import java.time.Duration;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class PlainStepsTest {

    private static List<String> words(List<Condition> conditions) {
        return PlainSteps.of(conditions).stream()
                .map(step -> English.words(step.amount()) + ": " + English.words(step.says()))
                .toList();
    }

    static Stream<ConditionSet> typical() {
        return TypicalConditions.all().stream().map(typical -> typical.set());
    }

    @ParameterizedTest
    @MethodSource("typical")
    void nobodyNeedsAScanToolToFollowThem(ConditionSet set) {
        List<String> steps = words(set.conditions());
        assertThat(steps).isNotEmpty().doesNotHaveDuplicates();
        assertThat(String.join(" ", steps))
                .doesNotContainIgnoringCase("coolant")
                .doesNotContainIgnoringCase("intake")
                .doesNotContainIgnoringCase("voltage")
                .doesNotContainIgnoringCase("load")
                .doesNotContain("rpm")
                .doesNotContain("Infinity");
    }

    @Test
    void aWholeDrive() {
        assertThat(words(List.of(
                        new Soak(Duration.ofHours(6)),
                        new AtStart(new SignalRange(Signal.COOLANT, -7, 35)),
                        new StartDifference(Signal.COOLANT, Signal.INTAKE_AIR, 6),
                        new AtStart(new SignalRange(Signal.FUEL_LEVEL, 15, 85)),
                        new AtStart(SignalRange.atLeast(Signal.BAROMETER, 76)),
                        new AtStart(SignalRange.atLeast(Signal.MODULE_VOLTAGE, 11)),
                        Hold.unbroken(SignalRange.atMost(Signal.VEHICLE_SPEED, 2), Duration.ofMinutes(2)),
                        Reach.value(Signal.COOLANT, 71),
                        Hold.unbroken(
                                new SignalRange(Signal.VEHICLE_SPEED, 70, 110),
                                Duration.ofSeconds(60),
                                SignalRange.atLeast(Signal.COOLANT, 70)),
                        Hold.cumulative(SignalRange.atLeast(Signal.ENGINE_SPEED, 400), Duration.ofMinutes(10)))))
                .containsExactly(
                        "6 h: Leave the car parked, engine off, at least this long.",
                        "Cold: Start with an engine that has cooled down completely, best in the morning.",
                        "15 to 85 %: Before you start, have the fuel tank this full.",
                        "Low: Drive where it is not high in the mountains.",
                        "2 min: Parked in the open air, in P or neutral, let the engine idle, at least this long.",
                        "10 min: Drive gently, about this long, until the engine is warm.",
                        "1 min: On an open road, drive 70 to 110 km/h with a calm foot, as far as that is legal and safe, at least this long"
                                + " without a break.",
                        "10 min: Drive at least this long together; breaks do not matter.");
    }

    @Test
    void whatCountsOnlyWarmBeginsWithWarmingUp() {
        assertThat(words(List.of(Hold.cumulative(
                        new SignalRange(Signal.VEHICLE_SPEED, 30, 110),
                        Duration.ofSeconds(10),
                        SignalRange.atMost(Signal.PEDAL, 15),
                        SignalRange.atLeast(Signal.COOLANT, 70)))))
                .containsExactly(
                        "10 min: Drive gently, about this long, until the engine is warm.",
                        "30 s: With nobody close behind, take your foot off the pedal and let the car slow down in gear, several"
                                + " times, until it makes this much together. Brake whenever traffic asks for it.");
    }

    @Test
    @DisplayName(
            "limits are those that a speedometer shows, inside the exact ones, and times are those that a driver keeps")
    void nobodyReadsSecondsAndOddSpeedsWhileDriving() {
        assertThat(words(List.of(
                        Hold.unbroken(new SignalRange(Signal.VEHICLE_SPEED, 26, 103), Duration.ofSeconds(20)),
                        Hold.cumulative(new SignalRange(Signal.VEHICLE_SPEED, 87, 131), Duration.ofSeconds(61)),
                        Hold.unbroken(SignalRange.atLeast(Signal.VEHICLE_SPEED, 41), Duration.ofSeconds(300)),
                        Hold.unbroken(new SignalRange(Signal.VEHICLE_SPEED, 41, 44), Duration.ofSeconds(30)))))
                .containsExactly(
                        "30 s: In town or out of it, drive 30 to 100 km/h with a calm foot, as far as that is legal and safe, at least"
                                + " this long without a break.",
                        "90 s: On a motorway, drive 90 to 130 km/h with a calm foot, as far as that is legal and safe, at least this"
                                + " long together; breaks do not matter.",
                        "5 min: In town or out of it, drive at least 45 km/h with a calm foot, as far as that is legal and safe, at"
                                + " least this long without a break.",
                        "30 s: In town or out of it, drive 41 to 44 km/h with a calm foot, as far as that is legal and safe, at least"
                                + " this long without a break.");
    }
}
