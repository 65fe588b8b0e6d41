package dev.stayfixed.drive.signal;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class TimelineTest {

    private final Timeline timeline = new Timeline();

    @Test
    void the_first_row_starts_the_time() {
        Timeline.Step first = timeline.moveTo(7_000);
        assertThat(first).isEqualTo(new Timeline.Step(0, 0, true, 0));
        assertThat(first.isNonIncreasing()).isFalse();
        assertThat(first.isGap()).isFalse();
    }

    @Test
    void a_step_is_a_gap_above_five_seconds() {
        timeline.moveTo(0);
        assertThat(timeline.moveTo(5_000).isGap()).isFalse();
        assertThat(timeline.moveTo(10_001).isGap()).isTrue();
    }

    @Test
    void a_clock_that_goes_back_stands_still_until_it_has_caught_up() {
        timeline.moveTo(1_000);
        timeline.moveTo(4_000);
        assertThat(timeline.moveTo(2_000)).isEqualTo(new Timeline.Step(3_000, 3_000, false, 2_000));
        assertThat(timeline.moveTo(3_500).isNonIncreasing()).isTrue();
        assertThat(timeline.moveTo(4_500)).isEqualTo(new Timeline.Step(3_000, 3_500, false, 0));
    }

    @Test
    void values_are_kept_until_a_row_gives_another() {
        assertThat(timeline.held(Signal.LOAD)).isEmpty();
        assertThat(timeline.valueOrNaN(Signal.LOAD)).isNaN();
        timeline.hold(Rows.of("0 LOAD=30").get(0));
        timeline.hold(Rows.of("1 COOLANT=30").get(0));
        assertThat(timeline.held(Signal.LOAD)).hasValue(30);
        assertThat(timeline.valueOrNaN(Signal.COOLANT)).isEqualTo(30);
    }
}
