package dev.stayfixed.drive.condition;

import static dev.stayfixed.English.words;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.stayfixed.drive.Finding;
import dev.stayfixed.drive.signal.Rows;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.drive.signal.SignalFacts;
import dev.stayfixed.drive.signal.SignalMeter;
import dev.stayfixed.drive.signal.SignalRow;
import dev.stayfixed.drive.signal.SignalRules;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** A thermostat that stuck open, before and after; a scenario of our own. */
class WarmUpCheckTest {

    private static final WarmUpCheck CHECK = new WarmUpCheck(
            SignalRange.atMost(Signal.COOLANT, 30),
            80,
            Duration.ofSeconds(20),
            new SignalRange(Signal.ENGINE_SPEED, 1_800, 2_200),
            Duration.ofSeconds(4),
            Optional.of(new SignalRange(Signal.AMBIENT, 10, 30)));

    private static WarmUpCheck.Run run(String... lines) {
        List<SignalRow> rows = Rows.of(lines);
        SignalMeter meter = SignalFacts.meter(SignalRules.EXACT, OptionalDouble.empty());
        Evaluation evaluation = CHECK.conditions().evaluation(OptionalDouble.empty());
        rows.forEach(meter.andThen(evaluation));
        return new WarmUpCheck.Run(evaluation.report(), meter.facts());
    }

    private static final WarmUpCheck.Run BEFORE = run(
            "0 ENGINE_SPEED=800 COOLANT=20 AMBIENT=18",
            "4 ENGINE_SPEED=2000",
            "9",
            "14",
            "19 COOLANT=58",
            "22 COOLANT=61");
    private static final WarmUpCheck.Run AFTER = run(
            "0 ENGINE_SPEED=800 COOLANT=25 AMBIENT=21", "4 ENGINE_SPEED=2000", "9 COOLANT=60", "14", "18 COOLANT=80");

    @Test
    void missed_before_and_met_after_is_mended() {
        Finding finding = CHECK.compare(BEFORE, AFTER);
        assertThat(finding.isYes()).isTrue();
        assertThat(words(finding.reason()))
                .isEqualTo(
                        "before: coolant temperature of 80 °C was not reached: it came to 61 °C, 19 K short, in 22 s;"
                                + " after: coolant temperature 25 °C at the start; needed at most 30 °C; ambient temperature 21 °C at"
                                + " the start; needed 10 to 30 °C; coolant temperature of 80 °C reached after 18 s of 20 s");
    }

    @Test
    void missed_after_is_not_mended_and_met_both_times_proves_nothing() {
        assertThat(CHECK.compare(BEFORE, BEFORE).isNo()).isTrue();
        assertThat(CHECK.compare(AFTER, BEFORE).isNo()).isTrue();
        assertThat(CHECK.compare(AFTER, AFTER).held()).isEqualTo(Finding.Held.UNKNOWN);
    }

    @Test
    void runs_that_began_differently_are_not_compared() {
        WarmUpCheck.Run warmer =
                run("0 ENGINE_SPEED=800 COOLANT=30 AMBIENT=28.5", "4 ENGINE_SPEED=2000", "9", "14 COOLANT=80");
        Finding finding = CHECK.compare(BEFORE, warmer);
        assertThat(finding.held()).isEqualTo(Finding.Held.UNKNOWN);
        assertThat(words(finding.reason()))
                .endsWith("; the runs are not alike: ambient temperature at the start differs by 10.5 K, at most 10 K");
        WarmUpCheck.Run alike =
                run("0 ENGINE_SPEED=800 COOLANT=30 AMBIENT=28", "4 ENGINE_SPEED=2000", "9", "14 COOLANT=80");
        assertThat(CHECK.compare(BEFORE, alike).isYes()).isTrue();
    }

    @Test
    void a_run_that_tells_nothing_proves_nothing() {
        assertThat(CHECK.compare(BEFORE, run("0 COOLANT=20 AMBIENT=18", "1")).held())
                .isEqualTo(Finding.Held.UNKNOWN);
        assertThat(CHECK.compare(BEFORE, run("0 AMBIENT=18 ENGINE_SPEED=2000", "1"))
                        .held())
                .isEqualTo(Finding.Held.UNKNOWN);
    }

    @Test
    void without_ambient_limits_only_the_coolant_is_asked_at_the_start() {
        WarmUpCheck check = new WarmUpCheck(
                CHECK.coldest(), 80, CHECK.within(), CHECK.engineSpeed(), CHECK.leadIn(), Optional.empty());
        assertThat(check.conditions().conditions())
                .containsExactly(
                        new AtStart(CHECK.coldest()),
                        new Reach(
                                Signal.COOLANT,
                                80,
                                false,
                                Optional.of(Duration.ofSeconds(20)),
                                Duration.ofSeconds(4),
                                List.of(CHECK.engineSpeed())));
        assertThat(CHECK.conditions().conditions()).hasSize(3);
    }

    @Test
    void a_check_that_makes_no_sense_is_refused() {
        assertThatThrownBy(() -> new WarmUpCheck(
                        SignalRange.atMost(Signal.COOLANT, 80),
                        80,
                        CHECK.within(),
                        CHECK.engineSpeed(),
                        CHECK.leadIn(),
                        Optional.empty()))
                .hasMessage(
                        "warm-up check: found a start up to 80.0 °C and a target of 80.0 °C, expected a colder start");
        assertThatThrownBy(() -> new WarmUpCheck(
                        SignalRange.atMost(Signal.AMBIENT, 30),
                        80,
                        CHECK.within(),
                        CHECK.engineSpeed(),
                        CHECK.leadIn(),
                        Optional.empty()))
                .hasMessage(
                        "warm-up check: found ambient temperature and engine speed, expected coolant and engine speed");
        assertThatThrownBy(() -> new WarmUpCheck(
                        CHECK.coldest(), 80, CHECK.within(), CHECK.coldest(), CHECK.leadIn(), Optional.empty()))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
