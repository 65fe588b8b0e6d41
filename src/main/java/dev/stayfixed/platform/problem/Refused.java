package dev.stayfixed.platform.problem;

import java.util.List;
import java.util.Map;
import java.util.function.Supplier;

/** The service says no, with a type from the catalogue and a sentence that says what was found, where, and what to do. */
public final class Refused extends RuntimeException {

    private final ProblemType type;
    private final transient List<Mistake> mistakes;
    private final transient Map<String, Object> properties;

    public Refused(ProblemType type, String detail) {
        this(type, detail, List.of(), Map.of());
    }

    /**
     * A refusal that carries more than its sentence.
     *
     * @param properties further members of the problem, such as the id of what already exists
     */
    public Refused(ProblemType type, String detail, Map<String, ?> properties) {
        this(type, detail, List.of(), properties);
    }

    /** A refusal for a reason that only the log explains. */
    public Refused(ProblemType type, String detail, Throwable cause) {
        this(type, detail);
        initCause(cause);
    }

    private Refused(ProblemType type, String detail, List<Mistake> mistakes, Map<String, ?> properties) {
        super(detail);
        this.type = type;
        this.mistakes = List.copyOf(mistakes);
        this.properties = Map.copyOf(properties);
    }

    /** A body with mistakes in it, at least one. */
    public static Refused content(List<Mistake> mistakes) {
        String first = mistakes.get(0).message();
        String detail = mistakes.size() == 1 ? first : first + " (and " + (mistakes.size() - 1) + " more)";
        return new Refused(ProblemType.INVALID_CONTENT, detail, mistakes, Map.of());
    }

    public static Refused content(Mistake mistake) {
        return content(List.of(mistake));
    }

    public static Refused notFound(String what, Object id) {
        return new Refused(
                ProblemType.NOT_FOUND,
                "no " + what + " has the id " + id + "; list the " + what + "s and take the id from there");
    }

    /** Makes a value that checks itself, and says where in the body it stood when it does not hold. */
    public static <T> T unless(String pointer, Supplier<T> value) {
        try {
            return value.get();
        } catch (IllegalArgumentException e) {
            throw content(Mistake.said(pointer, String.valueOf(e.getMessage())));
        }
    }

    public ProblemType type() {
        return type;
    }

    public List<Mistake> mistakes() {
        return mistakes;
    }

    public Map<String, Object> properties() {
        return properties;
    }
}
