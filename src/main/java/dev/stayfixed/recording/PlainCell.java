package dev.stayfixed.recording;

import java.time.LocalDate;

/**
 * Numbers and times as nearly every cell of a log writes them, read without making texts of them. Whatever is written in another way is
 * left to {@link DecimalMark} and {@link TimeFormat}; what is read here they would read to the same value.
 */
final class PlainCell {

    /** No time that is read here. */
    static final long NO_TIME = Long.MIN_VALUE;

    /** A whole number of so many digits is exact as a double, and so is a power of ten: their quotient is rounded once. */
    private static final int MOST_DIGITS = 15;

    private static final double[] POWERS = {
        1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15
    };
    private static final int FIRST_YEAR = 1990;
    private static final int LAST_YEAR = 2099;
    private static final long DAY = 86_400_000;

    private PlainCell() {}

    /** Digits, perhaps behind a minus, perhaps with one mark among them: "12", "-3.5"; else NaN. */
    static double number(char[] text, int from, int to, DecimalMark mark) {
        boolean negative = from < to && text[from] == '-';
        int start = negative ? from + 1 : from;
        if (to - start > MOST_DIGITS + 1) {
            return Double.NaN;
        }
        long digits = 0;
        int marked = -1;
        for (int at = start; at < to; at++) {
            char c = text[at];
            if (isDigit(c)) {
                digits = 10 * digits + (c - '0');
            } else if (c == mark.character() && marked < 0) {
                marked = at;
            } else {
                return Double.NaN;
            }
        }
        int count = to - start - (marked < 0 ? 0 : 1);
        if (count == 0 || count > MOST_DIGITS || marked == start || marked == to - 1) {
            return Double.NaN;
        }
        double value = marked < 0 ? digits : digits / POWERS[to - marked - 1];
        return negative ? -value : value;
    }

    /** "12.5", "08:15:00.250", "2024-03-01T08:15:00.5Z", by the format; else {@link #NO_TIME}. */
    static long millis(char[] text, int from, int to, TimeFormat format, DecimalMark mark) {
        return switch (format) {
            case TIME_OF_DAY -> timeOfDay(text, from, to);
            case ISO_WITH_OFFSET -> from < to && text[to - 1] == 'Z' ? dated(text, from, to - 1) : NO_TIME;
            case ISO_LOCAL -> dated(text, from, to);
            case EPOCH_MILLIS, EPOCH_SECONDS, CLOCK_SECONDS, CLOCK_MILLIS, CLOCK_MINUTES -> {
                double number = number(text, from, to, mark);
                yield Double.isNaN(number) ? NO_TIME : format.millis(number).orElse(NO_TIME);
            }
            default -> NO_TIME;
        };
    }

    /** "2024-03-01T08:15:00.250", or with a blank before the time. */
    private static long dated(char[] text, int from, int to) {
        if (to - from < 19 || text[from + 4] != '-' || text[from + 7] != '-') {
            return NO_TIME;
        }
        int year = 100 * pair(text, from) + pair(text, from + 2);
        int month = pair(text, from + 5);
        int day = pair(text, from + 8);
        long time = text[from + 10] == 'T' || text[from + 10] == ' ' ? timeOfDay(text, from + 11, to) : NO_TIME;
        boolean whole = time != NO_TIME
                && year >= FIRST_YEAR
                && year <= LAST_YEAR
                && month >= 1
                && month <= 12
                && day >= 1
                && (day <= 28 || day <= LocalDate.of(year, month, 1).lengthOfMonth());
        return whole ? LocalDate.of(year, month, day).toEpochDay() * DAY + time : NO_TIME;
    }

    /** "08:15:00" or "08:15:00.250"; what is finer than a millisecond is left out. */
    private static long timeOfDay(char[] text, int from, int to) {
        if (to - from < 8 || text[from + 2] != ':' || text[from + 5] != ':') {
            return NO_TIME;
        }
        int hour = pair(text, from);
        int minute = pair(text, from + 3);
        int second = pair(text, from + 6);
        int millis = to - from == 8 ? 0 : fraction(text, from + 8, to);
        boolean whole = hour >= 0 && hour <= 23 && minute >= 0 && minute <= 59 && second >= 0 && second <= 59;
        return whole && millis >= 0 ? ((hour * 60L + minute) * 60 + second) * 1_000 + millis : NO_TIME;
    }

    /** ms of ".250"; negative where it is none. */
    private static int fraction(char[] text, int from, int to) {
        if (text[from] != '.' || to - from < 2 || to - from > 10) {
            return -1;
        }
        int millis = 0;
        for (int place = 1; place <= 9; place++) {
            char c = from + place < to ? text[from + place] : '0';
            if (!isDigit(c)) {
                return -1;
            }
            millis = place <= 3 ? 10 * millis + (c - '0') : millis;
        }
        return millis;
    }

    /** The number of two digits; far below zero where one is none. */
    private static int pair(char[] text, int at) {
        boolean digits = isDigit(text[at]) && isDigit(text[at + 1]);
        return digits ? 10 * (text[at] - '0') + (text[at + 1] - '0') : -1_000_000;
    }

    private static boolean isDigit(char c) {
        return c >= '0' && c <= '9';
    }
}
