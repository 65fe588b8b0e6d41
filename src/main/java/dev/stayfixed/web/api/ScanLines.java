package dev.stayfixed.web.api;

import dev.stayfixed.obd.Scan;
import java.util.List;

/** What became of a pasted scan, line by line. */
record ScanLines(List<Line> lines) {

    /** One line, numbered from 1. */
    record Line(int number, String text, Scan.Line.Outcome outcome, String explanation) {
        static Line of(Scan.Line line) {
            return new Line(line.number(), line.text(), line.outcome(), line.explanation());
        }
    }

    static ScanLines of(Scan scan) {
        return new ScanLines(scan.lines().stream().map(Line::of).toList());
    }
}
