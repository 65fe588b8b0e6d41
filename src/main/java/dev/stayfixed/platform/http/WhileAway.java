package dev.stayfixed.platform.http;

import dev.stayfixed.platform.problem.ProblemAnswer;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.platform.storage.Outage;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.springframework.web.filter.OncePerRequestFilter;

/** Answers where the database is away before it is known who asks: sessions, people and tokens are read from it, too. */
final class WhileAway extends OncePerRequestFilter {

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        try {
            chain.doFilter(request, response);
        } catch (RuntimeException e) {
            if (Outage.explained(e) instanceof Refused refused && !response.isCommitted()) {
                response.resetBuffer();
                ProblemAnswer.write(refused, request, response);
                return;
            }
            throw e;
        }
    }
}
