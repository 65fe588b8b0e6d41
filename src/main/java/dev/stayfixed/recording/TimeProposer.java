package dev.stayfixed.recording;

import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Shape;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/**
 * Finds the column that carries the log's time, and how it is written. Of several clocks one that moves goes before one that stands,
 * and one that others agree with before one that is alone; where two disagree and nothing decides, somebody has to say which is right.
 */
final class TimeProposer {

    private static final Pattern TIME_WORDS =
            Pattern.compile("time|zeit|\\bdate\\b|datum|clock|elapsed|seconds|\\bsec\\b|^t$|^t s$"
                    + "|^s$|^ms$|\\bheure|\\btemps\\b|horodatage|\\bhora\\b|tiempo|fecha|segundos|^tempo$|^tempo m?s$|\\bora\\b|secondi|secondes"
                    + "|\\btijd|seconden|\\bczas\\b|godzina|^data$|^data (ora|hora|godzina)$");
    private static final long MOST_APART = 2_000;
    private static final double MOST_DRIFT = 0.03;
    private static final long QUARTER = 900_000;
    private static final long FIVE_MINUTES = 300_000;
    private static final long FARTHEST_ZONE = 14 * 3_600_000L;
    private static final List<TimeFormat> LOCAL = List.of(
            TimeFormat.ISO_LOCAL,
            TimeFormat.DOTTED_LOCAL,
            TimeFormat.MONTH_FIRST_LOCAL,
            TimeFormat.DAY_FIRST_LOCAL,
            TimeFormat.NAMED_MONTH_LOCAL);

    /**
     * One column read in one format; the lowest rank is the best.
     *
     * @param date the column of the date, where it stands apart from the time of day
     * @param course how its time runs through the rows
     */
    record Candidate(
            int column,
            OptionalInt date,
            TimeFormat format,
            Confidence confidence,
            Reason reason,
            int rank,
            Course course) {

        Candidate(int column, TimeFormat format, Confidence confidence, Reason reason, int rank, Course course) {
            this(column, OptionalInt.empty(), format, confidence, reason, rank, course);
        }

        Candidate with(Confidence other, Reason reason) {
            return new Candidate(column, date, format, other, reason, rank, course);
        }
    }

    /**
     * The times of a column, ms.
     *
     * @param span from the first to the last, days passed over
     */
    private record Course(long first, long span, int forward, int backward) {

        static Course of(LogSample.Column column, TimeFormat format, DecimalMark mark) {
            long first = Long.MIN_VALUE;
            long before = 0;
            long span = 0;
            int forward = 0;
            int backward = 0;
            for (String cell : column.cells()) {
                OptionalLong read = format.millis(cell, mark);
                if (read.isEmpty()) {
                    continue;
                }
                if (first == Long.MIN_VALUE) {
                    first = read.getAsLong();
                } else {
                    long step = read.getAsLong() - before;
                    step += format == TimeFormat.TIME_OF_DAY && step < -43_200_000 ? 86_400_000 : 0;
                    span += step;
                    forward += step > 0 ? 1 : 0;
                    backward += step < 0 ? 1 : 0;
                }
                before = read.getAsLong();
            }
            return new Course(first, span, forward, backward);
        }

        boolean moves() {
            return forward > 0 && span > 0 && backward <= Math.max(1, forward / 5);
        }

        boolean agrees(Course other) {
            long apart = Math.abs(span - other.span);
            return apart <= MOST_APART || apart <= MOST_DRIFT * Math.max(span, other.span);
        }
    }

    private TimeProposer() {}

    static Candidate propose(LogSample sample) {
        List<Candidate> candidates = new ArrayList<>();
        for (int i = 0; i < sample.columns().size(); i++) {
            candidates(sample, i)
                    .map(found -> found.format() == TimeFormat.TIME_OF_DAY ? withDate(sample, found) : found)
                    .ifPresent(candidates::add);
        }
        candidates.sort(Comparator.comparingInt(Candidate::rank).thenComparingInt(Candidate::column));
        if (candidates.isEmpty()) {
            throw LogFormatException.atLine(
                    sample.layout().headerLine(),
                    Reason.of(LogFound.NO_TIME_COLUMN, Shown.part(String.join(", ", sample.headers()))),
                    Reason.of(LogExpected.TIME_COLUMN, Reason.of(Shape.EACH, TimeFormat.values())));
        }
        return chosen(sample, candidates);
    }

    private static Candidate chosen(LogSample sample, List<Candidate> candidates) {
        List<Candidate> moving =
                candidates.stream().filter(c -> c.course().moves()).toList();
        List<Candidate> usable = moving.isEmpty() ? candidates : moving;
        // an engine's run time stands while the engine does: it is a clock only where there is no other
        List<Candidate> clocks = usable.stream()
                .filter(c -> !isRunTime(sample.columns().get(c.column())))
                .toList();
        if (clocks.isEmpty()) {
            return usable.get(0);
        }
        Candidate best = clocks.stream()
                .max(Comparator.comparingLong((Candidate c) ->
                                clocks.stream().filter(other -> agree(c, other)).count())
                        .thenComparingInt(c -> -c.rank())
                        .thenComparingInt(c -> -c.column()))
                .orElse(clocks.get(0));
        List<Candidate> others =
                clocks.stream().filter(c -> c.column() != best.column()).toList();
        List<Candidate> against = others.stream().filter(c -> !agree(best, c)).toList();
        List<Reason> reasons = new ArrayList<>(List.of(best.reason()));
        List<Candidate> along = others.stream().filter(c -> agree(best, c)).toList();
        said(sample, ColumnReason.GOES_ALONG, along).ifPresent(reasons::add);
        said(sample, ColumnReason.OTHER_THAN, against).ifPresent(reasons::add);
        List<Candidate> still =
                candidates.stream().filter(c -> !usable.contains(c)).toList();
        said(sample, ColumnReason.STANDS_STILL, still).ifPresent(reasons::add);
        Reason seen = Shape.EACH.of(reasons);
        boolean alone = !against.isEmpty() && others.size() - against.size() < against.size();
        return alone
                ? best.with(Confidence.GUESS, Reason.of(ColumnReason.WHICH_CLOCK, seen))
                : best.with(best.confidence(), seen);
    }

    private static Optional<Reason> said(LogSample sample, ColumnReason kind, List<Candidate> candidates) {
        List<Part> columns = candidates.stream()
                .map(c -> Shown.part(sample.columns().get(c.column()).header().text()))
                .toList();
        return columns.isEmpty() ? Optional.empty() : Optional.of(Reason.of(kind, Shape.LIST.of(columns)));
    }

    /** They count the same time, and where both tell the date, they tell the same but for the time zone. */
    private static boolean agree(Candidate one, Candidate other) {
        if (!one.course().agrees(other.course())) {
            return false;
        }
        boolean dated = isDated(one) && isDated(other);
        long apart = Math.abs(one.course().first() - other.course().first());
        long beside = apart % QUARTER;
        return !dated || (apart <= FARTHEST_ZONE && Math.min(beside, QUARTER - beside) <= FIVE_MINUTES);
    }

    private static boolean isDated(Candidate candidate) {
        return candidate.format().hasDate() || candidate.format().isInstant();
    }

    /** Whether the header names a time. */
    static boolean isNamed(LogSample.Column column) {
        return TIME_WORDS.matcher(column.header().words()).find();
    }

    private static Optional<Candidate> candidates(LogSample sample, int index) {
        LogSample.Column column = sample.columns().get(index);
        boolean named = isNamed(column);
        boolean satellite = column.header().words().contains("gps");
        for (TimeFormat format : TimeFormat.values()) {
            if (!isWritten(column, format, sample.mark())) {
                continue;
            }
            Course course = Course.of(column, format, sample.mark());
            if (!format.isNumber()) {
                int rank = rank(format) + (named ? 0 : 1) + (satellite ? 2 : 0);
                Candidate found = new Candidate(
                        index, format, Confidence.CERTAIN, Reason.of(ColumnReason.EVERY_VALUE, format), rank, course);
                return Optional.of(format == TimeFormat.MONTH_FIRST_LOCAL ? dayAndMonth(sample, column, found) : found);
            }
            if (format.compareTo(TimeFormat.CLOCK_SECONDS) < 0) {
                return Optional.of(new Candidate(
                        index,
                        format,
                        named ? Confidence.CERTAIN : Confidence.LIKELY,
                        Reason.of(ColumnReason.OF_OUR_YEARS, format),
                        100 + (named ? 0 : 1),
                        course));
            }
            return isClock(column) ? Optional.of(clock(sample, index)) : Optional.empty();
        }
        return Optional.empty();
    }

    private static boolean isClock(LogSample.Column column) {
        return isRunTime(column)
                || (isNamed(column) && CommonWords.named(column.header()).isEmpty());
    }

    /** "03/04/2024" is the third of April or the fourth of March: a drive that passes midnight may tell, else nothing does. */
    private static Candidate dayAndMonth(LogSample sample, LogSample.Column column, Candidate monthFirst) {
        if (!isWritten(column, TimeFormat.DAY_FIRST_LOCAL, sample.mark())) {
            return monthFirst;
        }
        Course dayFirst = Course.of(column, TimeFormat.DAY_FIRST_LOCAL, sample.mark());
        long longest = 4 * 86_400_000L;
        if (Math.abs(dayFirst.span()) > longest) {
            return monthFirst;
        }
        if (Math.abs(monthFirst.course().span()) > longest) {
            return new Candidate(
                    monthFirst.column(),
                    TimeFormat.DAY_FIRST_LOCAL,
                    Confidence.CERTAIN,
                    Reason.of(ColumnReason.EVERY_VALUE, TimeFormat.DAY_FIRST_LOCAL),
                    monthFirst.rank(),
                    dayFirst);
        }
        return monthFirst.with(
                Confidence.GUESS,
                Reason.of(
                        Shape.EACH,
                        monthFirst.reason(),
                        Reason.of(
                                ColumnReason.DAY_MAY_STAND_FIRST,
                                Shown.part(column.cells().get(0)))));
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
            for (TimeFormat format : LOCAL) {
                if (isWritten(both, format, sample.mark())) {
                    Candidate found = new Candidate(
                            time.column(),
                            format,
                            Confidence.CERTAIN,
                            Reason.of(
                                    ColumnReason.DATE_IN_COLUMN,
                                    time.reason(),
                                    Shown.part(both.header().text())),
                            time.rank(),
                            Course.of(both, format, sample.mark()));
                    Candidate decided =
                            format == TimeFormat.MONTH_FIRST_LOCAL ? dayAndMonth(sample, both, found) : found;
                    return new Candidate(
                            decided.column(),
                            OptionalInt.of(i),
                            decided.format(),
                            decided.confidence(),
                            decided.reason(),
                            decided.rank(),
                            decided.course());
                }
            }
        }
        return time;
    }

    private static int rank(TimeFormat format) {
        return format == TimeFormat.ISO_WITH_OFFSET ? 0 : format.hasDate() ? 10 : 20;
    }

    private static boolean isRunTime(LogSample.Column column) {
        String header = column.header().text();
        return PidNames.named(header)
                .or(() -> VssNames.named(header))
                .map(KnownName::signal)
                .or(() -> CommonWords.named(column.header()).map(CommonWords.Naming::signal))
                .filter(signal -> signal == Signal.RUN_TIME)
                .isPresent();
    }

    private static Candidate clock(LogSample sample, int index) {
        LogSample.Column column = sample.columns().get(index);
        Optional<SourceUnit> unit = column.header().unit();
        int rank = 200 + (isRunTime(column) ? 5 : 0);
        if (unit.isPresent() && unit.get() == SourceUnit.MILLISECONDS) {
            return clock(
                    sample,
                    index,
                    TimeFormat.CLOCK_MILLIS,
                    Confidence.CERTAIN,
                    Reason.of(ColumnReason.HEADER_SAYS_MILLISECONDS),
                    rank);
        }
        if (unit.isPresent() && unit.get() == SourceUnit.MINUTES) {
            return clock(
                    sample,
                    index,
                    TimeFormat.CLOCK_MINUTES,
                    Confidence.CERTAIN,
                    Reason.of(ColumnReason.HEADER_SAYS_MINUTES),
                    rank);
        }
        if (isRunTime(column) || unit.filter(u -> u == SourceUnit.SECONDS).isPresent()) {
            return clock(
                    sample,
                    index,
                    TimeFormat.CLOCK_SECONDS,
                    Confidence.CERTAIN,
                    Reason.of(ColumnReason.HEADER_SAYS_SECONDS),
                    rank);
        }
        double step = medianStep(column.numbers(SourceUnit.SECONDS, sample.mark()));
        TimeFormat format = step >= 20 ? TimeFormat.CLOCK_MILLIS : TimeFormat.CLOCK_SECONDS;
        return clock(
                sample,
                index,
                format,
                Confidence.GUESS,
                Reason.of(
                        step >= 20 ? ColumnReason.ROWS_APART_MILLISECONDS : ColumnReason.ROWS_APART_SECONDS,
                        Part.verbatim(String.valueOf(step))),
                rank);
    }

    private static Candidate clock(
            LogSample sample, int index, TimeFormat format, Confidence confidence, Reason reason, int rank) {
        Course course = Course.of(sample.columns().get(index), format, sample.mark());
        return new Candidate(index, format, confidence, reason, rank, course);
    }

    /** What a clock of mere numbers without a unit counts, by its steps; empty where it is none, or a unit tells. */
    static Optional<TimeFormat> clockOf(LogSample.Column column, DecimalMark mark) {
        if (column.header().unit().isPresent() || !isWritten(column, TimeFormat.CLOCK_SECONDS, mark)) {
            return Optional.empty();
        }
        double step = medianStep(column.numbers(SourceUnit.SECONDS, mark));
        return Optional.of(step >= 20 ? TimeFormat.CLOCK_MILLIS : TimeFormat.CLOCK_SECONDS);
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
        int bad = 0;
        int backward = 0;
        int most = column.cells().size() / 10;
        long before = Long.MIN_VALUE;
        for (String cell : column.cells()) {
            OptionalLong millis = format.millis(cell, mark);
            if (millis.isPresent()) {
                good++;
                backward += millis.getAsLong() < before ? 1 : 0;
                before = millis.getAsLong();
            } else if (++bad > most) {
                return false;
            }
        }
        return good > 0 && (!format.isNumber() || backward <= Math.max(1, good / 10));
    }
}
