package dev.stayfixed.histories;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What is known of one fault: drives and repairs in the order of time. */
record CarRecord(Watched fault, List<Entry> entries) {

    sealed interface Entry {
        List<Reading> readings();
    }

    /** A repair, read before it and after it. */
    record Repaired(Instant at, boolean cleared, Optional<Reading> before, Optional<Reading> after) implements Entry {
        @Override
        public List<Reading> readings() {
            return Stream.concat(before.stream(), after.stream()).toList();
        }
    }

    /** One recorded drive. */
    record Driven(
            String id, Instant start, Instant end, boolean clearedBefore, List<Reading> before, List<Reading> after)
            implements Entry {
        @Override
        public List<Reading> readings() {
            return Stream.concat(before.stream(), after.stream()).toList();
        }
    }

    CarRecord {
        entries = List.copyOf(entries);
    }

    /** Whether any reading of the record holds such an answer. */
    boolean holds(Class<? extends Answer> type) {
        return entries.stream()
                .flatMap(e -> e.readings().stream())
                .anyMatch(r -> r.first(type).isPresent());
    }

    boolean lists(Answer.Listing listing) {
        return entries.stream()
                .flatMap(e -> e.readings().stream())
                .flatMap(r -> r.all(Answer.Codes.class))
                .anyMatch(c -> c.listing() == listing);
    }

    /** For a failure message: a line an event, a line a reading. */
    @Override
    public String toString() {
        return fault + "\n" + entries.stream().map(CarRecord::words).collect(Collectors.joining("\n"));
    }

    private static String words(Entry entry) {
        if (entry instanceof Repaired r) {
            return "%s repair%s%s%s"
                    .formatted(
                            r.at(),
                            r.cleared() ? ", told: codes cleared" : "",
                            r.before().map(x -> "\n    before: " + words(x)).orElse(""),
                            r.after().map(x -> "\n    after:  " + words(x)).orElse(""));
        }
        Driven d = (Driven) entry;
        StringBuilder text = new StringBuilder("%s to %s %s%s"
                .formatted(d.start(), d.end(), d.id(), d.clearedBefore() ? ", told: codes cleared before it" : ""));
        d.before().forEach(r -> text.append("\n    BEFORE: ").append(words(r)));
        d.after().forEach(r -> text.append("\n    AFTER:  ").append(words(r)));
        return text.toString();
    }

    static String words(Reading reading) {
        return (reading.headers() ? "" : "(no headers) ")
                + reading.answers().stream().map(CarRecord::words).collect(Collectors.joining(" | "));
    }

    private static String words(Answer answer) {
        String unit = answer.unit().substring(2) + ":";
        if (answer instanceof Answer.Codes c) {
            Set<String> sorted = new TreeSet<>(c.codes());
            return "%s$%02X%s%s"
                    .formatted(unit, c.listing().service, sorted, c.extent() == Answer.Extent.WHOLE ? "" : c.extent());
        }
        if (answer instanceof Answer.SinceClear s) {
            return "%s$01 lamp %s count %d %s".formatted(unit, s.lamp() ? "ON" : "off", s.count(), s.bit());
        }
        if (answer instanceof Answer.ThisCycle t) {
            return unit + "$41 " + t.bit();
        }
        if (answer instanceof Answer.Statuses s) {
            return "%s$19%02X{%s}%s"
                    .formatted(
                            unit,
                            s.subfunction(),
                            s.bytes().entrySet().stream()
                                    .sorted(java.util.Map.Entry.comparingByKey())
                                    .map(e -> "%s=%02X".formatted(e.getKey(), e.getValue()))
                                    .collect(Collectors.joining(" ")),
                            s.extent() == Answer.Extent.WHOLE ? "" : s.extent());
        }
        if (answer instanceof Answer.Counter c) {
            return "$%02X=%d".formatted(c.pid(), c.value());
        }
        if (answer instanceof Answer.InUse i) {
            return "%s$09 IGN %d num %d".formatted(unit, i.ignitionCycles(), i.numerator());
        }
        if (answer instanceof Answer.TestValue t) {
            return "%s$06 %d (%d..%d)".formatted(unit, t.value(), t.min(), t.max());
        }
        if (answer instanceof Answer.Vin v) {
            return "VIN " + v.number().substring(12);
        }
        return answer instanceof Answer.NoData n ? n.request() + ": NO DATA" : unit + "CLEARED";
    }
}
