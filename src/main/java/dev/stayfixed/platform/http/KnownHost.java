package dev.stayfixed.platform.http;

import dev.stayfixed.platform.problem.ProblemAnswer;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.Optional;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * Answers to the names of this service only, before anything of a request is read (421, RFC 9110 section 15.5.20). It stops DNS
 * rebinding: a page of another site lets its own name point to this machine, and the browser takes what it reads here, or writes, for
 * that site's own business. Where the service listens does not help, because the browser runs on this machine; but the browser says
 * by which name it came.
 */
final class KnownHost extends OncePerRequestFilter {

    private final OwnNames names;

    KnownHost(OwnNames names) {
        this.names = names;
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        try {
            check(request);
        } catch (Refused refused) {
            ProblemAnswer.write(refused, request, response);
            return;
        }
        chain.doFilter(request, response);
    }

    private void check(HttpServletRequest request) {
        checkName("the Host", Optional.ofNullable(request.getHeader("Host")).orElse(""));
        // That of an absolute target, or of a proxy that we were told to trust.
        checkName("the address", request.getServerName());
    }

    private void checkName(String where, String text) {
        Authority called = Authority.of(text)
                .orElseThrow(() -> new Refused(
                        ProblemType.MALFORMED_REQUEST,
                        where + ": found " + (text.isEmpty() ? "none" : "\"" + text + "\"")
                                + ", expected the name of this service, with its port if it has one"));
        if (!names.has(called)) {
            throw new Refused(
                    ProblemType.WRONG_HOST,
                    where + ": found \"" + called.host()
                            + "\", expected a name of this service, such as localhost; if people"
                            + " reach it by this name, add it to stayfixed.hosts");
        }
    }
}
