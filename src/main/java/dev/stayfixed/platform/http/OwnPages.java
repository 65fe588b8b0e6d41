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
import java.util.regex.Pattern;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * Of all pages that a browser shows, only our own may have anything written here. A browser says whose page asks: by Sec-Fetch-Site
 * (Fetch Metadata) where the service is reached by https or on the same machine, else by Origin. A program says neither and is let in;
 * what it may do is not decided here. Reading needs no such fence: browsers let no page read the answers of another site, as long as
 * reading changes nothing.
 */
final class OwnPages extends OncePerRequestFilter {

    /**
     * A mail provider stops mails by it, on whatever page it has its button (RFC 8058); the token is the permission. Matched as it was
     * sent, so that nothing in it can mean another address.
     */
    private static final Pattern MAIL_STOP = Pattern.compile("/mail-stop/[A-Za-z0-9_-]+");

    private final Optional<Origin> publicOrigin;

    OwnPages(PublicUrl url) {
        this.publicOrigin = url.stated().flatMap(Origin::ofAddress);
    }

    @Override
    protected boolean shouldNotFilter(HttpServletRequest request) {
        return LimitedWrites.isReading(request)
                || (request.getMethod().equals("POST")
                        && MAIL_STOP.matcher(request.getRequestURI()).matches());
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        Optional<String> stranger = stranger(request);
        if (stranger.isPresent()) {
            ProblemAnswer.write(
                    new Refused(
                            ProblemType.OTHER_SITE,
                            stranger.get() + ", expected a page of this service; nothing was stored"),
                    request,
                    response);
            return;
        }
        chain.doFilter(request, response);
    }

    /** What shows that another site's page asks; empty where nothing does. */
    private Optional<String> stranger(HttpServletRequest request) {
        String site = request.getHeader("Sec-Fetch-Site");
        if (site != null) {
            return site.equals("same-origin") || site.equals("none")
                    ? Optional.empty()
                    : Optional.of("Sec-Fetch-Site: found \"" + site + "\"");
        }
        String origin = request.getHeader("Origin");
        return origin == null || isOurs(origin, request)
                ? Optional.empty()
                : Optional.of("Origin: found \"" + origin + "\"");
    }

    private boolean isOurs(String text, HttpServletRequest request) {
        Optional<Origin> origin = Origin.ofAddress(text);
        return origin.isPresent() && (origin.equals(Origin.of(request)) || origin.equals(publicOrigin));
    }
}
