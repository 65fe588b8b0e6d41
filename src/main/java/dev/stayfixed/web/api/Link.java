package dev.stayfixed.web.api;

import java.util.Arrays;
import java.util.stream.Collectors;

/** Where a related resource is, or where a step is taken that is possible now. */
public record Link(String href) {

    public static final String BASE = "/api/v1";

    /** The address under the base that these parts name, in their order. */
    public static Link to(Object... parts) {
        return new Link(Arrays.stream(parts).map(Object::toString).collect(Collectors.joining("/", BASE + "/", "")));
    }
}
