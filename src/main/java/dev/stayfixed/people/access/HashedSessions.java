package dev.stayfixed.people.access;

import dev.stayfixed.platform.LinkToken;
import dev.stayfixed.platform.OwnCookie;
import dev.stayfixed.platform.Secret;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.session.SessionIdGenerator;
import org.springframework.session.web.http.HttpSessionIdResolver;

/**
 * A session is stored by the digest of what the browser holds: whoever reads the database, or a copy of it, can come in by none of them.
 * The secret of a new session is kept for the thread between its making and the cookie, and nowhere else.
 */
final class HashedSessions implements SessionIdGenerator, HttpSessionIdResolver {

    private static final OwnCookie COOKIE = new OwnCookie("stayfixed-session", "Lax");

    private record Fresh(String id, String secret) {}

    private static final ThreadLocal<@Nullable Fresh> FRESH = new ThreadLocal<>();

    @Override
    public String generate() {
        String secret = Secret.forAddress(32);
        String id = LinkToken.hash(secret);
        FRESH.set(new Fresh(id, secret));
        return id;
    }

    @Override
    public List<String> resolveSessionIds(HttpServletRequest request) {
        return COOKIE.of(request).filter(secret -> secret.matches("[A-Za-z0-9_-]{43}")).map(LinkToken::hash).stream()
                .toList();
    }

    @Override
    public void setSessionId(HttpServletRequest request, HttpServletResponse response, String id) {
        Fresh made = FRESH.get();
        FRESH.remove();
        if (made != null && made.id().equals(id)) {
            response.addHeader("Set-Cookie", COOKIE.header(request, made.secret(), Optional.of(Duration.ofDays(30))));
        }
    }

    @Override
    public void expireSession(HttpServletRequest request, HttpServletResponse response) {
        FRESH.remove();
        response.addHeader("Set-Cookie", COOKIE.header(request, "", Optional.of(Duration.ZERO)));
    }
}
