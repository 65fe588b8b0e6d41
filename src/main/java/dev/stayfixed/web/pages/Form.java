package dev.stayfixed.web.pages;

import dev.stayfixed.platform.IfMatch;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.util.LinkedMultiValueMap;
import org.springframework.util.MultiValueMap;

/**
 * What a person typed into a form, kept as typed, and what is wrong with it, by field, in the words of the page. {@link FormReader} reads it.
 * Public for the templates.
 */
public final class Form {

    /** Where a mistake stands that is of no field. */
    public static final String WHOLE = "form";

    private final MultiValueMap<String, String> typed;
    private final Map<String, String> errors = new LinkedHashMap<>();
    private Optional<ProblemType> lacking = Optional.empty();

    public Form(MultiValueMap<String, String> typed) {
        this.typed = new LinkedMultiValueMap<>(typed);
    }

    public static Form empty() {
        return new Form(new LinkedMultiValueMap<>());
    }

    public String value(String field) {
        String text = typed.getFirst(field);
        return text == null ? "" : text;
    }

    public boolean has(String field, String value) {
        return typed.getOrDefault(field, List.of()).contains(value);
    }

    public MultiValueMap<String, String> all() {
        return typed;
    }

    public List<String> values(String field) {
        return typed.getOrDefault(field, List.of());
    }

    public boolean isBlank(String field) {
        return value(field).isBlank();
    }

    public Form put(String field, String value) {
        typed.set(field, value);
        return this;
    }

    public Form putAll(String field, List<String> values) {
        typed.put(field, values);
        return this;
    }

    /** For what is known already, unless a person typed something else, or emptied the field. */
    public Form putIfMissing(String field, String value) {
        return typed.containsKey(field) ? this : put(field, value);
    }

    public Form putIfBlank(String field, String value) {
        return isBlank(field) ? put(field, value) : this;
    }

    public Map<String, String> errors() {
        return errors;
    }

    public @Nullable String error(String field) {
        return errors.get(field);
    }

    public boolean isWrong() {
        return !errors.isEmpty();
    }

    public void wrong(String field, String message) {
        errors.putIfAbsent(field, message);
    }

    /** The version that the page showed; one that never was, where a form does not say. */
    public IfMatch version() {
        String version = value("version");
        return IfMatch.of(version.matches("\\d{1,9}") ? IfMatch.tag(Integer.parseInt(version)) : IfMatch.tag(-1));
    }

    /**
     * Does what the form asks for, unless a field is wrong already.
     *
     * @param doing names where to go from there
     * @param refusing says at the fields why it was refused, or throws the refusal on
     * @param shown the form once more, with what is wrong
     */
    public String answer(
            HttpServletResponse response, Supplier<String> doing, Consumer<Refused> refusing, Supplier<String> shown) {
        if (errors.isEmpty()) {
            try {
                return doing.get();
            } catch (Refused refused) {
                refusing.accept(refused);
            }
        }
        notTaken(response);
        return shown.get();
    }

    /**
     * Says with the answer that the form was not taken: because of what was typed, or because the service cannot take anything now, and
     * when it may be able to.
     */
    public void notTaken(HttpServletResponse response) {
        response.setStatus(lacking.map(ProblemType::status).orElse(HttpStatus.UNPROCESSABLE_CONTENT.value()));
        lacking.ifPresent(type ->
                type.retryAfter().ifPresent(seconds -> response.setHeader("Retry-After", Integer.toString(seconds))));
    }

    /** Nothing that was typed is to blame for a refusal that the same form may not meet later. */
    public void note(Refused refused) {
        if (refused.type().retryAfter().isPresent()) {
            lacking = Optional.of(refused.type());
        }
    }
}
