package dev.stayfixed.reports;

import dev.stayfixed.jobs.ShopSettings.Units;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import org.jspecify.annotations.Nullable;
import org.springframework.context.i18n.LocaleContextHolder;

/** Times as they are printed: in the shop's zone, which is named. */
public record Times(ZoneId zone) {

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM yyyy");
    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("d MMM yyyy, HH:mm z");

    public String day(@Nullable Instant time) {
        return words(DAY, time);
    }

    /** What stood in a field before or after it was put right: its words, or the time that they are. */
    public String kept(String text) {
        try {
            return text.isEmpty() ? Units.METRIC.words(ReportReason.NOTHING_THERE) : minute(Instant.parse(text));
        } catch (DateTimeParseException e) {
            return text;
        }
    }

    public String minute(@Nullable Instant time) {
        return words(MINUTE, time);
    }

    private String words(DateTimeFormatter form, @Nullable Instant time) {
        return time == null
                ? Units.METRIC.words(ReportReason.NOT_RECORDED)
                : form.withLocale(LocaleContextHolder.getLocale()).format(time.atZone(zone));
    }
}
