package dev.stayfixed.reason;

import java.util.ArrayList;
import java.util.List;

/** How reasons are put together. */
public enum Shape implements Kind {
    /** One after the other: "a; b". */
    EACH("first", "second"),
    /** Of one kind: "a, b". */
    LIST("first", "second"),
    /** All at once: "a and b". */
    BOTH("first", "second"),
    /** Sentences one after the other: "A. B.". */
    SENTENCES("first", "second"),
    /** As much as there is of what is needed: "a of b". */
    OUT_OF("first", "second"),
    /** With a capital and a full stop. */
    SENTENCE("what");

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> parts;

    Shape(String... parts) {
        this.parts = List.of(parts);
    }

    @Override
    public List<String> parts() {
        return parts;
    }

    @Override
    public boolean takes(int count) {
        return this == SENTENCE ? count == 1 : count > 0;
    }

    /** All of them in this shape; one reason stays what it is. */
    public Reason of(List<? extends Part> all) {
        return all.size() == 1 && all.get(0) instanceof Reason one ? one : new Reason(this, new ArrayList<>(all));
    }
}
