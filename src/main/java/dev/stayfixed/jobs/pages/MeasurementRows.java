package dev.stayfixed.jobs.pages;

import dev.stayfixed.jobs.Measurement;
import dev.stayfixed.web.pages.Form;
import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/** The rows of bench measurements in a form: measurements[0].quantity and so on. */
final class MeasurementRows {

    private static final int MOST = 100;
    private static final int AT_FIRST = 2;
    private static final List<String> PARTS = List.of(
            "check", "quantity", "point", "unit", "expectedMin", "expectedMax", "before", "after", "testLeadsVerified");

    private MeasurementRows() {}

    private static String field(int row, String part) {
        return "measurements[" + row + "]." + part;
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
        return PARTS.stream().anyMatch(part -> !form.isBlank(field(row, part)));
    }

    /** Fills the rows with what was measured. */
    static void show(Form form, List<Measurement> measurements) {
        form.put("rows", String.valueOf(Math.max(AT_FIRST, measurements.size())));
        for (int row = 0; row < measurements.size(); row++) {
            Measurement m = measurements.get(row);
            form.put(field(row, "check"), m.check().name())
                    .put(field(row, "quantity"), m.quantity())
                    .put(field(row, "point"), m.point().orElse(""))
                    .put(field(row, "unit"), m.unit())
                    .put(field(row, "expectedMin"), number(m.expectedMin()))
                    .put(field(row, "expectedMax"), number(m.expectedMax()))
                    .put(
                            field(row, "before"),
                            m.before().map(MeasurementRows::shown).orElse(""))
                    .put(
                            field(row, "after"),
                            m.after().map(MeasurementRows::shown).orElse(""))
                    .put(field(row, "testLeadsVerified"), m.testLeadsVerified().orElse(false) ? "yes" : "");
        }
    }

    private static String number(OptionalDouble number) {
        return number.isPresent() ? plain(number.getAsDouble()) : "";
    }

    private static String shown(Measurement.Reading reading) {
        return reading instanceof Measurement.Value value
                ? plain(value.number())
                : reading.text().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    /** 5.4, and 5 instead of 5.0: what a person would have typed. */
    private static String plain(double number) {
        return BigDecimal.valueOf(number).stripTrailingZeros().toPlainString();
    }

    /** The form with its readings as they are sent to the interface: "open" and "ol" are words that a meter shows. */
    static Form withWords(Form form) {
        Form sent = new Form(form.all());
        for (int row : numbers(form)) {
            for (String part : List.of("before", "after")) {
                String field = field(row, part);
                word(form.value(field)).ifPresent(word -> sent.put(field, word.name()));
            }
        }
        return sent;
    }

    private static Optional<Measurement.NoValue> word(String typed) {
        String text = typed.strip().toLowerCase(Locale.ROOT);
        if (text.equals("open")) {
            return Optional.of(Measurement.NoValue.OPEN);
        }
        return text.matches("ol|over ?limit|over_limit")
                ? Optional.of(Measurement.NoValue.OVER_LIMIT)
                : Optional.empty();
    }
}
