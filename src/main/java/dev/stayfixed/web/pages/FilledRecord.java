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

    private final Form form;
    private final String place;
    private final Function<String, Optional<Scale>> scales;
    private final TypedText typed;
    private final List<Unread> unread = new ArrayList<>();
    private final Optional<T> content;

    FilledRecord(Form form, Class<T> record, String place, Show show, Function<String, Optional<Scale>> scales) {
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
            unread.add(new Unread(error.getField(), null, "web.wanted.choice"));
        }
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
        return form.all().keySet().stream()
                .filter(name -> name.startsWith(place) && NAME.matcher(name).matches() && !form.isBlank(name))
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
            unread.add(new Unread(name, e.found(), e.wanted()));
            return null;
        }
    }
}
