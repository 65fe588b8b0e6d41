package dev.stayfixed.platform.http;

import dev.stayfixed.platform.problem.RequestId;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.slf4j.MDC;
import org.springframework.web.filter.OncePerRequestFilter;

/** Gives each request its id, for the log and for the answer. */
final class NamedRequest extends OncePerRequestFilter {

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        String id = RequestId.of(request);
        response.setHeader(RequestId.HEADER, id);
        MDC.put(RequestId.IN_LOG, id);
        try {
            chain.doFilter(request, response);
        } finally {
            MDC.remove(RequestId.IN_LOG);
        }
    }
}
