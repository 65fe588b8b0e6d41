package dev.stayfixed.reports;

import dev.stayfixed.jobs.ShopSettings.Units;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.time.format.FormatStyle;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.springframework.context.i18n.LocaleContextHolder;

/** Times as they are printed: in the shop's zone, which is named. */
public record Times(ZoneId zone) {

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM yyyy");
    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern(", HH:mm z");

    public String day(@Nullable Instant time) {
        return time == null
                ? notRecorded()
                : day(LocaleContextHolder.getLocale()).format(time.atZone(zone));
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
        return time == null
                ? notRecorded()
                : day(time) + MINUTE.withLocale(LocaleContextHolder.getLocale()).format(time.atZone(zone));
    }

    /** English puts days in several orders; here it is the one that cannot be misread. */
    private static DateTimeFormatter day(Locale language) {
        return language.getLanguage().equals(Locale.ENGLISH.getLanguage())
                ? DAY.withLocale(language)
                : DateTimeFormatter.ofLocalizedDate(FormatStyle.MEDIUM).withLocale(language);
    }

    private static String notRecorded() {
        return Units.METRIC.words(ReportReason.NOT_RECORDED);
    }
}
