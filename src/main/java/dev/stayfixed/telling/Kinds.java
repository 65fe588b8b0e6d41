package dev.stayfixed.telling;

import java.util.Arrays;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Sets of kinds as one column: words with commas between them. */
public final class Kinds {

    private Kinds() {}

    public static String text(Set<EventKind> kinds) {
        return new TreeSet<>(kinds).stream().map(Enum::name).collect(Collectors.joining(","));
    }

    /** Words of a kind that no longer exists are left out. */
    public static Set<EventKind> of(@Nullable String text) {
        if (text == null || text.isBlank()) {
            return Set.of();
        }
        Set<String> words = Set.of(text.split(","));
        return Arrays.stream(EventKind.values())
                .filter(kind -> words.contains(kind.name()))
                .collect(Collectors.toCollection(TreeSet::new));
    }
}
