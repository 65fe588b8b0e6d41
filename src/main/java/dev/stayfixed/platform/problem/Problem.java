package dev.stayfixed.platform.problem;

import com.fasterxml.jackson.annotation.JsonAnyGetter;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.json.JsonMapper;

/** An error as it goes out: RFC 9457 problem details. */
@JsonPropertyOrder({"type", "title", "status", "detail", "instance", "errors"})
@JsonInclude(JsonInclude.Include.NON_EMPTY)
public record Problem(
        String type,
        String title,
        int status,
        String detail,
        String instance,
        List<Place> errors,
        @JsonAnyGetter Map<String, Object> properties) {

    public static final String MEDIA_TYPE = "application/problem+json";

    private static final JsonMapper JSON = JsonMapper.shared();

    /** A place in the body, as a JSON pointer in URI form such as "#/faults/0/code", and what is wrong there. */
    public record Place(String pointer, @Nullable String found, String expected, String message) {

        static Place of(Mistake mistake) {
            String pointer = PropertyPath.pointer(mistake.path());
            return new Place(pointer, mistake.found(), mistake.expected(), mistake.sentence(pointer));
        }
    }

    static Problem of(Refused refused, String instance) {
        ProblemType type = refused.type();
        return new Problem(
                type.path(),
                type.title(),
                type.status(),
                refused.detail(mistake -> Place.of(mistake).message()),
                instance,
                type == ProblemType.INVALID_CONTENT
                        ? refused.mistakes().stream().map(Place::of).toList()
                        : List.of(),
                refused.properties());
    }

    static Problem of(ProblemType type, int status, String detail, String instance) {
        return new Problem(type.path(), type.title(), status, detail, instance, List.of(), Map.of());
    }

    byte[] json() {
        return JSON.writeValueAsBytes(this);
    }
}
