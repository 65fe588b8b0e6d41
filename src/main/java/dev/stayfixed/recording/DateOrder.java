package dev.stayfixed.recording;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** How a date is written. */
enum DateOrder {
    YEAR_FIRST,
    DOTTED,
    MONTH_FIRST,
    DAY_FIRST,
    NAMED_MONTH;

    /** The first letters of the months in English, German, French, Spanish, Italian, Dutch, Portuguese and Polish. */
    private static final List<List<String>> MONTHS = List.of(
            List.of("jan", "ene", "gen", "sty"),
            List.of("feb", "fev", "fév", "lut"),
            List.of("mar", "mär", "mrz", "maa", "mrt"),
            List.of("apr", "avr", "abr", "kwi"),
            List.of("may", "mai", "mag", "mei", "maj"),
            List.of("jun", "juin", "giu", "cze"),
            List.of("jul", "juil", "lug", "lip"),
            List.of("aug", "aou", "aoû", "ago", "sie"),
            List.of("sep", "set", "wrz"),
            List.of("oct", "okt", "ott", "out", "paź", "paz"),
            List.of("nov", "lis"),
            List.of("dec", "déc", "dez", "dic", "gru"));

    /** The date; empty where the text is none of this order. */
    Optional<LocalDate> date(String text) {
        String separators = separators(text);
        List<String> parts = parts(text);
        boolean weekday = parts.size() == 4 && Character.isLetter(parts.get(0).charAt(0));
        List<String> three = weekday ? parts.subList(1, 4) : parts;
        if (three.size() != 3) {
            return Optional.empty();
        }
        boolean slashed = !separators.isEmpty() && separators.chars().allMatch(c -> c == '/' || c == '-');
        return switch (this) {
            case YEAR_FIRST -> slashed && three.get(0).length() == 4 ? numbers(three, 0, 1, 2) : Optional.empty();
            case DOTTED -> separators.startsWith("..") ? numbers(three, 2, 1, 0) : Optional.empty();
            case MONTH_FIRST -> slashed ? numbers(three, 2, 0, 1) : Optional.empty();
            case DAY_FIRST -> slashed ? numbers(three, 2, 1, 0) : Optional.empty();
            case NAMED_MONTH -> named(three);
        };
    }

    /** What stands between the parts, one character for each. */
    private static String separators(String text) {
        StringBuilder found = new StringBuilder();
        for (char c : text.strip().toCharArray()) {
            if (c == '.' || c == '/' || c == '-') {
                found.append(c);
            }
        }
        return found.toString();
    }

    private static List<String> parts(String text) {
        List<String> parts = new ArrayList<>();
        StringBuilder part = new StringBuilder();
        for (char c : (text + " ").toCharArray()) {
            if (Character.isLetterOrDigit(c)) {
                part.append(c);
            } else if (part.length() > 0) {
                parts.add(part.toString());
                part.setLength(0);
            }
        }
        return parts;
    }

    private static Optional<LocalDate> named(List<String> parts) {
        for (int i = 0; i < 3; i++) {
            int month = month(parts.get(i));
            if (month > 0) {
                List<String> rest = new ArrayList<>(parts);
                rest.remove(i);
                boolean yearFirst = rest.get(0).length() == 4;
                return of(rest.get(yearFirst ? 0 : 1), String.valueOf(month), rest.get(yearFirst ? 1 : 0));
            }
        }
        return Optional.empty();
    }

    private static int month(String text) {
        String lower = text.toLowerCase(Locale.ROOT);
        for (int i = 0; i < MONTHS.size(); i++) {
            if (MONTHS.get(i).stream().anyMatch(lower::startsWith)) {
                return i + 1;
            }
        }
        return 0;
    }

    private static Optional<LocalDate> numbers(List<String> parts, int year, int month, int day) {
        return of(parts.get(year), parts.get(month), parts.get(day));
    }

    private static Optional<LocalDate> of(String year, String month, String day) {
        boolean written = (year.length() == 4 || year.length() == 2)
                && month.length() <= 2
                && day.length() <= 2
                && isDigits(year)
                && isDigits(month)
                && isDigits(day);
        if (!written) {
            return Optional.empty();
        }
        int full = Integer.parseInt(year) + (year.length() == 2 ? 2_000 : 0);
        try {
            return Optional.of(LocalDate.of(full, Integer.parseInt(month), Integer.parseInt(day)));
        } catch (DateTimeException notADate) {
            return Optional.empty();
        }
    }

    private static boolean isDigits(String text) {
        return text.chars().allMatch(c -> c >= '0' && c <= '9');
    }
}
