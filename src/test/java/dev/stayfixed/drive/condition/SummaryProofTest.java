package dev.stayfixed.drive.condition;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.drive.Finding;
import dev.stayfixed.drive.signal.Signal;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Only what follows from the numbers for certain; computed by hand. */
class SummaryProofTest {

    private static final Condition RUNS =
            Hold.cumulative(SignalRange.atLeast(Signal.ENGINE_SPEED, 400), Duration.ofMinutes(5));

    private static Optional<Finding.Held> of(ConditionSet set, Map<DriveQuantity, Double> values) {
        return SummaryProof.of(set, new DriveSummary(values, List.of(), Optional.empty()))
                .map(Finding::held);
    }

    @Test
    void run_time_is_time_with_the_engine_turning() {
        ConditionSet set = ConditionSet.anyOrder("circuit", RUNS);
        assertThat(of(set, Map.of(DriveQuantity.RUN_TIME, 300.0))).contains(Finding.Held.YES);
        assertThat(of(set, Map.of(DriveQuantity.RUN_TIME, 299.0))).contains(Finding.Held.NO);
        assertThat(of(set, Map.of(DriveQuantity.DISTANCE, 30.0))).isEmpty();
    }

    @Test
    void one_missed_decides_and_one_untold_leaves_it_open() {
        ConditionSet set = ConditionSet.anyOrder("circuit", RUNS, Reach.value(Signal.COOLANT, 70));
        assertThat(of(set, Map.of(DriveQuantity.RUN_TIME, 600.0, DriveQuantity.PEAK_COOLANT, 85.0)))
                .contains(Finding.Held.YES);
        assertThat(of(set, Map.of(DriveQuantity.RUN_TIME, 600.0, DriveQuantity.PEAK_COOLANT, 60.0)))
                .contains(Finding.Held.NO);
        assertThat(of(set, Map.of(DriveQuantity.RUN_TIME, 600.0))).isEmpty();
    }

    @Test
    void what_a_sum_cannot_show_stays_untold() {
        Map<DriveQuantity, Double> much = Map.of(
                DriveQuantity.RUN_TIME, 7200.0, DriveQuantity.FAST_TIME, 7000.0, DriveQuantity.PEAK_COOLANT, 95.0);
        SignalRange fast = SignalRange.atLeast(Signal.VEHICLE_SPEED, 40);
        Duration time = Duration.ofMinutes(1);
        assertThat(of(ConditionSet.anyOrder("sum", Hold.cumulative(fast, time)), much))
                .contains(Finding.Held.YES);
        assertThat(of(ConditionSet.anyOrder("unbroken", Hold.unbroken(fast, time)), much))
                .isEmpty();
        assertThat(of(
                        ConditionSet.anyOrder(
                                "limit", Hold.cumulative(new SignalRange(Signal.VEHICLE_SPEED, 40, 90), time)),
                        much))
                .isEmpty();
        assertThat(of(
                        ConditionSet.anyOrder(
                                "faster", Hold.cumulative(SignalRange.atLeast(Signal.VEHICLE_SPEED, 70), time)),
                        much))
                .isEmpty();
        assertThat(of(
                        ConditionSet.anyOrder(
                                "while", Hold.cumulative(fast, time, SignalRange.atLeast(Signal.COOLANT, 70))),
                        much))
                .isEmpty();
        assertThat(of(
                        ConditionSet.anyOrder(
                                "within", Reach.value(Signal.COOLANT, 70).within(Duration.ofMinutes(5))),
                        much))
                .isEmpty();
        assertThat(of(
                        ConditionSet.inOrder("order", Reach.value(Signal.COOLANT, 70), Hold.cumulative(fast, time)),
                        much))
                .isEmpty();
    }
}
