package dev.stayfixed.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.stayfixed.drive.signal.Extent;
import dev.stayfixed.drive.signal.MotionTimes;
import dev.stayfixed.drive.signal.RowTimes;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.drive.signal.SignalFacts;
import dev.stayfixed.drive.signal.SignalMeter;
import dev.stayfixed.drive.signal.SignalRules;
import dev.stayfixed.drive.signal.WarmUpRule;
import java.io.IOException;
import java.io.InputStream;
import java.time.Instant;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;

/** Logs written by hand, whose facts were worked out by hand. */
class SmallDrivesTest {

    private record Judged(LogReading reading, SignalFacts facts) {}

    private static Judged judge(String name) throws IOException {
        SignalMeter meter = SignalFacts.meter(SignalRules.EXACT, OptionalDouble.empty());
        try (InputStream in =
                Objects.requireNonNull(SmallDrivesTest.class.getResourceAsStream("/recording/" + name), name)) {
            LogReading reading = new LogReader(LogLimits.USUAL).readAsProposed(in, meter);
            return new Judged(reading, meter.facts());
        }
    }

    /**
     * Over midnight, one signal a row, the engine stopped at a light. Running 23:59:57 to 00:00:03 and 00:00:05 to 00:00:11 = 12 s.
     * Idle 23:59:57 to 00:00:01 = 4 s, then 00:00:05 to 00:00:09 = 4 s; standing 23:59:55 to 00:00:01 and 00:00:03 to 00:00:09 = 6 s
     * each. Distance 2 s at 36 and 2 s at 72 km/h = 60 m. Coolant 20 to 72 °C at 00:00:09, 14 s after the first row.
     */
    @Test
    void a_stop_start_drive_over_midnight() throws IOException {
        Judged drive = judge("stop-start.csv");
        assertThat(drive.reading().report().isScorable()).isTrue();
        assertThat(drive.facts().rows()).isEqualTo(new RowTimes(8, 16_000, 16_000, 0, 0, 0, 4_000, 0, 0));
        assertThat(drive.facts().times()).isEqualTo(new MotionTimes(12_000, 2_000, 4_000, OptionalLong.empty(), 6_000));
        assertThat(drive.facts().distance().orElseThrow()).isCloseTo(0.06, within(1e-12));
        assertThat(drive.facts().engineStart()).isEqualTo(OptionalLong.of(2_000));
        assertThat(drive.facts().warmUps())
                .containsEntry(WarmUpRule.SPARK_EXACT, 14_000L)
                .containsEntry(WarmUpRule.SPARK_ROUNDED, 10_000L);
        assertThat(drive.reading().report().notes())
                .extracting(LogText::line)
                .containsExactly("1 × time of day starts over, taken as midnight: line 5: \"00:00:01\"");
    }

    /**
     * Semicolons, decimal commas, a comment, a doubled degree sign, a time that goes back by a second, a gap of 5.5 s and a cut-off
     * last row. Counted: 2.5 + 2.5 + 0 + 2 s. Distance 2.5 s at 36 km/h = 25 m.
     */
    @Test
    void a_log_with_decimal_commas() throws IOException {
        Judged drive = judge("comma.csv");
        assertThat(drive.reading().proposal().mapping().decimalMark()).isEqualTo(DecimalMark.COMMA);
        assertThat(drive.reading().proposal().confidence()).isEqualTo(Confidence.CERTAIN);
        assertThat(drive.facts().rows()).isEqualTo(new RowTimes(6, 12_500, 7_000, 1, 5_500, 5_500, 2_500, 1, 1_000));
        assertThat(drive.facts().distance().orElseThrow()).isCloseTo(0.025, within(1e-12));
        assertThat(drive.facts().extent(Signal.COOLANT)).contains(new Extent(15.5, 21, 15.5, 21, 5));
        assertThat(LogText.lines(drive.reading().report()))
                .containsExactly(
                        "6 rows from 0,0 to 12,5",
                        "Geschwindigkeit [km/h]: vehicle speed in km/h, 6 values, 0 blank, 0 unreadable, 0 implausible",
                        "Drehzahl [1/min]: engine speed in rpm, 6 values, 0 blank, 0 unreadable, 0 implausible",
                        "Kühlmitteltemperatur [°C]: coolant temperature in °C, 5 values, 1 blank, 0 unreadable, 0 implausible",
                        "1 × line before the header, not used: line 1: \"# written by hand\"",
                        "1 × last row cut off, dropped: line 9: \"13,0,0\"",
                        "1 × time before that of the row before: values taken, no time added: line 6: \"4,0\"",
                        "1 × more than 5 s without a row: counts for nothing: line 7: \"10,5\"");
    }

    /** CRLF; distance in metres, because 12 million km is no car; 2023-11-14T22:13:20Z is 1,700,000,000 s. */
    @Test
    void a_log_with_names_of_the_vehicle_signal_specification() throws IOException {
        Judged drive = judge("vss6.csv");
        assertThat(drive.reading().report().start()).contains(Instant.parse("2023-11-14T22:13:20Z"));
        assertThat(drive.facts().extent(Signal.ODOMETER)).contains(new Extent(12345, 12345.057, 12345, 12345.057, 4));
        assertThat(drive.facts().milOn()).contains(true);
        assertThat(drive.facts().times().running()).isEqualTo(4_000);
    }
}
