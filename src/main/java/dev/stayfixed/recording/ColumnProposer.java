package dev.stayfixed.recording;

import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Shape;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Says of one column which signal it carries and in which unit, how sure that is, and why. */
final class ColumnProposer {

    private static final double FARTHEST_CAR = 2_000_000;

    private final LogSample sample;
    private final boolean before6;

    ColumnProposer(LogSample sample) {
        this.sample = sample;
        this.before6 = sample.columns().stream()
                .anyMatch(c -> VssNames.isBefore6(c.header().text()));
    }

    ColumnProposal propose(LogSample.Column column) {
        String header = column.header().text();
        Optional<KnownName> known = VssNames.named(header).or(() -> PidNames.named(header));
        return known.map(name -> named(column, name))
                .orElseGet(() -> CommonWords.named(column.header())
                        .map(naming -> worded(column, naming))
                        .orElse(ColumnProposal.unused(header, Reason.of(ColumnReason.NO_SIGNAL))));
    }

    private ColumnProposal named(LogSample.Column column, KnownName name) {
        if (name.metresSince6() && column.header().unit().isEmpty()) {
            return travelled(column, name);
        }
        Optional<SourceUnit> stated = column.header().unit();
        SourceUnit unit = stated.filter(u -> u.fits(name.signal())).orElse(name.unit());
        Reason reason = Reason.of(ColumnReason.PUBLISHED_NAME, Part.verbatim(name.source()), unit.part());
        String beside = name.beside(column.header().text());
        List<String> unexplained = CommonWords.unexplained(HeaderText.of(beside), name.signal());
        boolean misfit = stated.filter(u -> !u.fits(name.signal())).isPresent() && !beside.isEmpty();
        if (misfit || !unexplained.isEmpty()) {
            return judged(
                    column,
                    name.signal(),
                    unit,
                    Confidence.GUESS,
                    Reason.of(Shape.EACH, reason, Reason.of(ColumnReason.BESIDE_NAME, Shown.part(beside))));
        }
        return judged(column, name.signal(), unit, Confidence.CERTAIN, reason);
    }

    /** Kilometres up to version 5, whole metres from version 6 on; the name is the same. */
    private ColumnProposal travelled(LogSample.Column column, KnownName name) {
        double[] values = column.numbers(SourceUnit.METRES, sample.mark());
        boolean whole = Arrays.stream(values).allMatch(v -> v == Math.rint(v));
        double last = values.length == 0 ? 0 : values[values.length - 1];
        if (before6 || !whole) {
            ColumnReason why = before6 ? ColumnReason.KILOMETRES_BY_NAMES : ColumnReason.KILOMETRES_BY_VALUES;
            return told(judged(column, name.signal(), SourceUnit.KILOMETRES, Confidence.LIKELY, Reason.of(why)));
        }
        if (last > FARTHEST_CAR) {
            return told(judged(
                    column,
                    name.signal(),
                    SourceUnit.METRES,
                    Confidence.LIKELY,
                    Reason.of(ColumnReason.METRES_BY_HEIGHT)));
        }
        boolean leaps = values.length > 1 && (last - values[0]) > values.length * 2.0;
        return leaps
                ? told(judged(
                        column,
                        name.signal(),
                        SourceUnit.METRES,
                        Confidence.LIKELY,
                        Reason.of(ColumnReason.METRES_BY_STEPS)))
                : judged(
                        column,
                        name.signal(),
                        SourceUnit.KILOMETRES,
                        Confidence.GUESS,
                        Reason.of(ColumnReason.KILOMETRES_OR_METRES));
    }

    /** The name is published and the rest of the log tells which of its two units is meant: nobody need be asked. */
    private static ColumnProposal told(ColumnProposal proposal) {
        return proposal.confidence() == Confidence.LIKELY
                ? new ColumnProposal(
                        proposal.header(),
                        proposal.mapping(),
                        proposal.confidence(),
                        Confidence.CERTAIN,
                        proposal.reason())
                : proposal;
    }

    private ColumnProposal worded(LogSample.Column column, CommonWords.Naming naming) {
        Signal signal = naming.signal();
        if (naming.other().isPresent()) {
            return ColumnProposal.unused(
                    column.header().text(),
                    Reason.of(
                            ColumnReason.ANOTHER_QUANTITY,
                            signal,
                            Shown.part(naming.other().get())));
        }
        Optional<SourceUnit> stated = column.header().unit().filter(unit -> unit.fits(signal));
        boolean misfit = stated.isEmpty() && column.header().unit().isPresent();
        if (misfit || !naming.unexplained().isEmpty()) {
            Reason strange = misfit
                    ? Reason.of(
                            ColumnReason.NO_UNIT_OF_IT,
                            column.header().unit().get().part())
                    : Reason.of(ColumnReason.CHANGES_UNKNOWN, Shown.part(String.join(" ", naming.unexplained())));
            return judged(
                    column,
                    signal,
                    stated.orElse(SourceUnit.usual(signal)),
                    Confidence.GUESS,
                    Reason.of(Shape.EACH, Reason.of(ColumnReason.HEADER_SAYS, signal), strange));
        }
        return stated.map(unit -> judged(
                        column,
                        signal,
                        unit,
                        Confidence.CERTAIN,
                        Reason.of(ColumnReason.HEADER_SAYS_UNIT, signal, unit.part())))
                .orElseGet(() -> withoutUnit(column, signal));
    }

    private ColumnProposal withoutUnit(LogSample.Column column, Signal signal) {
        SourceUnit canonical = SourceUnit.usual(signal);
        double highest =
                Arrays.stream(column.numbers(canonical, sample.mark())).max().orElse(0);
        Reason says = Reason.of(ColumnReason.HEADER_WITHOUT_UNIT, signal);
        Part upTo = Part.verbatim(String.valueOf(highest));
        Optional<SourceUnit> fitting =
                UsualValues.contradiction(signal, canonical, column.numbers(canonical, sample.mark()));
        if (fitting.isPresent()) {
            return judged(
                    column,
                    signal,
                    fitting.get(),
                    Confidence.GUESS,
                    Reason.of(
                            Shape.EACH,
                            says,
                            Reason.of(
                                    ColumnReason.VALUES_FIT, upTo, fitting.get().part())));
        }
        boolean doubtful = UsualValues.isTakenOnTrust(signal);
        if (canonical == SourceUnit.PER_CENT && highest <= 1 && highest > 0) {
            return judged(
                    column,
                    signal,
                    canonical,
                    Confidence.GUESS,
                    Reason.of(Shape.EACH, says, Reason.of(ColumnReason.PERCENT_ASSUMED, upTo)));
        }
        return judged(
                column,
                signal,
                canonical,
                doubtful ? Confidence.GUESS : Confidence.LIKELY,
                Reason.of(Shape.EACH, says, Reason.of(ColumnReason.UNIT_ASSUMED, canonical.part())));
    }

    /** Holds the values against the signal before anything is proposed. */
    private ColumnProposal judged(
            LogSample.Column column, Signal signal, SourceUnit unit, Confidence confidence, Reason reason) {
        String header = column.header().text();
        double[] numbers = column.numbers(unit, sample.mark());
        long readable = Arrays.stream(numbers).filter(v -> !Double.isNaN(v)).count();
        if (readable < 0.5 * numbers.length) {
            return ColumnProposal.unused(
                    header,
                    Reason.of(
                            ColumnReason.NO_VALUE_OF_IT,
                            signal,
                            Shown.part(column.cells().get(0))));
        }
        if (signal == Signal.TRIP_DISTANCE && falls(numbers)) {
            return ColumnProposal.unused(header, Reason.of(ColumnReason.DOES_NOT_ONLY_GROW, signal));
        }
        Optional<SourceUnit> fitting = UsualValues.contradiction(signal, unit, numbers);
        if (fitting.isPresent()) {
            return new ColumnProposal(
                    header,
                    Optional.of(new ColumnMapping(header, signal, published(header) ? unit : fitting.get())),
                    Confidence.GUESS,
                    Reason.of(
                            Shape.EACH,
                            reason,
                            Reason.of(
                                    ColumnReason.BUT_VALUES_FIT,
                                    Part.verbatim(String.valueOf(
                                            Arrays.stream(numbers).max().orElse(0))),
                                    fitting.get().part())));
        }
        SourceUnit.Conversion conversion = unit.to(signal);
        long plausible = Arrays.stream(numbers)
                .filter(v -> signal.isPlausible(conversion.apply(v)))
                .count();
        ColumnMapping mapping = new ColumnMapping(header, signal, unit);
        if (plausible < readable) {
            return new ColumnProposal(
                    header,
                    Optional.of(mapping),
                    Confidence.GUESS,
                    confidence,
                    Reason.of(
                            Shape.EACH,
                            reason,
                            Reason.of(
                                    ColumnReason.OUT_OF_ITS_RANGE,
                                    Part.count(readable - plausible),
                                    Part.count(readable))));
        }
        return numbers.length == 0
                ? new ColumnProposal(
                        header,
                        Optional.of(mapping),
                        confidence == Confidence.CERTAIN ? Confidence.LIKELY : confidence,
                        confidence,
                        Reason.of(Shape.EACH, reason, Reason.of(ColumnReason.NO_VALUES_YET)))
                : new ColumnProposal(header, Optional.of(mapping), confidence, reason);
    }

    /** A published name says its unit: values that speak against it may be those of a broken sensor as well. */
    private static boolean published(String header) {
        return VssNames.named(header).or(() -> PidNames.named(header)).isPresent();
    }

    private static boolean falls(double[] values) {
        for (int i = 1; i < values.length; i++) {
            if (values[i] < values[i - 1]) {
                return true;
            }
        }
        return false;
    }
}
