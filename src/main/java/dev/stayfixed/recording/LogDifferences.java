package dev.stayfixed.recording;

import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

/** What in a log speaks against a mapping that was confirmed with another log, as far as its head tells. */
final class LogDifferences {

    private static final double HALF = 0.5;

    private final LogSample sample;
    private final LogMapping mapping;
    private final List<Reason> found = new ArrayList<>();

    private LogDifferences(LogSample sample, LogMapping mapping) {
        this.sample = sample;
        this.mapping = mapping;
    }

    static List<Reason> of(LogSample sample, LogMapping mapping) {
        LogDifferences differences = new LogDifferences(sample, mapping);
        differences.look();
        return List.copyOf(differences.found);
    }

    private void look() {
        DecimalMark.seen(sample.layout().separator(), sample.columns())
                .filter(mark -> mark != mapping.decimalMark())
                .ifPresent(mark -> found.add(Reason.of(LogReason.OTHER_MARK, mark, mapping.decimalMark())));
        column(mapping.timeColumn()).ifPresent(this::time);
        for (ColumnMapping column : mapping.columns()) {
            column(column.header()).ifPresent(now -> values(column, now));
        }
    }

    private Optional<LogSample.Column> column(String header) {
        int index = LogSample.indexOf(sample.headers(), header);
        return index < 0 ? Optional.empty() : Optional.of(sample.columns().get(index));
    }

    private void time(LogSample.Column column) {
        TimeFormat format = mapping.timeFormat();
        if (mapping.dateColumn().isPresent() || column.cells().isEmpty()) {
            return;
        }
        long readable = column.cells().stream()
                .map(cell -> format.millis(cell, mapping.decimalMark()))
                .filter(OptionalLong::isPresent)
                .count();
        if (readable < HALF * column.cells().size()) {
            found.add(Reason.of(
                    LogReason.OTHER_TIME,
                    Shown.part(column.header().text()),
                    Shown.part(column.cells().get(0)),
                    format));
            return;
        }
        TimeProposer.clockOf(column, sample.mark())
                .filter(now -> format.compareTo(TimeFormat.CLOCK_SECONDS) >= 0 && now != format)
                .ifPresent(now -> found.add(Reason.of(
                        LogReason.OTHER_STEPS, Shown.part(column.header().text()), now, format)));
    }

    private void values(ColumnMapping confirmed, LogSample.Column now) {
        Part header = Shown.part(now.header().text());
        boolean sameHeader = now.header().text().equals(confirmed.header());
        now.header()
                .unit()
                .filter(unit -> !sameHeader && unit != confirmed.unit() && unit.fits(confirmed.signal()))
                .ifPresent(unit -> found.add(Reason.of(
                        LogReason.OTHER_UNIT,
                        header,
                        unit.part(),
                        confirmed.unit().part())));
        double[] numbers = now.numbers(confirmed.unit(), mapping.decimalMark());
        long readable = Arrays.stream(numbers).filter(v -> !Double.isNaN(v)).count();
        if (readable < HALF * numbers.length) {
            found.add(Reason.of(
                    LogReason.OTHER_VALUES,
                    header,
                    Shown.part(now.cells().get(0)),
                    confirmed.unit().part()));
            return;
        }
        UsualValues.contradiction(confirmed.signal(), confirmed.unit(), numbers)
                .ifPresent(unit -> found.add(Reason.of(
                        LogReason.OTHER_HEIGHT,
                        header,
                        Part.verbatim(String.valueOf(Arrays.stream(numbers)
                                .filter(v -> !Double.isNaN(v))
                                .max()
                                .orElse(0))),
                        unit.part(),
                        confirmed.unit().part())));
    }
}
