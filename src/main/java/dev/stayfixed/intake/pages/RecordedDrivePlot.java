package dev.stayfixed.intake.pages;

import dev.stayfixed.archive.LogFacts;
import dev.stayfixed.archive.LogPicture;
import dev.stayfixed.drive.condition.AtStart;
import dev.stayfixed.drive.condition.Condition;
import dev.stayfixed.drive.condition.ConditionResult;
import dev.stayfixed.drive.condition.Hold;
import dev.stayfixed.drive.condition.Reach;
import dev.stayfixed.drive.condition.Soak;
import dev.stayfixed.drive.condition.StartDifference;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.intake.Drive;
import dev.stayfixed.jobs.ShopSettings;
import dev.stayfixed.judging.FaultReport;
import dev.stayfixed.reason.Unit;
import dev.stayfixed.wording.Scale;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** From the stored log of a drive to what is drawn: three signals, and where each enabling condition held or was missed. */
final class RecordedDrivePlot {

    private RecordedDrivePlot() {}

    static Recording of(Drive drive, LogFacts log, LogPicture picture, ShopSettings.Units units) {
        return new Recording(
                log.firstRow(),
                LogPicture.DRAWN.stream()
                        .flatMap(signal -> picture.of(signal).stream().map(trace -> signal(signal, trace, units)))
                        .toList(),
                drive.conditions().stream()
                        .flatMap(fault -> conditions(fault, units))
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

    private static Stream<Recording.Condition> conditions(FaultReport fault, ShopSettings.Units units) {
        return fault.report().results().stream()
                .map(result -> new Recording.Condition(
                        fault.fault().code().text(),
                        units.words(result.condition().said()),
                        Recording.Answer.of(result.finding()),
                        units.words(result.amount()),
                        limits(result.condition(), units),
                        stretches(result)));
    }

    private static Optional<Recording.Limits> limits(Condition condition, ShopSettings.Units units) {
        return condition
                .match(new RangeOf())
                .filter(r -> LogPicture.DRAWN.contains(r.signal()))
                .map(range -> {
                    Scale scale = units.scale(range.signal().unit());
                    return new Recording.Limits(
                            units.words(range.signal()), scale.shown(range.min()), scale.shown(range.max()));
                });
    }

    /** The values at which a condition holds; of a rise any, because each drive begins at another one. */
    private static final class RangeOf implements Condition.Cases<Optional<Range>> {

        @Override
        public Optional<Range> soak(Soak soak) {
            return Optional.empty();
        }

        @Override
        public Optional<Range> atStart(AtStart start) {
            return Optional.empty();
        }

        @Override
        public Optional<Range> startDifference(StartDifference difference) {
            return Optional.empty();
        }

        @Override
        public Optional<Range> reach(Reach reach) {
            return Optional.of(new Range(
                    reach.signal(),
                    reach.isRise() ? Double.NEGATIVE_INFINITY : reach.amount(),
                    Double.POSITIVE_INFINITY));
        }

        @Override
        public Optional<Range> hold(Hold hold) {
            return Optional.of(new Range(
                    hold.range().signal(), hold.range().min(), hold.range().max()));
        }
    }

    private record Range(Signal signal, double min, double max) {}

    /** As the log has it; what is decided at the start has none. */
    private static List<Recording.Stretch> stretches(ConditionResult result) {
        double needed = result.condition() instanceof Hold hold && hold.unbroken()
                ? hold.atLeast().toMillis() / 1000.0
                : 0;
        return result.held().stream()
                .map(i -> new Recording.Span(i.from() / 1000.0, i.to() / 1000.0))
                .map(span -> new Recording.Stretch(span, result.finding().isYes() && span.length() >= needed))
                .toList();
    }

    /** A condition in words, beside the plot. */
    record Row(String code, String condition, String answer, String tone, String reason, boolean counts) {}

    static List<Row> rows(Drive drive, ShopSettings.Units units) {
        return drive.conditions().stream()
                .flatMap(fault -> fault.report().results().stream().map(result -> row(fault, result, units)))
                .toList();
    }

    private static Row row(FaultReport fault, ConditionResult result, ShopSettings.Units units) {
        Recording.Answer answer = Recording.Answer.of(result.finding());
        return new Row(
                fault.fault().code().text(),
                units.words(result.condition().said()),
                units.words(answer.word()),
                answer.tone(),
                units.words(result.finding().reason()),
                fault.counts());
    }
}
