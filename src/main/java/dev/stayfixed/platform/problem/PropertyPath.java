package dev.stayfixed.platform.problem;

import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * The path of a property as Bean Validation and Spring write it, "faults[0].code", and the same as a JSON pointer in URI form,
 * "#/faults/0/code". A name that holds a mark of the path itself stands quoted in brackets: "['a.b']".
 */
final class PropertyPath {

    private static final String MARKS = ".[]'\\";

    /** A name in brackets and quotes, what else stands in brackets, or a name. */
    private static final Pattern STEP =
            Pattern.compile("\\['((?:[^'\\\\]|\\\\.)*)'\\]|\\[([^\\]]*)\\]|[^.\\[]+", Pattern.DOTALL);

    private PropertyPath() {}

    /**
     * The path of these steps.
     *
     * @param steps names, and indexes as whole numbers
     */
    static String of(List<?> steps) {
        StringBuilder path = new StringBuilder();
        for (Object step : steps) {
            if (step instanceof Integer index) {
                path.append('[').append(index).append(']');
            } else if (isPlain(step.toString())) {
                path.append(path.isEmpty() ? "" : ".").append(step);
            } else {
                path.append("['")
                        .append(step.toString().replace("\\", "\\\\").replace("'", "\\'"))
                        .append("']");
            }
        }
        return path.toString();
    }

    private static boolean isPlain(String name) {
        return !name.isEmpty() && name.chars().noneMatch(c -> MARKS.indexOf(c) >= 0);
    }

    static String pointer(String path) {
        return STEP.matcher(path)
                .results()
                .map(PropertyPath::name)
                .map(step -> step.replace("~", "~0").replace("/", "~1"))
                .collect(Collectors.joining("/", path.isEmpty() ? "#" : "#/", ""));
    }

    private static String name(MatchResult step) {
        if (step.group(1) != null) {
            return step.group(1).replaceAll("(?s)\\\\(.)", "$1");
        }
        return step.group(2) != null ? step.group(2) : step.group();
    }
}
