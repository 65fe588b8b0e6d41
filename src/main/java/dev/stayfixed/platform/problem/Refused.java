package dev.stayfixed.platform.problem;

import java.util.List;
import java.util.Map;
import java.util.function.Function;
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

    /** What was sent has mistakes in it, at least one. */
    public static Refused content(List<Mistake> mistakes) {
        return new Refused(ProblemType.INVALID_CONTENT, detail(mistakes, Mistake::sentence), mistakes, Map.of());
    }

    public static Refused content(Mistake mistake) {
        return content(List.of(mistake));
    }

    /** A refusal of another type for what stands at one place. */
    public static Refused at(ProblemType type, Mistake mistake) {
        return new Refused(type, mistake.sentence(), List.of(mistake), Map.of());
    }

    private static String detail(List<Mistake> mistakes, Function<Mistake, String> sentence) {
        String first = sentence.apply(mistakes.get(0));
        return mistakes.size() == 1 ? first : first + " (and " + (mistakes.size() - 1) + " more)";
    }

    public static Refused notFound(String what, Object id) {
        return new Refused(
                ProblemType.NOT_FOUND,
                "no " + what + " has the id " + id + "; list the " + what + "s and take the id from there");
    }

    /** Makes a value that checks itself, and says at which path it stood when it does not hold. */
    public static <T> T unless(String path, Supplier<T> value) {
        try {
            return value.get();
        } catch (IllegalArgumentException e) {
            throw content(Mistake.said(path, String.valueOf(e.getMessage())));
        }
    }

    public ProblemType type() {
        return type;
    }

    /** The detail, where each place is called as this says. */
    String detail(Function<Mistake, String> sentence) {
        return mistakes.isEmpty() ? String.valueOf(getMessage()) : detail(mistakes, sentence);
    }

    public List<Mistake> mistakes() {
        return mistakes;
    }

    public Map<String, Object> properties() {
        return properties;
    }
}
