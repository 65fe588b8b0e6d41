package dev.stayfixed.archive;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.drive.signal.SignalRow;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is kept of a log for its picture. */
class LogPictureTest {

    @Test
    void aShortLogIsKeptRowByRow() {
        LogPicture.Drawing drawing = new LogPicture.Drawing();
        for (int i = 0; i < 9; i++) {
            drawing.accept(row(5_000_000_000L + i * 100L, Signal.COOLANT, 20.125 - i));
        }
        LogPicture picture = LogPicture.read(drawing.picture().bytes());
        assertThat(picture.of(Signal.ENGINE_SPEED)).isEmpty();
        LogPicture.Trace trace = picture.of(Signal.COOLANT).orElseThrow();
        assertThat(trace.seconds()).containsExactly(0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8);
        assertThat(trace.values())
                .containsExactly(20.125, 19.125, 18.125, 17.125, 16.125, 15.125, 14.125, 13.125, 12.125);
    }

    @ParameterizedTest
    @ValueSource(ints = {9_999, 10_000, 10_001, 50_000, 200_000})
    void noPeakOfALongLogIsLost(int rows) {
        Random random = new Random(rows);
        LogPicture.Drawing drawing = new LogPicture.Drawing();
        long now = 0;
        double highest = 0;
        int lowestAt = random.nextInt(rows);
        for (int i = 0; i < rows; i++) {
            now += random.nextInt(200);
            double value = i == lowestAt ? -7.5 : random.nextInt(5_000);
            highest = Math.max(highest, value);
            drawing.accept(row(now, Signal.ENGINE_SPEED, value));
        }
        LogPicture.Trace trace = LogPicture.read(drawing.picture().bytes())
                .of(Signal.ENGINE_SPEED)
                .orElseThrow();
        assertThat(trace.values()).hasSizeLessThanOrEqualTo(2 * LogPicture.Drawing.MOST_STRETCHES);
        assertThat(Arrays.stream(trace.values()).max()).hasValue(highest);
        assertThat(Arrays.stream(trace.values()).min()).hasValue(-7.5);
        assertThat(trace.seconds()).isSorted();
        assertThat(trace.seconds().length).isEqualTo(trace.values().length).isGreaterThan(Math.min(rows, 9_000) / 2);
    }

    @Test
    void aClockThatRunsBackAddsNoTime() {
        LogPicture.Drawing drawing = new LogPicture.Drawing();
        drawing.accept(row(1_000, Signal.VEHICLE_SPEED, 1));
        drawing.accept(row(3_000, Signal.VEHICLE_SPEED, 2));
        drawing.accept(row(2_000, Signal.VEHICLE_SPEED, 3));
        LogPicture.Trace trace = drawing.picture().of(Signal.VEHICLE_SPEED).orElseThrow();
        assertThat(trace.seconds()).containsExactly(0, 2, 2);
        assertThat(trace.values()).containsExactly(1, 2, 3);
    }

    private static SignalRow row(long millis, Signal signal, double value) {
        return new SignalRow(millis, new EnumMap<>(Map.of(signal, value)));
    }
}
