package dev.stayfixed.platform.http;

import dev.stayfixed.platform.problem.ProblemAnswer;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.platform.storage.FreeSpace;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.springframework.web.filter.OncePerRequestFilter;

/** Nothing new is taken while a disk is nearly full, so that what is there can still be read, and finished what has begun. */
final class EnoughSpace extends OncePerRequestFilter {

    private final FreeSpace space;
    private final long keep;

    /** @param keep bytes that stay free */
    EnoughSpace(FreeSpace space, long keep) {
        this.space = space;
        this.keep = keep;
    }

    @Override
    protected boolean shouldNotFilter(HttpServletRequest request) {
        return LimitedWrites.isReading(request);
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        try {
            check(Math.max(0, request.getContentLengthLong()));
        } catch (Refused refused) {
            ProblemAnswer.write(refused, request, response);
            return;
        }
        chain.doFilter(request, response);
    }

    /**
     * Looks at the disks.
     *
     * @param coming bytes that are to be taken
     * @throws Refused when less would stay free than is kept
     */
    void check(long coming) {
        long free = space.bytes();
        if (free - coming < keep) {
            throw new Refused(
                    ProblemType.STORAGE_FULL,
                    "the disk: found %d MB free, expected at least %d MB and what is sent; free some space, or lower"
                                    .formatted(free >> 20, keep >> 20)
                            + " stayfixed.keep-free, and repeat the request; nothing of it was stored");
        }
    }
}
