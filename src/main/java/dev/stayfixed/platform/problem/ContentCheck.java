package dev.stayfixed.platform.problem;

import jakarta.validation.Validator;
import java.util.Comparator;
import java.util.List;
import org.springframework.stereotype.Component;

/** Checks a body that was read against the constraints written on its record. */
@Component
public class ContentCheck {

    private final Validator validator;

    ContentCheck(Validator validator) {
        this.validator = validator;
    }

    /**
     * The content itself, when everything in it holds.
     *
     * @throws Refused naming every place that does not hold
     */
    public <T> T checked(T content) {
        List<Mistake> mistakes = validator.validate(content).stream()
                .map(v -> new Mistake(v.getPropertyPath().toString(), v.getInvalidValue(), v.getMessage()))
                .sorted(Comparator.comparing(mistake -> PropertyPath.pointer(mistake.path())))
                .toList();
        if (!mistakes.isEmpty()) {
            throw Refused.content(mistakes);
        }
        return content;
    }
}
