package dev.stayfixed.platform.problem;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.springframework.web.util.HtmlUtils;

/** Writes a problem where no controller is reached, in filters: as JSON, or as a plain page for a browser. */
public final class ProblemAnswer {

    private ProblemAnswer() {}

    public static void write(Refused refused, HttpServletRequest request, HttpServletResponse response)
            throws IOException {
        boolean page = wantsPage(request);
        byte[] body = page
                ? page(refused, request).getBytes(StandardCharsets.UTF_8)
                : Problem.of(refused, RequestId.instance(request)).json();
        response.setStatus(refused.type().status());
        refused.type().retryAfter().ifPresent(s -> response.setHeader("Retry-After", Integer.toString(s)));
        response.setContentType(page ? "text/html;charset=UTF-8" : Problem.MEDIA_TYPE);
        response.setContentLength(body.length);
        response.getOutputStream().write(body);
    }

    private static boolean wantsPage(HttpServletRequest request) {
        String accept = request.getHeader("Accept");
        return accept != null
                && accept.contains("text/html")
                && !request.getRequestURI().startsWith("/api/");
    }

    /** Needs neither the database nor any other file: it is shown while the service can do little. */
    private static String page(Refused refused, HttpServletRequest request) {
        return """
                <!DOCTYPE html>
                <html lang="en">
                <head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>%1$s</title></head>
                <body><main><h1>%1$s</h1><p>%2$s</p><p>%3$s</p>%4$s</main></body>
                </html>
                """.formatted(
                        HtmlUtils.htmlEscape(refused.type().title()),
                        HtmlUtils.htmlEscape(String.valueOf(refused.getMessage())),
                        HtmlUtils.htmlEscape(refused.type().remedy()),
                        "POST".equals(request.getMethod()) ? "<p>Go back in your browser to what you sent.</p>" : "");
    }
}
