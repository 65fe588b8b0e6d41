package dev.stayfixed.platform.http;

import dev.stayfixed.platform.problem.ProblemAnswer;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.Set;
import java.util.concurrent.Semaphore;
import org.springframework.web.filter.OncePerRequestFilter;

/** Whoever would wait too long to write is told so at once, before anything is stored; reading is never turned away. */
final class LimitedWrites extends OncePerRequestFilter {

    private static final Set<String> READING = Set.of("GET", "HEAD", "OPTIONS", "TRACE");

    private final int most;
    private final Semaphore places;

    /** @param most requests that may write, or wait for their turn, at the same time */
    LimitedWrites(int most) {
        this.most = most;
        this.places = new Semaphore(most);
    }

    @Override
    protected boolean shouldNotFilter(HttpServletRequest request) {
        return isReading(request);
    }

    static boolean isReading(HttpServletRequest request) {
        return READING.contains(request.getMethod());
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        if (!places.tryAcquire()) {
            ProblemAnswer.write(
                    new Refused(
                            ProblemType.BUSY,
                            "found " + most
                                    + " requests that write and wait for each other, expected fewer; nothing of this one"
                                    + " was stored, repeat it in a moment"),
                    request,
                    response);
            return;
        }
        try {
            chain.doFilter(request, response);
        } finally {
            places.release();
        }
    }
}
