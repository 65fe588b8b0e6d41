package dev.stayfixed.judging.pages;

import dev.stayfixed.drive.condition.AtStart;
import dev.stayfixed.drive.condition.Condition;
import dev.stayfixed.drive.condition.ConditionSet;
import dev.stayfixed.drive.condition.Hold;
import dev.stayfixed.drive.condition.Reach;
import dev.stayfixed.drive.condition.SignalRange;
import dev.stayfixed.drive.condition.Soak;
import dev.stayfixed.drive.condition.StartDifference;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.web.pages.Form;
import dev.stayfixed.web.pages.FormReader;
import dev.stayfixed.web.pages.Show;
import dev.stayfixed.wording.Scale;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** The rows of conditions in a form: kind0, signal0, other0, min0, max0, time0, lead0 and so on, values in the shop's units. */
final class ConditionRows {

    /** Of conditions; each may have rows that say what has to hold meanwhile. */
    private static final int MOST = 60;

    private static final int AT_FIRST = 3;
    private static final Duration LONGEST = Duration.ofDays(10);
    private static final List<String> PARTS = List.of("kind", "signal", "min", "max", "time");
    private static final Pattern TIME = Pattern.compile("(\\d{1,6}(?:[.,]\\d{1,3})?)\\s*(s|min|h|)\\s*");

    private final Form form;
    private final FormReader reader;
    private final Show show;

    private ConditionRows(Form form, FormReader reader, Show show) {
        this.form = form;
        this.reader = reader;
        this.show = show;
    }

    static List<Integer> numbers(Form form) {
        int asked = form.value("rows").matches("\\d{1,3}")
                ? Math.max(1, Math.min(MOST, Integer.parseInt(form.value("rows"))))
                : AT_FIRST;
        int filled =
                IntStream.range(0, MOST).filter(i -> isFilled(form, i)).max().orElse(-1) + 1;
        return IntStream.range(0, Math.max(asked, filled)).boxed().toList();
    }

    static void addRow(Form form) {
        form.put("rows", String.valueOf(Math.min(MOST, numbers(form).size() + 1)));
    }

    private static boolean isFilled(Form form, int row) {
        return PARTS.stream().anyMatch(part -> !form.isBlank(part + row));
    }

    /** Puts a set into the fields, in place of what stood there. */
    static void fill(Form form, FormReader reader, ConditionSet set, Show show) {
        ConditionRows rows = new ConditionRows(form, reader, show);
        IntStream.range(0, MOST).forEach(rows::empty);
        int row = 0;
        for (Condition condition : set.conditions()) {
            rows.write(row++, condition);
            for (SignalRange meanwhile : condition.whileIn()) {
                rows.range(row, meanwhile);
                form.put("kind" + row++, ConditionKind.MEANWHILE.name());
            }
        }
        form.put("rows", String.valueOf(Math.max(AT_FIRST, row)));
        form.put("inOrder", set.inOrder() ? "yes" : "");
    }

    private void empty(int row) {
        Stream.concat(PARTS.stream(), Stream.of("other", "lead")).forEach(part -> form.put(part + row, ""));
    }

    private void write(int row, Condition condition) {
        form.put("kind" + row, ConditionKind.of(condition).name());
        condition.match(new Written(row));
    }

    /** Writes a condition into the fields of a row. */
    private final class Written implements Condition.Cases<Form> {

        private final int row;

        Written(int row) {
            this.row = row;
        }

        @Override
        public Form soak(Soak soak) {
            return time("time" + row, soak.atLeast());
        }

        @Override
        public Form atStart(AtStart start) {
            return range(row, start.range());
        }

        @Override
        public Form startDifference(StartDifference difference) {
            return form.put("signal" + row, difference.upper().name())
                    .put("other" + row, difference.lower().name())
                    .put(
                            "max" + row,
                            show.plain(difference.most()
                                    * scale(difference.upper()).factor()));
        }

        @Override
        public Form reach(Reach reach) {
            Scale scale = scale(reach.signal());
            form.put("signal" + row, reach.signal().name());
            form.put(
                    "min" + row,
                    show.plain(reach.isRise() ? reach.amount() * scale.factor() : scale.shown(reach.amount())));
            reach.within().ifPresent(within -> time("time" + row, within));
            return reach.leadIn().isZero() ? form : time("lead" + row, reach.leadIn());
        }

        @Override
        public Form hold(Hold hold) {
            range(row, hold.range());
            return time("time" + row, hold.atLeast());
        }
    }

    private Form range(int row, SignalRange range) {
        Scale scale = scale(range.signal());
        form.put("signal" + row, range.signal().name());
        form.put("min" + row, Double.isInfinite(range.min()) ? "" : show.plain(scale.shown(range.min())));
        return form.put("max" + row, Double.isInfinite(range.max()) ? "" : show.plain(scale.shown(range.max())));
    }

    private Form time(String field, Duration time) {
        long seconds = time.toSeconds();
        return form.put(
                field,
                seconds % 3_600 == 0
                        ? seconds / 3_600 + " h"
                        : seconds % 60 == 0 ? seconds / 60 + " min" : seconds + " s");
    }

    private Scale scale(Signal signal) {
        return show.scale(signal);
    }

    /** A row, and what has to hold meanwhile. */
    private record Row(int number, ConditionKind kind, List<SignalRange> meanwhile) {}

    static List<Condition> read(Form form, FormReader reader, Show show) {
        ConditionRows rows = new ConditionRows(form, reader, show);
        List<Row> read = new ArrayList<>();
        for (int row = 0; row < MOST; row++) {
            if (isFilled(form, row)) {
                rows.gather(row, read);
            }
        }
        return read.stream().flatMap(row -> rows.condition(row).stream()).toList();
    }

    private void gather(int row, List<Row> read) {
        Optional<ConditionKind> kind = Stream.of(ConditionKind.values())
                .filter(k -> form.has("kind" + row, k.name()))
                .findFirst();
        if (kind.isEmpty()) {
            wrong("kind", row, "judging.rows.what");
        } else if (kind.get() != ConditionKind.MEANWHILE) {
            read.add(new Row(row, kind.get(), new ArrayList<>()));
        } else if (read.isEmpty() || !read.get(read.size() - 1).kind().takesMeanwhile()) {
            wrong("kind", row, "judging.rows.no-time-above");
        } else {
            limits(row).ifPresent(read.get(read.size() - 1).meanwhile()::add);
        }
    }

    private Optional<Condition> condition(Row row) {
        int i = row.number();
        return switch (row.kind()) {
            case SOAK -> wantedTime(i).map(Soak::new);
            case AT_START -> limits(i).map(AtStart::new);
            case DIFFERENCE -> difference(i);
            case REACH, RISE -> reach(row);
            case HOLD, TOTAL ->
                limits(i)
                        .flatMap(range -> wantedTime(i)
                                .map(time -> new Hold(range, time, row.kind() == ConditionKind.HOLD, row.meanwhile())));
            case MEANWHILE -> Optional.empty();
        };
    }

    private Optional<Condition> difference(int i) {
        Optional<Signal> upper = signal(i, "signal", "judging.rows.temperature");
        Optional<Signal> lower = signal(i, "other", "judging.rows.other-temperature");
        OptionalDouble most = number("max", i, "judging.conditions.most");
        if (most.isEmpty()) {
            wrong("max", i, "judging.rows.by-how-much");
        }
        return upper.isEmpty() || lower.isEmpty() || most.isEmpty()
                ? Optional.empty()
                : reader.madeAt(
                        form,
                        "signal" + i,
                        label(i),
                        () -> new StartDifference(
                                upper.get(),
                                lower.get(),
                                most.getAsDouble() / scale(upper.get()).factor()));
    }

    private Optional<Condition> reach(Row row) {
        int i = row.number();
        Optional<Signal> signal = signal(i, "signal", "judging.rows.signal");
        OptionalDouble amount = number("min", i, "judging.conditions.least");
        if (amount.isEmpty()) {
            wrong("min", i, "judging.rows.value");
        }
        Optional<Duration> within = time("time" + i, i);
        Optional<Duration> lead = time("lead" + i, i);
        return signal.isEmpty() || amount.isEmpty()
                ? Optional.empty()
                : reader.madeAt(form, "min" + i, label(i), () -> {
                    Scale scale = scale(signal.get());
                    double kept = row.kind().isDifference()
                            ? amount.getAsDouble() / scale.factor()
                            : scale.kept(amount.getAsDouble());
                    return new Reach(
                            signal.get(),
                            kept,
                            row.kind() == ConditionKind.RISE,
                            within,
                            lead.orElse(Duration.ZERO),
                            row.meanwhile());
                });
    }

    private Optional<SignalRange> limits(int i) {
        Optional<Signal> signal = signal(i, "signal", "judging.rows.signal");
        OptionalDouble min = number("min", i, "judging.conditions.least");
        OptionalDouble max = number("max", i, "judging.conditions.most");
        if (min.isEmpty() && max.isEmpty()) {
            wrong("min", i, "judging.rows.limits");
        }
        return signal.isEmpty() || form.isWrong()
                ? Optional.empty()
                : reader.madeAt(form, "min" + i, label(i), () -> {
                    Scale scale = scale(signal.get());
                    return new SignalRange(
                            signal.get(),
                            min.isPresent() ? scale.kept(min.getAsDouble()) : Double.NEGATIVE_INFINITY,
                            max.isPresent() ? scale.kept(max.getAsDouble()) : Double.POSITIVE_INFINITY);
                });
    }

    private Optional<Signal> signal(int i, String part, String advice) {
        Optional<Signal> signal = Stream.of(Signal.values())
                .filter(s -> form.has(part + i, s.name()))
                .findFirst();
        if (signal.isEmpty()) {
            wrong(part, i, advice);
        }
        return signal;
    }

    private Optional<Duration> wantedTime(int i) {
        Optional<Duration> time = time("time" + i, i);
        if (time.isEmpty()) {
            wrong("time", i, "judging.rows.time");
        }
        return time;
    }

    /** "90", "90 s", "10 min", "6 h" and sums of them. */
    private Optional<Duration> time(String field, int i) {
        String text = form.value(field).strip().toLowerCase(Locale.ROOT);
        if (text.isEmpty()) {
            return Optional.empty();
        }
        Matcher part = TIME.matcher(text);
        double seconds = 0;
        int read = 0;
        while (read < text.length() && part.find(read) && part.start() == read) {
            double number = Double.parseDouble(part.group(1).replace(',', '.'));
            seconds += number * ("h".equals(part.group(2)) ? 3_600 : "min".equals(part.group(2)) ? 60 : 1);
            read = part.end();
        }
        if (read < text.length() || seconds < 1 || seconds > LONGEST.toSeconds()) {
            reader.wrong(
                    form,
                    field,
                    "judging.rows.no-time",
                    label(i),
                    text.length() > 40 ? text.substring(0, 40) + "…" : text);
            return Optional.empty();
        }
        return Optional.of(Duration.ofSeconds(Math.round(seconds)));
    }

    private void wrong(String part, int row, String key) {
        reader.wrong(form, part + row, key, label(row));
    }

    private OptionalDouble number(String part, int row, String key) {
        return reader.number(form, part + row, reader.text("web.form.in-row", label(row), reader.text(key)));
    }

    private String label(int row) {
        return reader.text("judging.conditions.condition", row + 1);
    }
}
