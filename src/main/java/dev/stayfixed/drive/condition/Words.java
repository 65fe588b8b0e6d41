package dev.stayfixed.drive.condition;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.util.List;
import java.util.Locale;

/** Numbers and times as a technician or a driver reads them. */
final class Words {

    private Words() {}

    /** At most one decimal, none where it is zero. */
    static String number(double value) {
        double rounded = Math.round(value * 10) / 10.0;
        return rounded == Math.rint(rounded) ? String.valueOf((long) rounded) : String.valueOf(rounded);
    }

    /** A value beside a limit that it misses: as many decimals as it takes for the two to differ as they are printed. */
    static String beside(double value, double limit) {
        String plain = number(value);
        if (value == limit || !plain.equals(number(limit))) {
            return plain;
        }
        for (int decimals = 2; decimals <= 6; decimals++) {
            BigDecimal precise = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN);
            if (precise.compareTo(BigDecimal.valueOf(limit).setScale(decimals, RoundingMode.HALF_EVEN)) != 0) {
                return precise.toPlainString();
            }
        }
        return plain;
    }

    /** "599.6 s of 600 s": a time beside the time that was needed, in seconds where they would else read the same. */
    static String timeOf(long millis, long needed) {
        String found = time(millis);
        String wanted = time(needed);
        return millis == needed || !found.equals(wanted)
                ? found + " of " + wanted
                : beside(millis / 1000.0, needed / 1000.0) + " s of " + number(needed / 1000.0) + " s";
    }

    /** A length of time: seconds up to two minutes, then minutes and seconds, then hours and minutes. */
    static String time(Duration duration) {
        return time(duration.toMillis());
    }

    static String time(long millis) {
        double seconds = millis / 1000.0;
        if (seconds < 120) {
            return beside(seconds, 0) + " s";
        }
        long whole = Math.round(seconds);
        return whole < 7_200
                ? whole / 60 + " min" + (whole % 60 == 0 ? "" : " " + whole % 60 + " s")
                : whole / 3_600 + " h" + (whole % 3_600 / 60 == 0 ? "" : " " + whole % 3_600 / 60 + " min");
    }

    /** A moment of the drive, from its first row: 12:31, or 1:02:31. */
    static String moment(long millis) {
        long seconds = millis / 1000;
        return seconds < 3_600
                ? String.format(Locale.ROOT, "%d:%02d", seconds / 60, seconds % 60)
                : String.format(Locale.ROOT, "%d:%02d:%02d", seconds / 3_600, seconds / 60 % 60, seconds % 60);
    }

    /** ", while a and b", or nothing. */
    static String during(List<SignalRange> ranges) {
        return ranges.isEmpty()
                ? ""
                : ", with "
                        + String.join(
                                " and ", ranges.stream().map(SignalRange::words).toList());
    }
}
