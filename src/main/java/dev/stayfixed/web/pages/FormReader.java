package dev.stayfixed.web.pages;

import dev.stayfixed.platform.Texts;
import dev.stayfixed.platform.problem.Mistake;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.wording.Scale;
import jakarta.validation.ConstraintViolation;
import jakarta.validation.Validator;
import jakarta.validation.metadata.PropertyDescriptor;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/**
 * Reads a form into the record of what is written, the same that the REST interface reads from JSON: a field has the name of its path in
 * the record. Its limits are those of the record. What does not hold is told at its field, in the words of the bundle of the record's
 * room: the label under {@code room.entry.record.path}, what is wanted instead under that and the name of the constraint.
 */
@Component
public class FormReader {

    private final Validator validator;
    private final FieldWords words;

    FormReader(Validator validator, Texts texts) {
        this.validator = validator;
        this.words = new FieldWords(texts);
    }

    /**
     * The record, where nothing in it is wrong; what is wrong is noted at the fields.
     *
     * @param elsewhere properties that the page sees to itself: what is wrong with them is not told
     */
    public <T> Optional<T> read(Form form, Class<T> record, Show show, String... elsewhere) {
        return read(form, record, show, path -> Optional.empty(), elsewhere);
    }

    /**
     * The same, where numbers are typed in units of the shop.
     *
     * @param scales those of the numbers by their paths; of the others none
     */
    public <T> Optional<T> read(
            Form form, Class<T> record, Show show, Function<String, Optional<Scale>> scales, String... elsewhere) {
        FilledRecord<T> filled = new FilledRecord<>(form, record, "", show, scales);
        for (FilledRecord.Unread unread : filled.unread()) {
            String found = unread.found() == null ? words.quoted(form.value(unread.path())) : unread.found();
            tell(form, record, unread.path(), found, words.of(unread.wanted()));
        }
        List<ConstraintViolation<T>> violations = violations(filled).stream()
                .filter(v -> !List.of(elsewhere).contains(path(v)))
                .sorted(inOrderOf(form))
                .toList();
        for (ConstraintViolation<T> violation : violations) {
            String wanted = words.wanted(record, violation, bounds(violation, scales, show));
            tell(form, record, path(violation), words.found(violation, form.value(path(violation))), wanted);
        }
        return filled.content().filter(c -> filled.unread().isEmpty() && violations.isEmpty());
    }

    /**
     * A record that stands within another one, where nothing in it is wrong. Nothing is told.
     *
     * @param place its path, such as "faults[0]"
     */
    public <T> Optional<T> within(Form form, Class<T> record, String place, Show show) {
        FilledRecord<T> filled = new FilledRecord<>(form, record, place + ".", show, path -> Optional.empty());
        return filled.content()
                .filter(c -> filled.unread().isEmpty() && violations(filled).isEmpty());
    }

    private <T> Set<ConstraintViolation<T>> violations(FilledRecord<T> filled) {
        return filled.content()
                .map(content -> validator.validate(content).stream()
                        .filter(v -> filled.unread().stream()
                                .noneMatch(unread -> unread.path().equals(path(v))))
                        .collect(Collectors.toSet()))
                .orElse(Set.of());
    }

    private static String path(ConstraintViolation<?> violation) {
        return violation.getPropertyPath().toString();
    }

    /** Makes a value of what was read; a refusal is told at the fields that it names. */
    public <T> Optional<T> made(Form form, Class<?> record, Supplier<T> value) {
        try {
            return Optional.of(value.get());
        } catch (Refused refused) {
            refuse(form, record, refused);
            return Optional.empty();
        }
    }

    /** Tells a refusal at the fields that it names, or else at the top of the form. */
    public void refuse(Form form, Class<?> record, Refused refused) {
        form.note(refused);
        for (Mistake mistake : refused.mistakes()) {
            String path = mistake.path();
            String wanted =
                    refused.type() == ProblemType.TIME_IN_FUTURE ? words.of("web.wanted.past") : mistake.expected();
            String typed = form.value(path);
            String found = mistake.found() == null || typed.isBlank() ? mistake.found() : words.quoted(typed);
            tell(form, record, path, found, wanted);
        }
        if (refused.mistakes().isEmpty()) {
            form.wrong(Form.WHOLE, String.valueOf(refused.getMessage()));
        }
    }

    /** A text of the bundles. */
    public String text(String key, Object... places) {
        return words.of(key, places);
    }

    /** Notes a mistake that only a page can make, in a text of its own. */
    public void wrong(Form form, String field, String key, Object... places) {
        form.wrong(field, words.of(key, places));
    }

    /** Somebody else changed it: what was typed stays, and sending it again is taken for the present version. */
    public void changedMeanwhile(Form form, int presentVersion) {
        form.put("version", String.valueOf(presentVersion));
        wrong(form, Form.WHOLE, "web.form.changed-meanwhile");
    }

    private void tell(Form form, Class<?> record, String path, @Nullable String found, String wanted) {
        String field = field(form, record, path);
        String label = field.equals(Form.WHOLE) ? words.of("web.form.whole") : words.label(record, field);
        form.wrong(field, words.sentence(label, found, wanted));
    }

    /** The field of the form that stands for a path: its own, or that of the list or record around it. */
    private String field(Form form, Class<?> record, String path) {
        for (String at = path; !at.isEmpty(); at = around(at)) {
            if (words.names(record, at) || form.all().containsKey(at)) {
                return at;
            }
        }
        return Form.WHOLE;
    }

    private static String around(String path) {
        if (path.endsWith(FieldWords.ELEMENT)) {
            return path.substring(0, path.length() - FieldWords.ELEMENT.length());
        }
        return path.substring(0, Math.max(0, Math.max(path.lastIndexOf('['), path.lastIndexOf('.'))));
    }

    /** A number of a form that is no record, such as a row whose meaning another field chooses; what is none is told. */
    public OptionalDouble number(Form form, String field, String label) {
        if (form.isBlank(field)) {
            return OptionalDouble.empty();
        }
        try {
            return OptionalDouble.of(TypedText.number(form.value(field).strip()));
        } catch (TypedText.Unreadable e) {
            form.wrong(field, words.sentence(label, words.quoted(form.value(field)), words.of(e.wanted())));
            return OptionalDouble.empty();
        }
    }

    /** Makes a value that checks itself of such a form; where it does not hold, the field says why. */
    public <T> Optional<T> madeAt(Form form, String field, String label, Supplier<T> value) {
        try {
            return Optional.of(value.get());
        } catch (IllegalArgumentException e) {
            Mistake mistake = Mistake.said(field, String.valueOf(e.getMessage()));
            form.wrong(
                    field,
                    words.sentence(
                            label, form.isBlank(field) ? null : words.quoted(form.value(field)), mistake.expected()));
            return Optional.empty();
        }
    }

    /** A mistake that only a page can find: what was typed at a field, and what is wanted there. */
    public void wrongAt(Form form, Class<?> record, String path, String wanted) {
        String typed = form.value(path);
        tell(form, record, path, typed.isBlank() ? null : words.quoted(typed), wanted);
    }

    /** What the field of a path is called. */
    public String label(Class<?> record, String path) {
        return words.label(record, path);
    }

    /** The least and the most that the constraints of a property let through; what they do not bound is empty. */
    private Object[] bounds(ConstraintViolation<?> violation, Function<String, Optional<Scale>> scales, Show show) {
        Map<String, Object> own = violation.getConstraintDescriptor().getAttributes();
        if (own.containsKey("max")) {
            return new Object[] {own.getOrDefault("min", ""), own.getOrDefault("max", "")};
        }
        String path = path(violation);
        PropertyDescriptor property = validator
                .getConstraintsForClass(violation.getLeafBean().getClass())
                .getConstraintsForProperty(path.substring(path.lastIndexOf('.') + 1));
        return property == null
                ? new Object[0]
                : Stream.of(bound(property, "Min", "DecimalMin"), bound(property, "Max", "DecimalMax"))
                        .map(bound -> scales.apply(path)
                                .filter(scale -> !bound.equals(""))
                                .map(scale -> inUnits(Double.parseDouble(bound.toString()), scale, show))
                                .orElse(bound))
                        .toArray();
    }

    private static Object inUnits(double bound, Scale scale, Show show) {
        return show.number(scale.shown(bound), 1) + " " + scale.unit();
    }

    private static Object bound(PropertyDescriptor property, String... constraints) {
        return property.getConstraintDescriptors().stream()
                .filter(c -> Arrays.asList(constraints).contains(FieldWords.name(c)))
                .map(c -> Objects.requireNonNull(c.getAttributes().get("value")))
                .findFirst()
                .orElse("");
    }

    private static Comparator<ConstraintViolation<?>> inOrderOf(Form form) {
        List<String> fields = List.copyOf(form.all().keySet());
        return Comparator.<ConstraintViolation<?>>comparingInt(v -> {
                    int at = fields.indexOf(path(v));
                    return at < 0 ? fields.size() : at;
                })
                .thenComparing(FormReader::path);
    }
}
