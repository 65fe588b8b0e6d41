package dev.stayfixed.platform;

import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The If-Match header of RFC 9110, section 13.1.1, against versions that are whole numbers. */
public final class IfMatch {

    private final List<String> tags;

    private IfMatch(List<String> tags) {
        this.tags = tags;
    }

    /**
     * Reads the header.
     *
     * @throws Refused when there is none, or it holds no entity tag
     */
    public static IfMatch of(@Nullable String header) {
        if (header == null || header.isBlank()) {
            throw new Refused(
                    ProblemType.PRECONDITION_REQUIRED,
                    "If-Match: found nothing, expected the ETag of the version to change, such as \"3\"; GET the resource to"
                            + " learn it");
        }
        List<String> tags = Arrays.stream(header.split(",")).map(String::strip).toList();
        if (!tags.stream().allMatch(t -> t.matches("\\*|(W/)?\"[\\x21\\x23-\\x7E\\x80-\\xFF]*\""))) {
            throw new Refused(
                    ProblemType.INVALID_PARAMETER,
                    "If-Match: found something that is no entity tag, expected an ETag in quotes, such as \"3\"");
        }
        return new IfMatch(tags);
    }

    /** By strong comparison: a weak tag matches nothing. */
    public void check(int version) {
        if (!tags.contains("*") && !tags.contains(tag(version))) {
            throw new Refused(
                    ProblemType.VERSION_CHANGED,
                    "If-Match: found " + String.join(", ", tags) + ", expected " + tag(version)
                            + ", the present version; get it again and repeat the change");
        }
    }

    public static String tag(int version) {
        return "\"" + version + "\"";
    }
}
