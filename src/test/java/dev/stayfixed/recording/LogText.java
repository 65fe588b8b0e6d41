package dev.stayfixed.recording;

import static dev.stayfixed.English.words;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What came of a log, as lines that a test can read. */
final class LogText {

    private LogText() {}

    static List<String> lines(LogReport report) {
        return Stream.of(
                        report.implausible().stream().map(reason -> "Not judged: " + words(reason)),
                        Stream.of(report.rows() + " rows from " + report.firstTime() + " to " + report.lastTime()),
                        report.columns().stream().map(LogText::line),
                        report.unused().stream().map(header -> header + ": not used"),
                        report.missing().stream().map(header -> header + ": expected, not in this file"),
                        report.doubts().stream().map(doubt -> "In doubt: " + words(doubt)),
                        report.notes().stream().map(LogText::line))
                .flatMap(lines -> lines)
                .toList();
    }

    private static String line(ColumnUse use) {
        return "%s: %s in %s, %d values, %d blank, %d unreadable, %d implausible"
                .formatted(
                        use.mapping().header(),
                        words(use.mapping().signal()),
                        use.mapping().unit().spelling(),
                        use.values(),
                        use.blanks(),
                        use.unreadable(),
                        use.implausible());
    }

    static String line(Note note) {
        long left = note.total() - note.examples().size();
        return note.total() + " × " + words(note.kind()) + ": "
                + note.examples().stream().map(LogText::line).collect(Collectors.joining("; "))
                + (left > 0 ? "; and " + left + " more" : "");
    }

    private static String line(Note.Example example) {
        return "line " + example.line() + (example.column().isEmpty() ? "" : ", " + example.column()) + ": "
                + example.found();
    }
}
