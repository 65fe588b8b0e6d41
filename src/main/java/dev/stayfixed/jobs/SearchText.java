package dev.stayfixed.jobs;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** What a person types to find something: part of a text, in any case. */
public final class SearchText {

    private SearchText() {}

    /** A pattern for {@code like … escape '!'}. */
    public static String like(@Nullable String typed) {
        String text = typed == null ? "" : typed.strip().toLowerCase(Locale.ROOT);
        return "%" + text.replace("!", "!!").replace("%", "!%").replace("_", "!_") + "%";
    }
}
