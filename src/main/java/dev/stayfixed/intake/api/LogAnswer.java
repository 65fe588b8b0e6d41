package dev.stayfixed.intake.api;

import dev.stayfixed.archive.LogFacts;
import dev.stayfixed.drive.signal.Extent;
import dev.stayfixed.drive.signal.MotionTimes;
import dev.stayfixed.drive.signal.RowTimes;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.drive.signal.SignalFacts;
import dev.stayfixed.drive.signal.WarmUpRule;
import dev.stayfixed.recording.ColumnUse;
import dev.stayfixed.recording.LogReport;
import dev.stayfixed.recording.Note;
import dev.stayfixed.recording.NoteKind;
import dev.stayfixed.web.api.ReasonAnswer;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalLong;

/**
 * What was made of a log.
 *
 * @param judged false for a log that cannot be the record of a drive: it is stored, and counts for nothing
 * @param notJudged why not; {@code notJudgedFacts} says it for machines
 * @param from when the first row was written; the facts count from there
 */
record LogAnswer(
        boolean judged,
        List<String> notJudged,
        List<ReasonAnswer> notJudgedFacts,
        long rows,
        Instant from,
        String firstTime,
        String lastTime,
        List<Column> columns,
        List<String> unused,
        List<String> missing,
        List<Noted> notes,
        Facts facts) {

    /** A column that was read. */
    record Column(
            String header, Signal signal, String unit, long values, long blanks, long unreadable, long implausible) {
        static Column of(ColumnUse use) {
            return new Column(
                    use.mapping().header(),
                    use.mapping().signal(),
                    use.mapping().unit().spelling(),
                    use.values(),
                    use.blanks(),
                    use.unreadable(),
                    use.implausible());
        }
    }

    /** What was seen in some lines, how often, and the first few of them. */
    record Noted(NoteKind kind, String words, boolean rowsDropped, long total, List<Note.Example> examples) {
        static Noted of(Note note) {
            return new Noted(
                    note.kind(), ReasonAnswer.text(note.kind()), note.kind().dropsRow(), note.total(), note.examples());
        }
    }

    /**
     * Facts of the drive; times in ms, distances in km.
     *
     * @param unrecorded time between rows more than 5 s apart in which the engine may have run: the times are the least then
     */
    record Facts(
            RowTimes rows,
            MotionTimes times,
            long unrecorded,
            OptionalLong engineStart,
            OptionalDouble distance,
            OptionalDouble trapezoidDistance,
            Map<Signal, Extent> extents,
            Map<WarmUpRule, Long> warmUps,
            OptionalLong minimumCycleAt) {
        static Facts of(SignalFacts facts) {
            return new Facts(
                    facts.rows(),
                    facts.times(),
                    facts.unrecorded(),
                    facts.engineStart(),
                    facts.distance(),
                    facts.trapezoidDistance(),
                    facts.extents(),
                    facts.warmUps(),
                    facts.minimumCycleAt());
        }
    }

    static LogAnswer of(LogFacts log) {
        LogReport report = log.report();
        return new LogAnswer(
                report.isScorable(),
                report.implausible().stream().map(ReasonAnswer::text).toList(),
                report.implausible().stream().map(ReasonAnswer::of).toList(),
                report.rows(),
                log.firstRow(),
                report.firstTime(),
                report.lastTime(),
                report.columns().stream().map(Column::of).toList(),
                report.unused(),
                report.missing(),
                report.notes().stream().map(Noted::of).toList(),
                Facts.of(log.signals()));
    }
}
