package dev.stayfixed.platform.problem;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;

/** Writes a problem where no controller is reached: in filters. */
public final class ProblemAnswer {

    private ProblemAnswer() {}

    public static void write(Refused refused, HttpServletRequest request, HttpServletResponse response)
            throws IOException {
        byte[] body = Problem.of(refused, request.getRequestURI()).json();
        response.setStatus(refused.type().status());
        refused.type().retryAfter().ifPresent(s -> response.setHeader("Retry-After", Integer.toString(s)));
        response.setContentType(Problem.MEDIA_TYPE);
        response.setContentLength(body.length);
        response.getOutputStream().write(body);
    }
}
