package dev.stayfixed.reason;

import java.util.List;

/**
 * What is said, of an enum of such. Its text stands under {@link #key} in the bundle of each language and names each of {@link #parts}
 * in braces; by itself it is a word.
 */
public non-sealed interface Kind extends Part {

    /** Of the enum constant; stable, because answers of the interface print it. */
    String name();

    /** The names of the parts, in the order in which a reason gives them. */
    default List<String> parts() {
        return List.of();
    }

    /** Under which its texts stand: "TripReason.STILL_PENDING". */
    default String key() {
        return ((Enum<?>) this).getDeclaringClass().getSimpleName() + "." + name();
    }

    /** Whether a reason of this kind may have so many parts. */
    default boolean takes(int count) {
        return count == parts().size();
    }

    @Override
    default <T> T match(Cases<T> cases) {
        return cases.kind(this);
    }
}
