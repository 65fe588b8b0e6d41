package dev.stayfixed.platform;

import dev.stayfixed.platform.problem.ContentCheck;
import dev.stayfixed.platform.problem.JsonMistakes;
import dev.stayfixed.platform.problem.Mistake;
import dev.stayfixed.platform.problem.Refused;
import org.springframework.stereotype.Component;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.json.JsonMapper;

/** Reads JSON of a documented shape from bytes, and nothing else. The rules are in {@link JsonRules} and the configuration. */
@Component
public class StrictJson {

    private final JsonMapper mapper;
    private final ContentCheck check;

    StrictJson(JsonMapper mapper, ContentCheck check) {
        this.mapper = mapper;
        this.check = check;
    }

    /**
     * Reads and checks a body.
     *
     * @throws Refused saying what was found, where, and what was expected
     */
    public <T> T read(byte[] utf8, Class<T> shape) {
        try {
            T content = mapper.readValue(utf8, shape);
            if (content == null) {
                throw Refused.content(new Mistake("", "null", "an object"));
            }
            return check.checked(content);
        } catch (JacksonException e) {
            throw JsonMistakes.explain(e);
        }
    }

    /** The same content gives the same bytes, however it was written. */
    public byte[] canonical(Object content) {
        return mapper.writeValueAsBytes(content);
    }
}
