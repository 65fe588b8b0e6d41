package dev.stayfixed.recording;

import dev.stayfixed.reason.Kind;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.ResolverStyle;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** How a log writes its time. */
public enum TimeFormat implements Kind {
    ISO_WITH_OFFSET,
    ISO_LOCAL,
    DOTTED_LOCAL,
    MONTH_FIRST_LOCAL,
    DAY_FIRST_LOCAL,
    NAMED_MONTH_LOCAL,
    TIME_OF_DAY,
    EPOCH_MILLIS,
    EPOCH_SECONDS,
    CLOCK_SECONDS,
    CLOCK_MILLIS,
    CLOCK_MINUTES;

    private static final Pattern CLOCK = Pattern.compile(
            "(\\d{1,2}):([0-5]\\d)(?::([0-5]\\d)(?:[.,](\\d{1,9}))?)?(?:\\s?([AaPp])\\.?\\s?[Mm]\\.?)?");
    private static final int LONGEST = 60;
    private static final DateTimeFormatter ISO = new DateTimeFormatterBuilder()
            .append(DateTimeFormatter.ISO_LOCAL_DATE)
            .appendLiteral('T')
            .append(DateTimeFormatter.ISO_LOCAL_TIME)
            .appendOptional(DateTimeFormatter.ofPattern("[XXX][XX][X]"))
            .toFormatter()
            .withResolverStyle(ResolverStyle.STRICT);
    private static final long EARLIEST = LocalDateTime.of(1990, 1, 1, 0, 0).toEpochSecond(ZoneOffset.UTC) * 1000;
    private static final long LATEST = LocalDateTime.of(2100, 1, 1, 0, 0).toEpochSecond(ZoneOffset.UTC) * 1000;

    /** Whether a time of this format names a moment in the world. */
    public boolean isInstant() {
        return this == ISO_WITH_OFFSET || this == EPOCH_MILLIS || this == EPOCH_SECONDS;
    }

    /** Whether date and time of day stand in it, as people write them. */
    public boolean hasDate() {
        return compareTo(TIME_OF_DAY) < 0;
    }

    /** Whether a time of this format is only a number. */
    boolean isNumber() {
        return compareTo(EPOCH_MILLIS) >= 0;
    }

    /** The time in ms, or empty where the text is not one; a date outside 1990 to 2099 is not one. */
    OptionalLong millis(String text, DecimalMark mark) {
        if (text.length() > LONGEST) {
            return OptionalLong.empty();
        }
        return switch (this) {
            case ISO_WITH_OFFSET -> iso(text, true);
            case ISO_LOCAL -> {
                OptionalLong strict = iso(text, false);
                yield strict.isPresent() ? strict : local(text, DateOrder.YEAR_FIRST);
            }
            case DOTTED_LOCAL -> local(text, DateOrder.DOTTED);
            case MONTH_FIRST_LOCAL -> local(text, DateOrder.MONTH_FIRST);
            case DAY_FIRST_LOCAL -> local(text, DateOrder.DAY_FIRST);
            case NAMED_MONTH_LOCAL -> local(text, DateOrder.NAMED_MONTH);
            case TIME_OF_DAY -> timeOfDay(text);
            case EPOCH_MILLIS, EPOCH_SECONDS, CLOCK_SECONDS, CLOCK_MILLIS, CLOCK_MINUTES -> millis(number(text, mark));
        };
    }

    private static OptionalLong iso(String text, boolean offset) {
        if (text.length() < 16 || text.charAt(4) != '-') {
            return OptionalLong.empty();
        }
        boolean hasOffset =
                text.endsWith("Z") || text.endsWith("z") || text.lastIndexOf('+') > 10 || text.lastIndexOf('-') > 10;
        if (hasOffset != offset) {
            return OptionalLong.empty();
        }
        String whole = text.substring(0, 10)
                + 'T'
                + text.substring(11).replace(',', '.').replace(" ", "");
        try {
            long millis = offset
                    ? OffsetDateTime.parse(whole, ISO).toInstant().toEpochMilli()
                    : LocalDateTime.parse(whole, ISO).toInstant(ZoneOffset.UTC).toEpochMilli();
            return dated(OptionalLong.of(millis));
        } catch (DateTimeException | ArithmeticException notATime) {
            return OptionalLong.empty();
        }
    }

    /** A date, and a time of day behind it. */
    private static OptionalLong local(String text, DateOrder order) {
        int time = text.indexOf(':');
        while (time > 0 && Character.isDigit(text.charAt(time - 1))) {
            time--;
        }
        if (time < 6) {
            return OptionalLong.empty();
        }
        OptionalLong millis = timeOfDay(text.substring(time).strip());
        Optional<LocalDate> date = order.date(text.substring(0, time));
        return millis.isPresent() && date.isPresent()
                ? dated(OptionalLong.of(date.get().toEpochDay() * 86_400_000 + millis.getAsLong()))
                : OptionalLong.empty();
    }

    private static OptionalLong timeOfDay(String text) {
        Matcher clock = CLOCK.matcher(text);
        if (!clock.matches()) {
            return OptionalLong.empty();
        }
        int hour = Integer.parseInt(clock.group(1));
        String half = clock.group(5);
        if (hour > 23 || (half != null && (hour < 1 || hour > 12))) {
            return OptionalLong.empty();
        }
        if (half != null) {
            hour = hour % 12 + (half.equalsIgnoreCase("p") ? 12 : 0);
        }
        String fraction = clock.group(4);
        int millis = fraction == null ? 0 : Integer.parseInt((fraction + "00").substring(0, 3));
        int second = clock.group(3) == null ? 0 : Integer.parseInt(clock.group(3));
        return OptionalLong.of(((hour * 60L + Integer.parseInt(clock.group(2))) * 60 + second) * 1_000 + millis);
    }

    /** The time in ms that a number says in this format; empty as with {@link #millis(String, DecimalMark)}. */
    OptionalLong millis(double number) {
        return switch (this) {
            case EPOCH_MILLIS -> dated(scaled(number, 1));
            case EPOCH_SECONDS -> dated(scaled(number, 1_000));
            case CLOCK_SECONDS -> scaled(number, 1_000);
            case CLOCK_MILLIS -> scaled(number, 1);
            case CLOCK_MINUTES -> scaled(number, 60_000);
            default -> OptionalLong.empty();
        };
    }

    private static double number(String text, DecimalMark mark) {
        boolean alone = text.isEmpty() || Character.isDigit(text.charAt(text.length() - 1));
        return mark.parse(alone || Glued.unit(text).isEmpty() ? text : Glued.number(text));
    }

    private static OptionalLong scaled(double number, long scale) {
        double value = number * scale;
        return Math.abs(value) < 1e15 ? OptionalLong.of(Math.round(value)) : OptionalLong.empty();
    }

    private static OptionalLong dated(OptionalLong millis) {
        return millis.isPresent() && millis.getAsLong() >= EARLIEST && millis.getAsLong() < LATEST
                ? millis
                : OptionalLong.empty();
    }
}
