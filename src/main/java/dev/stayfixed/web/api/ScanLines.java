package dev.stayfixed.web.api;

import dev.stayfixed.obd.Scan;
import java.util.List;

/** What became of a pasted scan, line by line. */
public record ScanLines(List<Line> lines) {

    /** One line, numbered from 1. */
    public record Line(
            int number, String text, Scan.Line.Outcome outcome, String explanation, ReasonAnswer explanationFacts) {
        public static Line of(Scan.Line line) {
            return new Line(
                    line.number(),
                    line.text(),
                    line.outcome(),
                    ReasonAnswer.text(line.explanation()),
                    ReasonAnswer.of(line.explanation()));
        }
    }

    public static ScanLines of(Scan scan) {
        return new ScanLines(scan.lines().stream().map(Line::of).toList());
    }
}
