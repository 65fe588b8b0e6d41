package dev.stayfixed.jobs.pages;

import dev.stayfixed.jobs.Measurement;
import dev.stayfixed.verification.bench.BenchCheck;
import dev.stayfixed.web.pages.Form;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/** The rows of bench measurements in a form: check0, quantity0, point0, unit0, min0, max0, before0, after0, leads0 and so on. */
final class MeasurementRows {

    private static final int MOST = 100;
    private static final int AT_FIRST = 2;
    private static final List<String> PARTS = List.of("quantity", "point", "unit", "min", "max", "before", "after");

    private MeasurementRows() {}

    static List<Integer> numbers(Form form) {
        int asked = form.whole("rows", "Rows", 1, MOST).orElse(AT_FIRST);
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

    /** Fills the rows with what was measured. */
    static void show(Form form, List<Measurement> measurements) {
        form.put("rows", String.valueOf(Math.max(AT_FIRST, measurements.size())));
        for (int row = 0; row < measurements.size(); row++) {
            Measurement m = measurements.get(row);
            form.put("check" + row, m.check().name())
                    .put("quantity" + row, m.quantity())
                    .put("point" + row, m.point().orElse(""))
                    .put("unit" + row, m.unit())
                    .put("min" + row, number(m.expectedMin()))
                    .put("max" + row, number(m.expectedMax()))
                    .put("before" + row, m.before().map(MeasurementRows::shown).orElse(""))
                    .put("after" + row, m.after().map(MeasurementRows::shown).orElse(""))
                    .put("leads" + row, m.testLeadsVerified().orElse(false) ? "yes" : "");
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

    static List<Measurement> read(Form form) {
        List<Measurement> measurements = new ArrayList<>();
        for (int row = 0; row < MOST; row++) {
            if (isFilled(form, row)) {
                measurement(form, row).ifPresent(measurements::add);
            }
        }
        return measurements;
    }

    private static Optional<Measurement> measurement(Form form, int row) {
        String label = "Measurement " + (row + 1);
        String quantity = form.required("quantity" + row, label, 100, "say what was measured");
        String unit = form.required("unit" + row, label, 20, "give the unit, such as V or Ω");
        OptionalDouble min = form.number("min" + row, label + ", expected from");
        OptionalDouble max = form.number("max" + row, label + ", expected to");
        Optional<Measurement.Reading> before = reading(form, "before" + row, label + ", before");
        Optional<Measurement.Reading> after = reading(form, "after" + row, label + ", after");
        return form.made(
                "min" + row,
                label,
                () -> new Measurement(
                        check(form.value("check" + row)),
                        quantity,
                        form.text("point" + row, label + ", where", 200),
                        unit,
                        min,
                        max,
                        before,
                        after,
                        form.has("leads" + row, "yes") ? Optional.of(true) : Optional.empty()));
    }

    private static BenchCheck check(String chosen) {
        return Arrays.stream(BenchCheck.values())
                .filter(check -> check.name().equals(chosen))
                .findFirst()
                .orElse(BenchCheck.OTHER);
    }

    private static Optional<Measurement.Reading> reading(Form form, String field, String label) {
        String text = form.value(field).strip().toLowerCase(Locale.ROOT);
        if (text.equals("open")) {
            return Optional.of(Measurement.NoValue.OPEN);
        }
        if (text.matches("ol|over ?limit|over_limit")) {
            return Optional.of(Measurement.NoValue.OVER_LIMIT);
        }
        OptionalDouble number = form.number(field, label + " (or “open”, “over limit”)");
        return number.isPresent() ? Optional.of(new Measurement.Value(number.getAsDouble())) : Optional.empty();
    }
}
