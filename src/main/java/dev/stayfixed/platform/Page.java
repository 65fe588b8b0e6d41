package dev.stayfixed.platform;

import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * A part of a long list, newest first.
 *
 * @param next names the place where the next part begins; empty at the end
 */
public record Page<T>(List<T> items, Optional<String> next) {

    /** Most items in one part. */
    public static final int LARGEST = 200;

    private static final Position TOP = new Position(
            Instant.parse("9999-01-01T00:00:00Z"), UUID.fromString("ffffffff-ffff-ffff-ffff-ffffffffffff"));

    /** The place of an item in the list: by time, then by id. */
    public record Position(Instant at, UUID id) {}

    /** Which part is wanted: at most {@code limit} items after {@code after}. */
    public record Request(int limit, Position after) {

        public static Request of(@Nullable Integer limit, @Nullable String cursor) {
            int wanted = limit == null ? 50 : limit;
            if (wanted < 1 || wanted > LARGEST) {
                throw new Refused(
                        ProblemType.INVALID_PARAMETER, "limit: found " + wanted + ", expected 1 to " + LARGEST);
            }
            return new Request(wanted, cursor == null ? TOP : position(cursor));
        }
    }

    /**
     * Cuts a part out of what was found.
     *
     * @param found one item more than wanted, where there are that many
     */
    public static <T> Page<T> of(List<T> found, Request request, Function<T, Position> position) {
        if (found.size() <= request.limit()) {
            return new Page<>(List.copyOf(found), Optional.empty());
        }
        List<T> items = List.copyOf(found.subList(0, request.limit()));
        Position last = position.apply(items.get(items.size() - 1));
        return new Page<>(items, Optional.of(cursor(last)));
    }

    public <R> Page<R> map(Function<T, R> mapping) {
        return new Page<>(items.stream().map(mapping).toList(), next);
    }

    private static String cursor(Position position) {
        return Base64.getUrlEncoder()
                .withoutPadding()
                .encodeToString((position.at() + " " + position.id()).getBytes(StandardCharsets.US_ASCII));
    }

    private static Position position(String cursor) {
        try {
            String[] parts = new String(Base64.getUrlDecoder().decode(cursor), StandardCharsets.US_ASCII).split(" ", 2);
            return new Position(Instant.parse(parts[0]), UUID.fromString(parts[1]));
        } catch (IllegalArgumentException | DateTimeException | ArrayIndexOutOfBoundsException e) {
            throw new Refused(
                    ProblemType.INVALID_PARAMETER,
                    "cursor: found something else, expected the \"next\" of an earlier answer, unchanged");
        }
    }
}
