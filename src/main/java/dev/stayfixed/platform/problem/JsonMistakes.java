package dev.stayfixed.platform.problem;

import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.JacksonException;
import tools.jackson.core.exc.InputCoercionException;
import tools.jackson.core.exc.StreamConstraintsException;
import tools.jackson.core.exc.StreamReadException;
import tools.jackson.databind.exc.InvalidFormatException;
import tools.jackson.databind.exc.MismatchedInputException;
import tools.jackson.databind.exc.UnrecognizedPropertyException;

/** Says in plain words why a body could not be read as JSON of the expected shape, and where. */
public final class JsonMistakes {

    private JsonMistakes() {}

    public static Refused explain(JacksonException e) {
        return isSyntax(e) ? new Refused(ProblemType.MALFORMED_JSON, syntax(e)) : Refused.content(mistake(e));
    }

    /** Broken, too deep, too long, or nothing at all; a number that does not fit its field is content. */
    private static boolean isSyntax(JacksonException e) {
        return (e instanceof StreamReadException && !(e instanceof InputCoercionException))
                || e instanceof StreamConstraintsException
                || e.getOriginalMessage().startsWith("No content to map");
    }

    private static String syntax(JacksonException e) {
        String place = e.getLocation() == null || e.getLocation().getLineNr() < 1
                ? ""
                : "line " + e.getLocation().getLineNr() + ", column "
                        + e.getLocation().getColumnNr() + ": ";
        // Without the name of the parser's own setting
        String message = e.getOriginalMessage().replaceAll(", from `[^`]*`|\\s*\\(`?(com|tools|org)\\.[^)]*\\)", "");
        return place + message + "; expected one JSON object in UTF-8";
    }

    private static Mistake mistake(JacksonException e) {
        String path = path(e.getPath());
        if (e instanceof UnrecognizedPropertyException unknown) {
            return new Mistake(path, "a property of this name", "one of " + known(unknown.getKnownPropertyIds()));
        }
        if (e instanceof InvalidFormatException format) {
            return new Mistake(path, format.getValue(), expected(format.getTargetType()));
        }
        if (e instanceof InputCoercionException coercion) {
            return new Mistake(path, "a number that does not fit", expected(coercion.getTargetType()));
        }
        if (e instanceof MismatchedInputException mismatch) {
            return mismatch.getTargetType() == null || isSaid(mismatch)
                    ? Mistake.said(path, mismatch.getOriginalMessage())
                    : new Mistake(path, "something else", expected(mismatch.getTargetType()));
        }
        return Mistake.said(path, e.getOriginalMessage());
    }

    private static boolean isSaid(MismatchedInputException e) {
        return e.getOriginalMessage().startsWith("found ");
    }

    private static String known(@Nullable Collection<Object> names) {
        return names == null
                ? "the documented properties"
                : new TreeSet<>(names.stream().map(Object::toString).toList())
                        .stream().collect(Collectors.joining(", "));
    }

    private static String path(List<JacksonException.Reference> path) {
        return PropertyPath.of(path.stream()
                .map(r -> r.getPropertyName() == null ? (Object) r.getIndex() : r.getPropertyName())
                .toList());
    }

    private static String expected(Class<?> type) {
        if (type.isEnum()) {
            return "one of "
                    + Arrays.stream(type.getEnumConstants())
                            .map(Object::toString)
                            .collect(Collectors.joining(", "));
        }
        if (type == UUID.class) {
            return "an id, such as 7b1c7d1e-0f5e-4c58-9a57-0b8f0a6f2f7e";
        }
        if (type == boolean.class || type == Boolean.class) {
            return "true or false";
        }
        if (type == int.class || type == Integer.class) {
            return "a whole number";
        }
        if (type == Double.class || type == double.class) {
            return "a number";
        }
        if (type == String.class) {
            return "text in quotes";
        }
        return Collection.class.isAssignableFrom(type) ? "a list" : "an object";
    }
}
