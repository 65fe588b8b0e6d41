package dev.stayfixed.web.pages;

import dev.stayfixed.platform.Texts;
import dev.stayfixed.platform.problem.Mistake;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.wording.Scale;
import jakarta.validation.ConstraintViolation;
import jakarta.validation.Validator;
import jakarta.validation.metadata.ConstraintDescriptor;
import jakarta.validation.metadata.PropertyDescriptor;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.core.ResolvableType;
import org.springframework.stereotype.Component;
import org.springframework.validation.DataBinder;
import org.springframework.validation.FieldError;

/**
 * Reads a form into the record of what is written, the same that the REST interface reads from JSON: a field has the name of its path in
 * the record. Its limits are those of the record. What does not hold is told at its field, in the words of the bundle of the record's
 * room: the label under {@code room.entry.record.path}, what is wanted instead under that and the name of the constraint.
 */
@Component
public class FormReader {

    private static final int LONGEST_QUOTE = 40;
    private static final String ELEMENT = ".<list element>";
    /** A row of a form; no form has more than a hundred. */
    private static final String ROWS = "[^\\[\\]]*(\\[\\d{1,2}][^\\[\\]]*)*";

    private final Validator validator;
    private final Texts texts;

    FormReader(Validator validator, Texts texts) {
        this.validator = validator;
        this.texts = texts;
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
        Filled<T> filled = new Filled<>(form, record, "", show, scales);
        for (Flaw flaw : filled.flaws) {
            tell(form, record, flaw);
        }
        List<ConstraintViolation<T>> violations = violations(filled).stream()
                .filter(v -> !List.of(elsewhere).contains(path(v)))
                .sorted(inOrderOf(form))
                .toList();
        for (ConstraintViolation<T> violation : violations) {
            Optional<String> own = texts.find(
                    key(record, path(violation)) + "." + simpleName(violation.getConstraintDescriptor()),
                    bounds(violation, scales, show));
            tell(
                    form,
                    record,
                    new Flaw(path(violation), found(form, violation), own.orElseGet(() -> wanted(violation, bounds(violation, scales, show)))));
        }
        return filled.content.filter(c -> filled.flaws.isEmpty() && violations.isEmpty());
    }

    /**
     * A record that stands within another one, where nothing in it is wrong. Nothing is told.
     *
     * @param place its path, such as "faults[0]"
     */
    public <T> Optional<T> within(Form form, Class<T> record, String place, Show show) {
        Filled<T> filled = new Filled<>(form, record, place + ".", show, path -> Optional.empty());
        return filled.content.filter(
                c -> filled.flaws.isEmpty() && violations(filled).isEmpty());
    }

    private <T> Set<ConstraintViolation<T>> violations(Filled<T> filled) {
        return filled.content
                .map(content -> validator.validate(content).stream()
                        .filter(v -> filled.flaws.stream().noneMatch(flaw -> flaw.path.equals(path(v))))
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
                    refused.type() == ProblemType.TIME_IN_FUTURE ? texts.of("web.wanted.past") : mistake.expected();
            String typed = form.value(path);
            String found = mistake.found() == null || typed.isBlank() ? mistake.found() : quoted(typed);
            tell(form, record, new Flaw(path, found, wanted));
        }
        if (refused.mistakes().isEmpty()) {
            form.wrong(Form.WHOLE, String.valueOf(refused.getMessage()));
        }
    }

    /** A text of the bundles. */
    public String text(String key, Object... places) {
        return texts.of(key, places);
    }

    /** Notes a mistake that only a page can make, in a text of its own. */
    public void wrong(Form form, String field, String key, Object... places) {
        form.wrong(field, texts.of(key, places));
    }

    /** Somebody else changed it: what was typed stays, and sending it again is taken for the present version. */
    public void changedMeanwhile(Form form, int presentVersion) {
        form.put("version", String.valueOf(presentVersion));
        wrong(form, Form.WHOLE, "web.form.changed-meanwhile");
    }

    /** What is wrong at a path of the record. */
    private record Flaw(String path, @Nullable String found, String wanted) {}

    private void tell(Form form, Class<?> record, Flaw flaw) {
        String field = field(form, record, flaw.path);
        form.wrong(field, sentence(field.equals(Form.WHOLE) ? "" : label(record, field), flaw.found, flaw.wanted));
    }

    private String sentence(String label, @Nullable String found, String wanted) {
        String named = label.isEmpty() ? texts.of("web.form.whole") : label;
        return found == null
                ? texts.of("web.form.missing", named, wanted)
                : texts.of("web.form.found", named, found, wanted);
    }

    /** The field of the form that stands for a path: its own, or that of the list or record around it. */
    private String field(Form form, Class<?> record, String path) {
        for (String at = path; !at.isEmpty(); at = around(at)) {
            boolean isNamed = Character.isLetter(at.charAt(at.length() - 1))
                    && texts.find(key(record, at)).isPresent();
            if (isNamed || form.all().containsKey(at)) {
                return at;
            }
        }
        return Form.WHOLE;
    }

    private static String around(String path) {
        if (path.endsWith(ELEMENT)) {
            return path.substring(0, path.length() - ELEMENT.length());
        }
        return path.substring(0, Math.max(0, Math.max(path.lastIndexOf('['), path.lastIndexOf('.'))));
    }

    /** A mistake that only a page can find: what was typed at a field, and what is wanted there. */
    public void wrongAt(Form form, Class<?> record, String path, String wanted) {
        String typed = form.value(path);
        tell(form, record, new Flaw(path, typed.isBlank() ? null : quoted(typed), wanted));
    }

    /** What the field of a path is called. */
    public String labelOf(Class<?> record, String path) {
        return label(record, path);
    }

    /** As the template labels it; with the name of its row, where the rows have names. */
    private String label(Class<?> record, String path) {
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

    private @Nullable String found(Form form, ConstraintViolation<?> violation) {
        Object value = violation.getInvalidValue();
        if (value == null || (value instanceof String text && text.isBlank())) {
            return null;
        }
        if (value instanceof Collection<?> many) {
            return String.valueOf(many.size());
        }
        if (value instanceof String text
                && simpleName(violation.getConstraintDescriptor()).equals("Size")) {
            return texts.of("web.form.characters", text.length());
        }
        String typed = form.value(path(violation));
        return quoted(typed.isBlank() ? value.toString() : typed);
    }

    private String quoted(String text) {
        String whole = text.strip().replaceFirst("^(\\d{4}-\\d\\d-\\d\\d)T", "$1 ");
        return texts.of(
                "web.form.quoted", whole.length() > LONGEST_QUOTE ? whole.substring(0, LONGEST_QUOTE) + "…" : whole);
    }

    private String wanted(ConstraintViolation<?> violation, Object[] bounds) {
        Object value = violation.getInvalidValue();
        return switch (simpleName(violation.getConstraintDescriptor())) {
            case "NotNull", "NotBlank", "NotEmpty" ->
                Stream.of(bounds).allMatch(""::equals)
                        ? texts.of("web.wanted.something")
                        : texts.of("web.wanted.whole-between", bounds);
            case "Size" ->
                texts.of(
                        value instanceof Collection
                                ? "web.wanted.so-many"
                                : "web.wanted.characters",
                        bounds);
            case "Min", "Max", "DecimalMin", "DecimalMax" ->
                texts.of(value instanceof Integer ? "web.wanted.whole-between" : "web.wanted.between", bounds);
            default -> violation.getMessage();
        };
    }

    /** The least and the most that the constraints of a property let through; what they do not bound is empty. */
    private Object[] bounds(
            ConstraintViolation<?> violation, Function<String, Optional<Scale>> scales, Show show) {
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
                .filter(c -> Arrays.asList(constraints).contains(simpleName(c)))
                .map(c -> Objects.requireNonNull(c.getAttributes().get("value")))
                .findFirst()
                .orElse("");
    }

    private static String simpleName(ConstraintDescriptor<?> constraint) {
        return constraint.getAnnotation().annotationType().getSimpleName();
    }

    private static Comparator<ConstraintViolation<?>> inOrderOf(Form form) {
        List<String> fields = List.copyOf(form.all().keySet());
        return Comparator.<ConstraintViolation<?>>comparingInt(v -> {
                    int at = fields.indexOf(path(v));
                    return at < 0 ? fields.size() : at;
                })
                .thenComparing(FormReader::path);
    }

    /** A record that is constructed of what was typed. Blank fields are absent, and so are rows in which nothing stands. */
    private final class Filled<T> implements DataBinder.ValueResolver {

        private final Form form;
        private final String place;
        private final Function<String, Optional<Scale>> scales;
        private final TypedText typed;
        private final List<Flaw> flaws = new ArrayList<>();
        private final Optional<T> content;

        Filled(
                Form form,
                Class<T> record,
                String place,
                Show show,
                Function<String, Optional<Scale>> scales) {
            this.scales = scales;
            this.form = form;
            this.place = place;
            this.typed = new TypedText(show.zone());
            DataBinder binder = new DataBinder(null, record.getSimpleName());
            binder.setTargetType(ResolvableType.forClass(record));
            binder.setConversionService(typed);
            binder.construct(this);
            this.content = Optional.ofNullable(binder.getTarget()).map(record::cast);
            for (FieldError error : binder.getBindingResult().getFieldErrors()) {
                flaws.add(new Flaw(
                        error.getField(), quoted(form.value(place + error.getField())), texts.of("web.wanted.choice")));
            }
        }

        @Override
        public Set<String> getNames() {
            return form.all().keySet().stream()
                    .filter(name -> name.startsWith(place) && name.matches(ROWS) && !form.isBlank(name))
                    .map(name -> name.substring(place.length()))
                    .collect(Collectors.toSet());
        }

        @Override
        public @Nullable Object resolveValue(String name, Class<?> type) {
            String field = place + name;
            if (Collection.class.isAssignableFrom(type)) {
                List<String> lines = form.values(field).stream()
                        .flatMap(String::lines)
                        .map(String::strip)
                        .filter(line -> !line.isEmpty())
                        .toList();
                return lines.isEmpty() ? null : lines;
            }
            if (form.isBlank(field) || !typed.canConvert(String.class, type)) {
                return null;
            }
            try {
                Object value = typed.read(form.value(field), type);
                return value instanceof Double number
                        ? scales.apply(name).map(scale -> scale.kept(number)).orElse(number)
                        : value;
            } catch (TypedText.Unreadable e) {
                flaws.add(new Flaw(
                        name, e.found() == null ? quoted(form.value(field)) : e.found(), texts.of(e.wanted())));
                return null;
            }
        }
    }
}
