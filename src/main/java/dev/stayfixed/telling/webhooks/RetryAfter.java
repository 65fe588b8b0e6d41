package dev.stayfixed.telling.webhooks;

import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The Retry-After header of RFC 9110, section 10.2.3: seconds, or a date. */
final class RetryAfter {

    /** Nobody is given more time than this at once. */
    static final Duration LONGEST = Duration.ofHours(24);

    private RetryAfter() {}

    /** The time it asks for; empty where it says nothing that can be understood, or a time that has passed. */
    static Optional<Instant> of(@Nullable String header, Instant now) {
        if (header == null) {
            return Optional.empty();
        }
        String text = header.strip();
        return (text.matches("\\d{1,18}") ? Optional.of(seconds(text, now)) : date(text))
                .filter(now::isBefore)
                .map(at -> at.isAfter(now.plus(LONGEST)) ? now.plus(LONGEST) : at);
    }

    private static Instant seconds(String text, Instant now) {
        return now.plusSeconds(Math.min(Long.parseLong(text), LONGEST.toSeconds()));
    }

    private static Optional<Instant> date(String text) {
        try {
            return Optional.of(ZonedDateTime.parse(text, DateTimeFormatter.RFC_1123_DATE_TIME)
                    .toInstant());
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }
}
