package dev.stayfixed.verification;

import java.util.Optional;
import java.util.OptionalInt;

/**
 * How many driving cycles lie between two readings that nobody recorded. One in which the monitor did not run changes next to nothing,
 * so only whether there was one, and the most there can have been, matter.
 *
 * @param most empty where nothing limits them
 */
record Unrecorded(int least, OptionalInt most) {

    static final Unrecorded ANY = new Unrecorded(0, OptionalInt.empty());

    static Unrecorded between(int least, int most) {
        return new Unrecorded(Math.max(0, least), OptionalInt.of(Math.max(0, most)));
    }

    static Unrecorded atMost(int most) {
        return between(0, most);
    }

    /** The same with one of them told apart; empty where there can be none. */
    Optional<Unrecorded> butOne() {
        return !allows(1)
                ? Optional.empty()
                : Optional.of(new Unrecorded(
                        Math.max(0, least - 1), most.isEmpty() ? most : OptionalInt.of(most.getAsInt() - 1)));
    }

    boolean allows(int cycles) {
        return most.isEmpty() || cycles <= most.getAsInt();
    }
}
