package dev.stayfixed.demo;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.Map;
import java.util.regex.Pattern;

/** Fills in what a scenario cannot know beforehand: ids and the present day. */
final class Blanks {

    private static final Pattern NAME = Pattern.compile("\\$\\{([^}]+)}");
    private static final Pattern TIME = Pattern.compile("@-(\\d{1,4})d (\\d{2}:\\d{2})");

    private final LocalDate today;
    private final Map<String, String> ids = new HashMap<>();

    Blanks(Instant now) {
        this.today = now.atOffset(ZoneOffset.UTC).toLocalDate();
    }

    void keep(String name, String id) {
        ids.put(name, id);
    }

    String fill(String text) {
        String named = NAME.matcher(text).replaceAll(match -> {
            String id = ids.get(match.group(1));
            if (id == null) {
                throw new IllegalStateException("found ${" + match.group(1) + "}, expected one of " + ids.keySet());
            }
            return id;
        });
        return TIME.matcher(named)
                .replaceAll(match -> today.minusDays(Long.parseLong(match.group(1)))
                        .atTime(LocalTime.parse(match.group(2)))
                        .toInstant(ZoneOffset.UTC)
                        .toString());
    }
}
