package dev.stayfixed.web.api;

import dev.stayfixed.platform.Page;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * Part of a list.
 *
 * @param next send it as "cursor" for the next part; missing at the end
 */
public record PageAnswer<T>(List<T> items, @Nullable String next) {

    public static <A, T> PageAnswer<T> of(Page<A> page, Function<A, T> mapping) {
        return new PageAnswer<>(
                page.items().stream().map(mapping).toList(), page.next().orElse(null));
    }
}
