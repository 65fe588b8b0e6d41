package dev.stayfixed.archive;

import dev.stayfixed.platform.problem.Mistake;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.recording.TimeFormat;
import dev.stayfixed.wording.Wording;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import org.jspecify.annotations.Nullable;

/**
 * From the clock of a log to a time in the world, with the help of what the sender says.
 *
 * @param engineStart ms after the first row
 */
record LogTime(TimeFormat format, long firstMillis, long engineStart) {

    private static final String DATE = "a date between the years 1990 and 2100, such as 2026-03-14";
    private static final String ZONE = "a time zone, such as Europe/Berlin or +01:00";

    /**
     * When the first row was written.
     *
     * @throws Refused where nobody says enough
     */
    Instant firstRow(DriveSubmission said) {
        if (said.start() != null) {
            return said.start().minusMillis(engineStart);
        }
        return switch (format) {
            case ISO_WITH_OFFSET, EPOCH_MILLIS, EPOCH_SECONDS -> Instant.ofEpochMilli(firstMillis);
            case ISO_LOCAL, DOTTED_LOCAL, MONTH_FIRST_LOCAL, DAY_FIRST_LOCAL, NAMED_MONTH_LOCAL ->
                local().atZone(zone(said.zone())).toInstant();
            case TIME_OF_DAY ->
                date(said.date())
                        .atTime(local().toLocalTime())
                        .atZone(zone(said.zone()))
                        .toInstant();
            case CLOCK_SECONDS, CLOCK_MILLIS, CLOCK_MINUTES ->
                throw Refused.content(new Mistake(
                        "start",
                        null,
                        "the time of engine start: the log's clock counts from " + Wording.METRIC.words(format)));
        };
    }

    private LocalDateTime local() {
        return LocalDateTime.ofEpochSecond(
                Math.floorDiv(firstMillis, 1000L), (int) Math.floorMod(firstMillis, 1000L) * 1_000_000, ZoneOffset.UTC);
    }

    private static LocalDate date(@Nullable String text) {
        try {
            LocalDate date = text == null ? null : LocalDate.parse(text);
            if (date != null && date.getYear() >= 1990 && date.getYear() <= 2100) {
                return date;
            }
        } catch (DateTimeException notADate) {
            throw Refused.content(new Mistake("date", text, DATE));
        }
        throw Refused.content(new Mistake("date", text, DATE + "; the log has a time of day only"));
    }

    private static ZoneId zone(@Nullable String text) {
        try {
            if (text != null) {
                return ZoneId.of(text);
            }
        } catch (DateTimeException notAZone) {
            throw Refused.content(new Mistake("zone", text, ZONE));
        }
        throw Refused.content(new Mistake("zone", null, ZONE + "; the log's times do not name theirs"));
    }
}
