package dev.stayfixed.intake.pages;

import dev.stayfixed.archive.LogFacts;
import dev.stayfixed.archive.LogPicture;
import dev.stayfixed.drive.condition.AtStart;
import dev.stayfixed.drive.condition.ConditionResult;
import dev.stayfixed.drive.condition.Interval;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.intake.Drive;
import dev.stayfixed.jobs.ShopSettings;
import dev.stayfixed.judging.FaultReport;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Unit;
import dev.stayfixed.web.pages.PageWord;
import dev.stayfixed.wording.Scale;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** From the stored log of a drive to what is drawn: three signals, and where each enabling condition held or was missed. */
final class RecordedDrivePlot {

    private static final int LONGEST_WORDS = 125;

    private RecordedDrivePlot() {}

    static Recording of(Drive drive, LogFacts log, LogPicture picture, ShopSettings.Units units) {
        double end = log.signals().rows().wall() / 1000.0;
        return new Recording(
                log.firstRow(),
                LogPicture.DRAWN.stream()
                        .flatMap(signal -> picture.of(signal).stream().map(trace -> signal(signal, trace, units)))
                        .toList(),
                drive.conditions().stream()
                        .flatMap(fault -> conditions(fault, end, units))
                        .toList());
    }

    private static Recording.Signal signal(Signal signal, LogPicture.Trace trace, ShopSettings.Units units) {
        Scale scale = units.scale(signal.unit());
        return new Recording.Signal(
                units.words(signal),
                scale.unit().equals(signal.unit()) ? units.words(Unit.of(signal.unit())) : scale.unit(),
                trace.seconds(),
                Arrays.stream(trace.values()).map(scale::shown).toArray());
    }

    private static Stream<Recording.Condition> conditions(FaultReport fault, double end, ShopSettings.Units units) {
        return fault.report().results().stream()
                .map(result -> new Recording.Condition(
                        shortened(units.words(Reason.of(
                                DriveWord.FOR_FAULT,
                                Part.verbatim(fault.fault().code().text()),
                                result.condition().said()))),
                        held(result),
                        missed(result, end, units)));
    }

    private static String shortened(String words) {
        return words.length() <= LONGEST_WORDS ? words : words.substring(0, LONGEST_WORDS) + "…";
    }

    private static List<Recording.Span> held(ConditionResult result) {
        List<Recording.Span> spans = new ArrayList<>();
        result.held().forEach(i -> spans.add(new Recording.Span(i.from() / 1000.0, i.to() / 1000.0)));
        if (spans.isEmpty()) {
            result.metAt().ifPresent(at -> spans.add(new Recording.Span(at / 1000.0, at / 1000.0 + 1)));
        }
        return spans;
    }

    /** At the start where the start decides, where the longest hold broke off, or else at the end, when it was still open. */
    private static List<Recording.Miss> missed(ConditionResult result, double end, ShopSettings.Units units) {
        if (!result.finding().isNo()) {
            return List.of();
        }
        Optional<Interval> longest = result.held().stream().max(Comparator.comparing(Interval::length));
        double at = result.condition() instanceof AtStart
                ? 0
                : longest.map(i -> i.to() / 1000.0).orElse(end);
        return List.of(new Recording.Miss(
                Math.min(at, end), units.words(result.finding().reason())));
    }

    /** A condition in words, beside the plot. */
    record Row(String code, String condition, String answer, String tone, String reason, boolean counts) {}

    static List<Row> rows(Drive drive, ShopSettings.Units units) {
        return drive.conditions().stream()
                .flatMap(fault -> fault.report().results().stream().map(result -> row(fault, result, units)))
                .toList();
    }

    private static Row row(FaultReport fault, ConditionResult result, ShopSettings.Units units) {
        return new Row(
                fault.fault().code().text(),
                units.words(result.condition().said()),
                units.words(
                        result.finding().isYes()
                                ? DriveWord.HELD
                                : result.finding().isNo() ? DriveWord.MISSED : PageWord.NOT_KNOWN),
                result.finding().isYes() ? "good" : result.finding().isNo() ? "bad" : "quiet",
                units.words(result.finding().reason()),
                fault.counts());
    }
}
