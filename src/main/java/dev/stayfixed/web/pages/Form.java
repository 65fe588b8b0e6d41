package dev.stayfixed.web.pages;

import dev.stayfixed.obd.ObdFormatException;
import dev.stayfixed.platform.IfMatch;
import dev.stayfixed.platform.PlainText;
import dev.stayfixed.platform.problem.Mistake;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.telling.MailAddress;
import dev.stayfixed.wording.Wording;
import jakarta.servlet.http.HttpServletResponse;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.util.LinkedMultiValueMap;
import org.springframework.util.MultiValueMap;

/**
 * What a person typed into a form, kept as typed, and what is wrong with it, by field. Reading a field never fails: it notes the
 * mistake and goes on, so that one answer names all of them. Public for the templates.
 */
public final class Form {

    /** Where a mistake stands that is of no field. */
    static final String WHOLE = "form";

    private static final long FIVE_YEARS = 5 * 365 * 86_400L;

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

    public Optional<String> text(String field, String label, int longest) {
        String text = value(field).strip();
        Optional<String> flaw = PlainText.flaw(text);
        if (flaw.isPresent()) {
            wrong(field, label + ": found " + flaw.get() + "; take it out, plain text is wanted");
        } else if (text.length() > longest) {
            wrong(field, label + ": found " + text.length() + " characters, at most " + longest + " fit");
        }
        return Optional.of(text).filter(t -> !t.isEmpty());
    }

    public String required(String field, String label, int longest, String advice) {
        Optional<String> text = text(field, label, longest);
        if (text.isEmpty()) {
            wrong(field, label + ": " + advice);
        }
        return text.orElse("");
    }

    public OptionalDouble number(String field, String label) {
        String text = value(field).strip().replace(',', '.');
        if (text.isEmpty()) {
            return OptionalDouble.empty();
        }
        if (!text.matches("[+-]?(\\d{1,12}(\\.\\d{0,9})?|\\.\\d{1,9})")) {
            wrong(field, label + ": found “" + shortened(value(field)) + "”, a number such as 12.5 is wanted");
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(Double.parseDouble(text));
    }

    public Optional<Integer> whole(String field, String label, int least, int most) {
        OptionalDouble number = number(field, label);
        if (number.isEmpty()) {
            return Optional.empty();
        }
        double value = number.getAsDouble();
        if (value != Math.rint(value) || value < least || value > most) {
            wrong(
                    field,
                    label + ": found " + shortened(value(field)) + ", a whole number from " + least + " to " + most
                            + " is wanted");
            return Optional.empty();
        }
        return Optional.of((int) value);
    }

    /** A time in the shop's zone that has come already. */
    public Optional<Instant> past(String field, String label, ZoneId zone, Instant now) {
        String text = value(field).strip();
        if (text.isEmpty()) {
            return Optional.empty();
        }
        try {
            LocalDateTime local = LocalDateTime.parse(text);
            if (local.getYear() < 1990 || local.atZone(zone).toInstant().isAfter(now.plusSeconds(300))) {
                wrong(field, label + ": found " + text.replace('T', ' ') + ", a time from 1990 up to now is wanted");
                return Optional.empty();
            }
            return Optional.of(local.atZone(zone).toInstant());
        } catch (DateTimeException e) {
            wrong(
                    field,
                    label + ": found “" + shortened(text) + "”, a date and time such as 2026-03-14T08:15 is wanted");
            return Optional.empty();
        }
    }

    /** A time in the shop's zone, from today on. */
    public Optional<Instant> coming(String field, String label, ZoneId zone, Instant now) {
        String text = value(field).strip();
        try {
            Instant at = LocalDateTime.parse(text).atZone(zone).toInstant();
            if (!at.isBefore(now.minusSeconds(86_400)) && at.isBefore(now.plusSeconds(FIVE_YEARS))) {
                return Optional.of(at);
            }
        } catch (DateTimeException e) {
            wrong(field, label + ": give a date and time such as 2026-03-14T08:15");
            return Optional.empty();
        }
        wrong(
                field,
                label + ": found " + text.replace('T', ' ') + ", a time from today on, within five years, is wanted");
        return Optional.empty();
    }

    /** Reads text by a parser that explains itself. */
    public <T> Optional<T> parsed(String field, String label, Function<String, T> parser) {
        return isBlank(field) ? Optional.empty() : made(field, label, () -> parser.apply(value(field)));
    }

    /** Makes a value that checks itself; where it does not hold, the field says why. */
    public <T> Optional<T> made(String field, String label, Supplier<T> value) {
        try {
            return Optional.of(value.get());
        } catch (ObdFormatException e) {
            wrong(field, label + ": " + Wording.METRIC.words(e.reason()));
            return Optional.empty();
        } catch (IllegalArgumentException e) {
            wrong(field, label + ": " + e.getMessage());
            return Optional.empty();
        }
    }

    /** A whole number that may not be missing. */
    public Optional<Integer> wantedWhole(String field, String label, int least, int most) {
        Optional<Integer> number = whole(field, label, least, most);
        if (number.isEmpty()) {
            wrong(field, label + ": give a whole number from " + least + " to " + most);
        }
        return number;
    }

    /** A mail address that may be missing. */
    public Optional<String> email(String field, String label) {
        String address = value(field).strip();
        Optional<String> flaw = address.isEmpty() ? Optional.empty() : MailAddress.flaw(address);
        flaw.ifPresent(
                expected -> wrong(field, label + ": found “" + shortened(address) + "”, " + expected + " is wanted"));
        return Optional.of(address).filter(a -> !a.isEmpty());
    }

    /** Somebody else changed it: what was typed stays, and sending it again is taken for the present version. */
    public void changedMeanwhile(int presentVersion) {
        put("version", String.valueOf(presentVersion));
        wrong(
                "form",
                "Somebody changed this while you had it open, and nothing was done. What you typed is below; send it again if it"
                        + " still holds.");
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

    /** A refusal, told at the fields that it names, or else at the top of the form. */
    public void refused(Refused refused, Map<String, String> fieldsByPath) {
        note(refused);
        for (Mistake mistake : refused.mistakes()) {
            wrong(fieldsByPath.getOrDefault(mistake.path(), "form"), mistake.sentence());
        }
        if (refused.mistakes().isEmpty()) {
            wrong("form", String.valueOf(refused.getMessage()));
        }
    }

    /** A refusal as above, with the label of a field instead of its path. */
    public void refusedAs(Refused refused, Map<String, String> fieldsByPath, Map<String, String> labels) {
        note(refused);
        for (Mistake mistake : refused.mistakes()) {
            String label = labels.getOrDefault(mistake.path(), "Form");
            wrong(
                    fieldsByPath.getOrDefault(mistake.path(), "form"),
                    "%s: found %s, wanted: %s".formatted(label, mistake.found(), mistake.expected()));
        }
        if (refused.mistakes().isEmpty()) {
            wrong("form", String.valueOf(refused.getMessage()));
        }
    }

    private static String shortened(String text) {
        return text.length() > 40 ? text.substring(0, 40) + "…" : text;
    }
}
