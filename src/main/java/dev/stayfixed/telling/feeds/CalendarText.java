package dev.stayfixed.telling.feeds;

import dev.stayfixed.platform.Texts;
import dev.stayfixed.telling.FollowUps;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;

/** iCalendar, RFC 5545. */
final class CalendarText {

    private static final DateTimeFormatter UTC =
            DateTimeFormatter.ofPattern("yyyyMMdd'T'HHmmss'Z'", Locale.ROOT).withZone(ZoneOffset.UTC);

    /** How long a follow-up takes in the calendar. */
    private static final Duration LENGTH = Duration.ofMinutes(30);

    /** Section 3.1: octets in a line, without the break. */
    private static final int LONGEST_LINE = 75;

    private final StringBuilder text = new StringBuilder();

    private final Texts texts;

    private CalendarText(Texts texts) {
        this.texts = texts;
    }

    static String of(List<FollowUps.Entry> entries, Instant now, Texts texts) {
        CalendarText calendar = new CalendarText(texts);
        calendar.line("BEGIN", "VCALENDAR");
        calendar.line("VERSION", "2.0");
        calendar.line("PRODID", "-//Stayfixed//Follow-ups//EN");
        calendar.line("METHOD", "PUBLISH");
        calendar.line("X-WR-CALNAME", escaped(texts.of("telling.calendar.name")));
        entries.forEach(entry -> calendar.event(entry, now));
        calendar.line("END", "VCALENDAR");
        return calendar.text.toString();
    }

    private void event(FollowUps.Entry entry, Instant now) {
        line("BEGIN", "VEVENT");
        line("UID", entry.followUp().id() + "@stayfixed.invalid");
        line("DTSTAMP", UTC.format(now));
        line("SEQUENCE", Integer.toString(entry.followUp().version() - 1));
        line("DTSTART", UTC.format(entry.followUp().dueAt()));
        line("DTEND", UTC.format(entry.followUp().dueAt().plus(LENGTH)));
        line("SUMMARY", escaped(texts.of("telling.calendar.summary", entry.vehicle())));
        String job = entry.reference()
                .map(r -> texts.of("telling.calendar.job", r) + "\n")
                .orElse("");
        line("DESCRIPTION", escaped(job + entry.followUp().note()));
        line("END", "VEVENT");
    }

    /** Section 3.3.11. */
    private static String escaped(String value) {
        return value.replace("\\", "\\\\")
                .replace(";", "\\;")
                .replace(",", "\\,")
                .replaceAll("\\r\\n|\\r|\\n", "\\\\n");
    }

    /** Section 3.1: long lines go on after a break and a space; no character is cut in two. */
    private void line(String name, String value) {
        int octets = 0;
        String line = name + ":" + value;
        for (int at = 0; at < line.length(); at += Character.charCount(line.codePointAt(at))) {
            String character = Character.toString(line.codePointAt(at));
            int size = character.getBytes(StandardCharsets.UTF_8).length;
            if (octets + size > LONGEST_LINE) {
                text.append("\r\n ");
                octets = 1;
            }
            text.append(character);
            octets += size;
        }
        text.append("\r\n");
    }
}
