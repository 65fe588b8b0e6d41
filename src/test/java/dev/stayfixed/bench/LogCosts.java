package dev.stayfixed.bench;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import dev.stayfixed.archive.WholeLog;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Locale;
import java.util.Random;

/** One hour of ten rows a second, judged as the service judges a log, beside what its CSV library takes to cut the same bytes into cells. */
final class LogCosts {

    private static final int ROWS = 36_000;
    private static final Instant START = Instant.parse("2026-03-14T07:30:00Z");

    private LogCosts() {}

    static void run() throws Exception {
        byte[] seconds = log(ROWS, false);
        byte[] dated = log(ROWS, true);
        WholeLog bySeconds = WholeLog.of(seconds);
        WholeLog byDate = WholeLog.of(dated);
        new Rounds("one hour at 10 Hz, %d kB".formatted(seconds.length >> 10), 15)
                .with("cells alone", 10, () -> cells(seconds))
                .with("judged", 4, bySeconds::judged)
                .run();
        new Rounds("the same with dates, %d kB".formatted(dated.length >> 10), 15)
                .with("cells alone", 10, () -> cells(dated))
                .with("judged", 4, byDate::judged)
                .run();
    }

    private static long cells(byte[] log) throws IOException {
        long length = 0;
        try (CsvReader<CsvRecord> reader = CsvReader.builder().ofCsvRecord(new ByteArrayInputStream(log))) {
            for (CsvRecord row : reader) {
                for (int i = 0; i < row.getFieldCount(); i++) {
                    length += row.getField(i).length();
                }
            }
        }
        return length;
    }

    /** A car that warms up, drives and idles: a time and eleven signals. */
    static byte[] log(int rows, boolean dated) {
        Random random = new Random(10);
        StringBuilder log = new StringBuilder(dated ? "Timestamp" : "Time (s)")
                .append(",01-0C,01-0D,01-05,01-04,01-0F,01-46,01-11,01-2F,01-10,01-06,01-42\n");
        double speed = 0;
        for (int row = 0; row < rows; row++) {
            double second = row / 10.0;
            boolean drives = second % 600 > 60;
            speed = Math.max(0, Math.min(drives ? 95 : 0, speed + (drives ? 0.5 : -0.8) + random.nextDouble() - 0.5));
            log.append(dated ? START.plusMillis(row * 100L).toString() : String.format(Locale.ROOT, "%.1f", second));
            log.append(String.format(
                    Locale.ROOT,
                    ",%d,%.0f,%.0f,%.1f,%.0f,19,%.1f,%.1f,%.2f,%.1f,%.3f%n",
                    drives ? 1_800 + random.nextInt(60) : 780 + random.nextInt(20),
                    speed,
                    Math.min(90, 18 + second / 8),
                    (drives ? 40 : 22) + random.nextDouble(),
                    24 + random.nextDouble() * 2,
                    (drives ? 20 : 12) + random.nextDouble(),
                    54.1 - second / 3_600,
                    (drives ? 18 : 3) + random.nextDouble(),
                    random.nextDouble() * 8 - 4,
                    14 + random.nextDouble() / 10));
        }
        return log.toString().getBytes(StandardCharsets.UTF_8);
    }
}
