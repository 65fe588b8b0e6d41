package dev.stayfixed.people.access;

import dev.stayfixed.people.Right;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** What is needed to come in by a door. */
enum Need {
    /** Nothing: it shows nothing of a shop, or what is needed stands in the address, a secret that the page itself looks at. */
    NOTHING(null),
    /** To be known, as whatever. */
    TO_BE_KNOWN(null),
    READ(Right.READ),
    DRIVES(Right.DRIVES),
    WORK(Right.WORK),
    OWN(Right.OWN);

    private final @Nullable Right right;

    Need(@Nullable Right right) {
        this.right = right;
    }

    boolean isMetBy(Optional<Asker> asker) {
        return this == NOTHING
                || asker.filter(one -> right == null || one.may(right)).isPresent();
    }
}
