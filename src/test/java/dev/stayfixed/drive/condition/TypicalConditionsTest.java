package dev.stayfixed.drive.condition;

import static dev.stayfixed.English.words;
import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.English;
import dev.stayfixed.drive.Finding;
import dev.stayfixed.drive.signal.Rows;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.drive.signal.SignalRow;
import dev.stayfixed.obd.Ignition;
import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.obd.TroubleCode;
import java.time.Duration;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TypicalConditionsTest {

    @Test
    void each_names_its_source_and_that_service_information_overrides_it() {
        assertThat(TypicalConditions.all()).hasSize(13).allSatisfy(typical -> {
            assertThat(words(typical.caution()))
                    .contains(words(typical.source()))
                    .endsWith("the service information of this vehicle overrides them.");
            assertThat(typical.set().conditions())
                    .allSatisfy(condition -> assertThat(words(condition.toDo())).endsWith("."));
        });
        assertThat(TypicalConditions.all())
                .extracting(TypicalConditionsTest::name)
                .doesNotHaveDuplicates();
        assertThat(TypicalConditions.of(MonitorGroup.PM_FILTER)).isEmpty();
        assertThat(TypicalConditions.of(MonitorGroup.CATALYST)).hasSize(1);
    }

    /** New York State inspection programme: 45 to 85 °F, 12 °F, 2 °F, 45 to 65 mph; Ford, 2024: 40 to 100 °F. */
    @Test
    void the_figures_of_the_evaporative_system_are_those_of_the_sources() {
        assertThat(TypicalConditions.of(MonitorGroup.EVAPORATIVE_SYSTEM)
                        .get(0)
                        .set()
                        .conditions())
                .contains(
                        new Soak(Duration.ofHours(8)),
                        new AtStart(new SignalRange(Signal.COOLANT, celsius(45), celsius(85))),
                        new AtStart(new SignalRange(Signal.INTAKE_AIR, celsius(45), celsius(85))),
                        new StartDifference(Signal.COOLANT, Signal.INTAKE_AIR, 12 / 1.8),
                        new AtStart(new SignalRange(Signal.AMBIENT, celsius(40), celsius(100))),
                        Hold.unbroken(
                                new SignalRange(
                                        Signal.VEHICLE_SPEED, Math.round(45 * 1.609344), Math.round(65 * 1.609344)),
                                Duration.ofMinutes(10)));
    }

    @ParameterizedTest
    @CsvSource({
        "P0118, circuit that is live whenever the engine runs",
        "P0102, circuit that is live whenever the engine runs",
        "P0201, circuit that is live whenever the engine runs",
        "P0452, circuit that is live whenever the engine runs",
        "P0443, circuit that is switched as the engine warms up",
        "P0412, circuit that is switched as the engine warms up",
        "P0403, circuit that is switched as the engine warms up",
        "P0010, circuit that is switched as the engine warms up",
        "P0032, circuit that is switched as the engine warms up",
        "P0131, circuit that is switched as the engine warms up",
        "P0753, circuit that is switched as the engine warms up",
        "P1234-13, circuit that is live whenever the engine runs",
        "C0035, circuit of a speed sensor",
        "C0050, circuit of a speed sensor",
        "P0500, circuit of a speed sensor",
        "P0720, circuit of a speed sensor",
        "U0100, messages between control units",
        "B1200-87, messages between control units",
        "P0135, OXYGEN_SENSOR_HEATER",
        "P0420, CATALYST",
        "P0456, EVAPORATIVE_SYSTEM",
        "P0128, COMPONENTS",
        "P0741, none",
        "P0606, none",
        "P1234, none",
        "B1200, none",
        "C1201, none",
    })
    void a_code_gets_what_wakes_its_own_check(String code, String name) {
        TroubleCode parsed = TroubleCode.parse(code);
        assertThat(TypicalConditions.of(parsed, MonitorGroup.of(parsed, Ignition.SPARK))
                        .map(TypicalConditionsTest::name)
                        .orElse("none"))
                .isEqualTo(name);
    }

    @ParameterizedTest
    @ValueSource(strings = {"C0035", "C0045", "U0100", "U0401", "B1200", "C1201", "P0500"})
    void coolant_has_nothing_to_do_with_wheels_and_messages(String code) {
        TroubleCode parsed = TroubleCode.parse(code);
        assertThat(TypicalConditions.of(parsed, MonitorGroup.of(parsed, Ignition.SPARK)).stream()
                        .flatMap(typical -> typical.set().conditions().stream())
                        .map(condition -> words(condition.said()) + words(condition.toDo())))
                .noneMatch(said -> said.toLowerCase(java.util.Locale.ROOT).contains("coolant"));
    }

    private static String name(TypicalCondition typical) {
        return typical.circuit().map(English::words).orElse(typical.group().name());
    }

    private static double celsius(double fahrenheit) {
        return Math.round((fahrenheit - 32) / 1.8);
    }

    @Test
    void a_drive_made_for_the_catalyst_meets_it() {
        List<SignalRow> rows = Rows.everySecond(0, 20, "VEHICLE_SPEED=70 ENGINE_SPEED=2000 LOAD=30 COOLANT=85");
        Evaluation evaluation =
                TypicalConditions.of(MonitorGroup.CATALYST).get(0).set().evaluation(OptionalDouble.empty());
        rows.forEach(evaluation);
        assertThat(evaluation.report().overall().held()).isEqualTo(Finding.Held.YES);
    }

    @Test
    void typical_conditions_of_all_groups_make_one_cold_drive() {
        List<NextDrive.Need> needs = TypicalConditions.all().stream()
                .map(typical -> new NextDrive.Need(name(typical), typical.set().conditions()))
                .toList();
        NextDrive next = NextDrive.of(needs);
        assertThat(next.plans()).hasSize(1);
        assertThat(next.plans().get(0).steps())
                .isSortedAccordingTo((a, b) -> a.phase().compareTo(b.phase()));
    }
}
