package dev.stayfixed.recording;

import dev.stayfixed.drive.signal.Signal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/** Finds the column that carries the log's time, and how it is written. */
final class TimeProposer {

    private static final Pattern TIME_WORDS =
            Pattern.compile("time|zeit|\\bdate\\b|datum|clock|elapsed|seconds|\\bsec\\b|^t$|^t s$|^s$|^ms$");

    /**
     * One column read in one format; the lowest rank is the best.
     *
     * @param date the column of the date, where it stands apart from the time of day
     */
    record Candidate(int column, OptionalInt date, TimeFormat format, Confidence confidence, String reason, int rank) {

        Candidate(int column, TimeFormat format, Confidence confidence, String reason, int rank) {
            this(column, OptionalInt.empty(), format, confidence, reason, rank);
        }
    }

    private TimeProposer() {}

    static Candidate propose(LogSample sample) {
        List<Candidate> candidates = new ArrayList<>();
        for (int i = 0; i < sample.columns().size(); i++) {
            candidates(sample, i).ifPresent(candidates::add);
        }
        return candidates.stream()
                .min(Comparator.comparingInt(Candidate::rank).thenComparingInt(Candidate::column))
                .map(best -> best.format() == TimeFormat.TIME_OF_DAY ? withDate(sample, best) : best)
                .orElseThrow(() -> LogFormatException.atLine(
                        sample.layout().headerLine(),
                        "no column with a time among "
                                + Shown.of(String.join(
                                        ", ",
                                        sample.columns().stream()
                                                .map(c -> c.header().text())
                                                .toList())),
                        "a time column: "
                                + String.join(
                                        "; ",
                                        Arrays.stream(TimeFormat.values())
                                                .map(TimeFormat::words)
                                                .toList())));
    }

    private static Optional<Candidate> candidates(LogSample sample, int index) {
        LogSample.Column column = sample.columns().get(index);
        boolean named = TIME_WORDS.matcher(column.header().words()).find();
        boolean satellite = column.header().words().contains("gps");
        for (TimeFormat format : TimeFormat.values()) {
            if (!isWritten(column, format, sample.mark())) {
                continue;
            }
            if (!format.isNumber()) {
                int rank = rank(format) + (named ? 0 : 1) + (satellite ? 2 : 0);
                return Optional.of(
                        new Candidate(index, format, Confidence.CERTAIN, "every value is a " + format.words(), rank));
            }
            if (format.compareTo(TimeFormat.CLOCK_SECONDS) < 0) {
                return Optional.of(new Candidate(
                        index,
                        format,
                        named ? Confidence.CERTAIN : Confidence.LIKELY,
                        "the values are " + format.words() + " of our years",
                        100 + (named ? 0 : 1)));
            }
            return named || isRunTime(column) ? Optional.of(clock(sample, index)) : Optional.empty();
        }
        return Optional.empty();
    }

    /** The first column whose cells, put before the time of day, give a date and time. */
    private static Candidate withDate(LogSample sample, Candidate time) {
        List<String> times = sample.columns().get(time.column()).cells();
        for (int i = 0; i < sample.columns().size(); i++) {
            List<String> dates = sample.columns().get(i).cells();
            if (i == time.column() || dates.size() != times.size()) {
                continue;
            }
            List<String> joined = IntStream.range(0, times.size())
                    .mapToObj(row -> dates.get(row) + " " + times.get(row))
                    .toList();
            LogSample.Column both = new LogSample.Column(sample.columns().get(i).header(), joined);
            for (TimeFormat format : List.of(TimeFormat.ISO_LOCAL, TimeFormat.DOTTED_LOCAL)) {
                if (isWritten(both, format, sample.mark())) {
                    return new Candidate(
                            time.column(),
                            OptionalInt.of(i),
                            format,
                            Confidence.CERTAIN,
                            time.reason() + ", and the date stands in column "
                                    + Shown.of(both.header().text()),
                            time.rank());
                }
            }
        }
        return time;
    }

    private static int rank(TimeFormat format) {
        return switch (format) {
            case ISO_WITH_OFFSET -> 0;
            case ISO_LOCAL, DOTTED_LOCAL -> 10;
            default -> 20;
        };
    }

    private static boolean isRunTime(LogSample.Column column) {
        return PidNames.named(column.header().text())
                .or(() -> VssNames.named(column.header().text()))
                .filter(known -> known.signal() == Signal.RUN_TIME)
                .isPresent();
    }

    private static Candidate clock(LogSample sample, int index) {
        LogSample.Column column = sample.columns().get(index);
        Optional<SourceUnit> unit = column.header().unit();
        int rank = 200 + (isRunTime(column) ? 5 : 0);
        if (unit.isPresent() && unit.get() == SourceUnit.MILLISECONDS) {
            return new Candidate(index, TimeFormat.CLOCK_MILLIS, Confidence.CERTAIN, "the header says ms", rank);
        }
        if (unit.isPresent() && unit.get() == SourceUnit.MINUTES) {
            return new Candidate(index, TimeFormat.CLOCK_MINUTES, Confidence.CERTAIN, "the header says min", rank);
        }
        if (isRunTime(column) || unit.filter(u -> u == SourceUnit.SECONDS).isPresent()) {
            return new Candidate(index, TimeFormat.CLOCK_SECONDS, Confidence.CERTAIN, "the header says seconds", rank);
        }
        double step = medianStep(column.numbers(SourceUnit.SECONDS, sample.mark()));
        return step >= 20
                ? new Candidate(
                        index,
                        TimeFormat.CLOCK_MILLIS,
                        Confidence.GUESS,
                        "no unit in the header; rows are %s apart, which fits milliseconds".formatted(step),
                        rank)
                : new Candidate(
                        index,
                        TimeFormat.CLOCK_SECONDS,
                        Confidence.GUESS,
                        "no unit in the header; rows are %s apart, which fits seconds".formatted(step),
                        rank);
    }

    private static double medianStep(double[] times) {
        double[] steps = new double[Math.max(0, times.length - 1)];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = times[i + 1] - times[i];
        }
        Arrays.sort(steps);
        return steps.length == 0 ? 0 : steps[steps.length / 2];
    }

    /** Nearly all cells are times in this format, and hardly one goes back. */
    private static boolean isWritten(LogSample.Column column, TimeFormat format, DecimalMark mark) {
        int good = 0;
        int backward = 0;
        long before = Long.MIN_VALUE;
        for (String cell : column.cells()) {
            OptionalLong millis = format.millis(cell, mark);
            if (millis.isPresent()) {
                good++;
                backward += millis.getAsLong() < before ? 1 : 0;
                before = millis.getAsLong();
            }
        }
        return good > 0
                && good >= 0.9 * column.cells().size()
                && (!format.isNumber() || backward <= Math.max(1, good / 10));
    }
}
