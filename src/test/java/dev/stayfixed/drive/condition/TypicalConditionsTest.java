package dev.stayfixed.drive.condition;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.drive.Finding;
import dev.stayfixed.drive.signal.Rows;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.drive.signal.SignalRow;
import dev.stayfixed.obd.MonitorGroup;
import java.time.Duration;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class TypicalConditionsTest {

    @Test
    void each_names_its_source_and_that_service_information_overrides_it() {
        assertThat(TypicalConditions.all()).hasSize(9).allSatisfy(typical -> {
            assertThat(typical.source()).isNotBlank();
            assertThat(typical.caution())
                    .contains(typical.source())
                    .endsWith("the service information of this vehicle overrides them.");
            assertThat(typical.set().conditions())
                    .allSatisfy(condition -> assertThat(condition.toDo()).endsWith("."));
        });
        assertThat(TypicalConditions.all()).extracting(TypicalCondition::group).doesNotHaveDuplicates();
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
                .map(typical ->
                        new NextDrive.Need(typical.group().name(), typical.set().conditions()))
                .toList();
        NextDrive next = NextDrive.of(needs);
        assertThat(next.plans()).hasSize(1);
        assertThat(next.plans().get(0).steps())
                .isSortedAccordingTo((a, b) -> a.phase().compareTo(b.phase()));
    }
}
