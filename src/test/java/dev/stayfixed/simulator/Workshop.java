package dev.stayfixed.simulator;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What the invented shop sends to the service, step by step, and the scans it saved as files. Times are written as days before the day
 * on which the steps are played, so that the story is always recent.
 */
final class Workshop {

    private static final LocalDate TODAY = LocalDate.parse("2026-06-20");

    private final List<Map<String, Object>> steps = new ArrayList<>();
    private final Map<String, String> files = new LinkedHashMap<>();

    static Instant at(int daysAgo, String time) {
        return TODAY.minusDays(daysAgo).atTime(LocalTime.parse(time)).toInstant(ZoneOffset.UTC);
    }

    static String told(Instant instant) {
        LocalDate day = instant.atZone(ZoneOffset.UTC).toLocalDate();
        LocalTime time = instant.atZone(ZoneOffset.UTC).toLocalTime().truncatedTo(ChronoUnit.MINUTES);
        return "@-%dd %s".formatted(ChronoUnit.DAYS.between(day, TODAY), time);
    }

    static Map<String, Object> step(String method, String path, Map<String, Object> body, int expectStatus) {
        Map<String, Object> step = new LinkedHashMap<>();
        step.put("method", method);
        step.put("path", "/api/v1" + path);
        step.put("body", body);
        step.put("expectStatus", expectStatus);
        return step;
    }

    void play(Map<String, Object> step) {
        steps.add(step);
    }

    /** Keeps a file; the value to put where its content belongs. */
    String save(String path, String content) {
        if (files.put(path, content) != null) {
            throw new IllegalStateException("two files named " + path);
        }
        return "file:" + path;
    }

    List<Map<String, Object>> steps() {
        return steps;
    }

    Map<String, String> files() {
        return files;
    }
}
