package dev.stayfixed.recording;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.bench.GeneratedLog;
import dev.stayfixed.drive.signal.SignalRow;
import java.io.IOException;
import java.lang.ref.WeakReference;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A log of 50 MB is read without keeping its rows: rows that were handed on long ago can all be collected. */
class LongLogTest {

    private static final int EVERY = 10_000;

    @Test
    void rows_are_handed_on_and_let_go() throws IOException {
        GeneratedLog log = new GeneratedLog(50L << 20);
        List<WeakReference<SignalRow>> some = new ArrayList<>();
        long[] count = new long[1];
        LogReading reading = new LogReader(LogLimits.USUAL).readAsProposed(log, row -> {
            if (count[0]++ % EVERY == 0) {
                some.add(new WeakReference<>(row));
            }
        });
        assertThat(reading.report().rows()).isEqualTo(log.rows()).isGreaterThan(800_000);
        System.gc();
        assertThat(some).hasSizeGreaterThan(80);
        // one collection may leave a few; a reader that kept rows would leave all
        assertThat(some.stream().filter(row -> row.get() != null).count()).isLessThan(some.size() / 10);
        assertThat(reading.report().notes())
                .allSatisfy(note -> assertThat(note.examples()).hasSizeLessThanOrEqualTo(Note.MOST_EXAMPLES));
    }
}
