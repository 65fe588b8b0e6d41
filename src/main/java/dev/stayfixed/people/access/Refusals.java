package dev.stayfixed.people.access;

import dev.stayfixed.platform.problem.ProblemAnswer;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import org.springframework.http.HttpHeaders;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.security.core.AuthenticationException;
import org.springframework.security.web.AuthenticationEntryPoint;
import org.springframework.security.web.access.AccessDeniedHandler;

/** What somebody is told who may not come in: people are led to the page where they sign in, programs get a problem. */
final class Refusals implements AuthenticationEntryPoint, AccessDeniedHandler {

    @Override
    public void commence(HttpServletRequest request, HttpServletResponse response, AuthenticationException why)
            throws IOException {
        if (isPage(request)) {
            response.setHeader("Cache-Control", "no-store");
            response.setStatus(HttpServletResponse.SC_SEE_OTHER);
            response.setHeader(
                    "Location", "/sign-in?to=" + URLEncoder.encode(address(request), StandardCharsets.UTF_8));
            return;
        }
        response.setHeader(HttpHeaders.WWW_AUTHENTICATE, "Bearer");
        ProblemAnswer.write(
                new Refused(
                        ProblemType.SIGN_IN_NEEDED,
                        request.getHeader(HttpHeaders.AUTHORIZATION) == null
                                ? "found nobody who is known, expected a person who has signed in or a token; nothing was stored"
                                : "found a token that is unknown, has run out or was ended, expected a good one; nothing was"
                                        + " stored"),
                request,
                response);
    }

    private static boolean isPage(HttpServletRequest request) {
        String accept = request.getHeader("Accept");
        return request.getMethod().equals("GET")
                && accept != null
                && accept.contains("text/html")
                && !request.getRequestURI().startsWith("/api/");
    }

    private static String address(HttpServletRequest request) {
        return request.getRequestURI() + (request.getQueryString() == null ? "" : "?" + request.getQueryString());
    }

    @Override
    public void handle(HttpServletRequest request, HttpServletResponse response, AccessDeniedException why)
            throws IOException {
        ProblemAnswer.write(
                new Refused(
                        ProblemType.NOT_ALLOWED,
                        "found somebody who may not do this here, expected an owner, or whoever the shop lets do it; nothing was"
                                + " stored"),
                request,
                response);
    }
}
