package dev.stayfixed.jobs.pages;

import dev.stayfixed.jobs.Measurement;
import dev.stayfixed.reason.Part;
import dev.stayfixed.verification.bench.BenchPreset;
import dev.stayfixed.verification.bench.BenchQuantity;
import dev.stayfixed.web.pages.Form;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** The rows of bench measurements in a form: measurements[0].quantity and so on. One tick says of all of them that the leads were checked. */
final class MeasurementRows {

    private static final int MOST = 100;
    private static final int AT_FIRST = 2;
    private static final List<String> PARTS =
            List.of("check", "quantity", "point", "unit", "expectedMin", "expectedMax", "before", "after");

    /** By which two rows are of the same measurement. */
    private static final List<String> NAMED_BY = List.of("check", "quantity", "unit");

    private static final List<String> BAND = List.of("check", "quantity", "unit", "expectedMin", "expectedMax");

    /** Of the whole repair, and of a row where the rows do not all say the same. */
    private static final String LEADS = "testLeadsVerified";

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

    /**
     * Puts the rows for a kind of fault below those in which something was typed, in place of all others. One that stands there already is
     * not put a second time.
     *
     * @param words names the quantities in the language of the page
     */
    static void fill(Form form, BenchPreset preset, Function<Part, String> words) {
        Set<Map<String, String>> untouched = allPresets(words);
        List<Map<String, String>> rows = new ArrayList<>();
        for (int row : numbers(form)) {
            Map<String, String> kept = parts(form, row, PARTS);
            boolean isEmpty = !isFilled(form, row) || (untouched.contains(kept) && form.isBlank(field(row, LEADS)));
            if (!isEmpty) {
                kept.put(LEADS, form.value(field(row, LEADS)));
                rows.add(kept);
            }
            blank(form, row);
        }
        preset.rows().stream()
                .map(wanted -> toBeMeasured(wanted, words))
                .filter(wanted -> rows.stream().noneMatch(row -> isNamedAlike(row, wanted)))
                .limit(MOST - rows.size())
                .toList()
                .forEach(rows::add);
        for (int row = 0; row < rows.size(); row++) {
            int at = row;
            rows.get(row).forEach((part, text) -> form.put(field(at, part), text));
        }
        form.put("rows", String.valueOf(rows.size()));
    }

    /** The rows whose band is the typical one, as a kind of fault brought it. */
    static Set<Integer> typical(Form form, Function<Part, String> words) {
        Set<Map<String, String>> bands = allPresets(words).stream()
                .filter(row -> !row.getOrDefault("expectedMax", "").isEmpty())
                .map(row -> {
                    Map<String, String> band = new TreeMap<>(row);
                    band.keySet().retainAll(BAND);
                    return band;
                })
                .collect(Collectors.toSet());
        return numbers(form).stream()
                .filter(row -> bands.contains(parts(form, row, BAND)))
                .collect(Collectors.toSet());
    }

    private static Set<Map<String, String>> allPresets(Function<Part, String> words) {
        return Arrays.stream(BenchPreset.values())
                .flatMap(preset -> preset.rows().stream())
                .map(row -> toBeMeasured(row, words))
                .collect(Collectors.toSet());
    }

    private static Map<String, String> toBeMeasured(BenchPreset.Row row, Function<Part, String> words) {
        BenchQuantity quantity = row.quantity();
        Map<String, String> parts = new TreeMap<>();
        PARTS.forEach(part -> parts.put(part, ""));
        parts.put("check", row.check().name());
        parts.put("quantity", words.apply(quantity));
        parts.put("unit", quantity.unit());
        parts.put("expectedMin", number(quantity.typicalMin()));
        parts.put("expectedMax", number(quantity.typicalMax()));
        return parts;
    }

    private static boolean isNamedAlike(Map<String, String> one, Map<String, String> other) {
        return NAMED_BY.stream().allMatch(part -> Objects.equals(one.get(part), other.get(part)));
    }

    private static Map<String, String> parts(Form form, int row, List<String> wanted) {
        Map<String, String> parts = new TreeMap<>();
        wanted.forEach(part -> parts.put(part, form.value(field(row, part))));
        return parts;
    }

    private static void blank(Form form, int row) {
        PARTS.forEach(part -> form.put(field(row, part), ""));
        form.put(field(row, LEADS), "");
    }

    /** Fills the rows with what was measured. */
    static void show(Form form, List<Measurement> measurements) {
        form.put("rows", String.valueOf(Math.max(AT_FIRST, measurements.size())));
        boolean ofAll = !measurements.isEmpty()
                && measurements.stream().allMatch(m -> m.testLeadsVerified().orElse(false));
        form.put(LEADS, ofAll ? "yes" : "");
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
                    .put(
                            field(row, LEADS),
                            ofAll
                                    ? ""
                                    : m.testLeadsVerified()
                                            .map(yes -> yes ? "yes" : "no")
                                            .orElse(""));
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

    /**
     * The form as it is sent to the interface: "open" and "ol" are words that a meter shows, and the tick for all rows is one of each. A row
     * in which nothing else stands any more is none.
     */
    static Form withWords(Form form) {
        Form sent = new Form(form.all());
        boolean ofAll = form.has(LEADS, "yes");
        for (int row : numbers(form)) {
            for (String part : List.of("before", "after")) {
                String field = field(row, part);
                word(form.value(field)).ifPresent(word -> sent.put(field, word.name()));
            }
            if (ofAll) {
                sent.put(field(row, LEADS), "yes");
            }
        }
        IntStream.range(0, MOST)
                .filter(row -> !isFilled(form, row))
                .forEach(row -> sent.all().remove(field(row, LEADS)));
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
