package dev.stayfixed.web.pages;

import dev.stayfixed.wording.Scale;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.core.ResolvableType;
import org.springframework.validation.DataBinder;
import org.springframework.validation.FieldError;

/** A record that is constructed of what was typed. Blank fields are absent, and so are rows in which nothing stands. */
final class FilledRecord<T> implements DataBinder.ValueResolver {

    /**
     * What was typed at a path and is no value of its type.
     *
     * @param found what stands in the way; null for all of what was typed
     * @param wanted the key of the text that says what is wanted
     */
    record Unread(String path, @Nullable String found, String wanted) {}

    /** A row of a form; no form has more than a hundred. */
    private static final Pattern NAME = Pattern.compile("[^\\[\\]]*(\\[\\d{1,2}][^\\[\\]]*)*");

    private static final int LONGEST_QUOTE = 40;

    private final Form form;
    private final Class<T> record;
    private final String place;
    private final Function<String, Optional<Scale>> scales;
    private final TypedText text;
    private final List<Unread> unread = new ArrayList<>();
    private final Optional<T> content;

    FilledRecord(Form form, Class<T> record, String place, Show show, Function<String, Optional<Scale>> scales) {
        this.scales = scales;
        this.form = form;
        this.record = record;
        this.place = place;
        this.text = new TypedText(show.zone());
        DataBinder binder = new DataBinder(null, record.getSimpleName());
        binder.setTargetType(ResolvableType.forClass(record));
        binder.setConversionService(text);
        binder.construct(this);
        this.content = Optional.ofNullable(binder.getTarget()).map(record::cast);
        for (FieldError error : binder.getBindingResult().getFieldErrors()) {
            unread.add(new Unread(error.getField(), null, "web.wanted.choice"));
        }
        typed().filter(name -> isField(record, name) && !NAME.matcher(name).matches())
                .forEach(name -> unread.add(new Unread("", quoted(name), "web.wanted.rows")));
    }

    private static String quoted(String name) {
        return name.length() > LONGEST_QUOTE ? name.substring(0, LONGEST_QUOTE) + "…" : name;
    }

    /** Names within the place under which something stands. */
    private Stream<String> typed() {
        return form.all().keySet().stream()
                .filter(name -> name.startsWith(place) && !form.isBlank(name))
                .map(name -> name.substring(place.length()));
    }

    /** Whether a record has such a field; what a page sends beside its fields, and what lies behind a value, is none. */
    private static boolean isField(Class<?> record, String path) {
        int dot = path.indexOf('.');
        String first = (dot < 0 ? path : path.substring(0, dot)).replaceFirst("\\[.*", "");
        return Stream.of(record.getRecordComponents())
                .filter(component -> component.getName().equals(first))
                .map(component -> ResolvableType.forType(component.getGenericType()))
                .map(type -> Collection.class.isAssignableFrom(type.toClass()) ? type.getGeneric() : type)
                .anyMatch(type ->
                        dot < 0 || (type.toClass().isRecord() && isField(type.toClass(), path.substring(dot + 1))));
    }

    /** Empty where something in it could not even be read. */
    Optional<T> content() {
        return content;
    }

    List<Unread> unread() {
        return List.copyOf(unread);
    }

    @Override
    public Set<String> getNames() {
        return typed().filter(name -> NAME.matcher(name).matches() && isField(record, name))
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
        if (form.isBlank(field) || !text.canConvert(String.class, type)) {
            return null;
        }
        try {
            Object value = text.read(form.value(field), type);
            return value instanceof Double number
                    ? scales.apply(name).map(scale -> scale.kept(number)).orElse(number)
                    : value;
        } catch (TypedText.Unreadable e) {
            unread.add(new Unread(name, e.found(), e.wanted()));
            return null;
        }
    }
}
