package dev.stayfixed.reports;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Times as they are printed: in the shop's zone, which is named. */
public record Times(ZoneId zone) {

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM yyyy", Locale.ENGLISH);
    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("d MMM yyyy, HH:mm z", Locale.ENGLISH);

    public String day(@Nullable Instant time) {
        return time == null ? "not recorded" : DAY.format(time.atZone(zone));
    }

    /** What stood in a field before or after it was put right: its words, or the time that they are. */
    public String kept(String text) {
        try {
            return text.isEmpty() ? "nothing" : minute(Instant.parse(text));
        } catch (DateTimeParseException e) {
            return text;
        }
    }

    public String minute(@Nullable Instant time) {
        return time == null ? "not recorded" : MINUTE.format(time.atZone(zone));
    }
}
