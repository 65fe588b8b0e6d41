package dev.stayfixed.web.pages;

import dev.stayfixed.platform.Texts;
import jakarta.validation.ConstraintViolation;
import jakarta.validation.metadata.ConstraintDescriptor;
import java.util.Collection;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** What the fields of a record are called, and what is said of what stands in them, from the bundles. */
final class FieldWords {

    /** How the path of an element of a list ends. */
    static final String ELEMENT = ".<list element>";

    private static final int LONGEST_QUOTE = 40;

    private final Texts texts;

    FieldWords(Texts texts) {
        this.texts = texts;
    }

    String of(String key, Object... places) {
        return texts.of(key, places);
    }

    /** Whether a bundle names the field of this path; an element of a list has no field of its own. */
    boolean names(Class<?> record, String path) {
        return Character.isLetter(path.charAt(path.length() - 1))
                && texts.find(key(record, path)).isPresent();
    }

    /** As the template labels it; with the name of its row, where the rows have names. */
    String label(Class<?> record, String path) {
        Object[] rows = Stream.of(path.split("[^\\d]+", -1))
                .filter(number -> !number.isEmpty())
                .map(number -> Integer.parseInt(number) + 1)
                .toArray();
        String label = texts.find(key(record, path), rows).orElse(path);
        int row = path.lastIndexOf("].");
        return row < 0
                ? label
                : texts.find(key(record, path.substring(0, row + 1)) + ".row", rows)
                        .map(name -> texts.of("web.form.in-row", name, label))
                        .orElse(label);
    }

    /** "jobs.entry.repair.measurements.unit" of "measurements[0].unit". */
    private static String key(Class<?> record, String path) {
        String room = record.getPackageName().split("\\.", -1)[2];
        String name = record.getSimpleName()
                .replaceFirst("Entry$", "")
                .replaceAll("(?<=[a-z])(?=[A-Z])", "-")
                .toLowerCase(java.util.Locale.ROOT);
        return room + ".entry." + name + "." + path.replace(ELEMENT, "").replaceAll("\\[\\d*]", "");
    }

    String sentence(String label, @Nullable String found, String wanted) {
        return found == null
                ? texts.of("web.form.missing", label, wanted)
                : texts.of("web.form.found", label, found, wanted);
    }

    /** What was found; null where nothing stands. */
    @Nullable
    String found(ConstraintViolation<?> violation, String typed) {
        Object value = violation.getInvalidValue();
        if (value == null || (value instanceof String text && text.isBlank())) {
            return null;
        }
        if (value instanceof Collection<?> many) {
            return String.valueOf(many.size());
        }
        if (value instanceof String text
                && name(violation.getConstraintDescriptor()).equals("Size")) {
            return texts.of("web.form.characters", text.length());
        }
        return quoted(typed.isBlank() ? value.toString() : typed);
    }

    String quoted(String text) {
        String whole = text.strip().replaceFirst("^(\\d{4}-\\d\\d-\\d\\d)T", "$1 ");
        return texts.of(
                "web.form.quoted", whole.length() > LONGEST_QUOTE ? whole.substring(0, LONGEST_QUOTE) + "…" : whole);
    }

    /** What is wanted instead: in words of its own, or in those of its constraint. */
    String wanted(Class<?> record, ConstraintViolation<?> violation, Object[] bounds) {
        String path = violation.getPropertyPath().toString();
        return texts.find(key(record, path) + "." + name(violation.getConstraintDescriptor()), bounds)
                .orElseGet(() -> wanted(violation, bounds));
    }

    private String wanted(ConstraintViolation<?> violation, Object[] bounds) {
        Object value = violation.getInvalidValue();
        return switch (name(violation.getConstraintDescriptor())) {
            case "NotNull", "NotBlank", "NotEmpty" ->
                Stream.of(bounds).allMatch(""::equals)
                        ? texts.of("web.wanted.something")
                        : texts.of("web.wanted.whole-between", bounds);
            case "Size" ->
                texts.of(value instanceof Collection ? "web.wanted.so-many" : "web.wanted.characters", bounds);
            case "Min", "Max", "DecimalMin", "DecimalMax" ->
                texts.of(value instanceof Integer ? "web.wanted.whole-between" : "web.wanted.between", bounds);
            default -> violation.getMessage();
        };
    }

    static String name(ConstraintDescriptor<?> constraint) {
        return constraint.getAnnotation().annotationType().getSimpleName();
    }
}
