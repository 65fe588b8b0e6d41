package dev.stayfixed.platform.problem;

import jakarta.servlet.http.HttpServletRequest;
import java.util.Locale;
import java.util.UUID;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * The id of one request: it stands in each line that the request leaves in the log, in the answer, and in a problem, which names its
 * occurrence by it. What a proxy gave is taken where it is a UUID, with or without its hyphens; anything else could bring lines of its
 * own into a log.
 */
public final class RequestId {

    public static final String HEADER = "X-Request-Id";

    /** The name under which log lines have it. */
    public static final String IN_LOG = "request";

    private static final String ATTRIBUTE = RequestId.class.getName();

    private static final Pattern UUID_TEXT =
            Pattern.compile("([0-9a-f]{8})-?([0-9a-f]{4})-?([0-9a-f]{4})-?([0-9a-f]{4})-?([0-9a-f]{12})");

    private RequestId() {}

    /** The id of the request, which has one from here on. */
    public static String of(HttpServletRequest request) {
        if (request.getAttribute(ATTRIBUTE) instanceof String known) {
            return known;
        }
        String id = orNew(request.getHeader(HEADER));
        request.setAttribute(ATTRIBUTE, id);
        return id;
    }

    static String orNew(@Nullable String given) {
        var form = UUID_TEXT.matcher(given == null ? "" : given.toLowerCase(Locale.ROOT));
        return form.matches()
                ? form.replaceFirst("$1-$2-$3-$4-$5")
                : UUID.randomUUID().toString();
    }

    /** As a problem names it (RFC 9457, "instance"). */
    static String instance(HttpServletRequest request) {
        return uri(of(request));
    }

    static String uri(String id) {
        return "urn:uuid:" + id;
    }
}
