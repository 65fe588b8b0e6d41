package dev.stayfixed.reason;

import java.util.List;

/**
 * Why something is so, or what is to be done: its kind and what it speaks of. Cheap to make: nothing is put into words before somebody
 * reads it.
 *
 * @param parts as many as the kind names, in its order
 */
public record Reason(Kind kind, List<Part> parts) implements Part {

    public Reason {
        parts = List.copyOf(parts);
        if (!kind.takes(parts.size())) {
            throw new IllegalArgumentException(
                    "%s: found %d parts, expected %s".formatted(kind.key(), parts.size(), kind.parts()));
        }
    }

    public static Reason of(Kind kind, Part... parts) {
        return new Reason(kind, List.of(parts));
    }

    /** The part of this name. */
    public Part part(String name) {
        return parts.get(kind.parts().indexOf(name));
    }

    /** The same said as a sentence of its own. */
    public Reason asSentence() {
        return of(Shape.SENTENCE, this);
    }

    @Override
    public <T> T match(Cases<T> cases) {
        return cases.reason(this);
    }
}
