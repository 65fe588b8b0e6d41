package dev.stayfixed.people.access;

import dev.stayfixed.people.People;
import dev.stayfixed.platform.problem.Refused;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.net.InetAddress;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Collections;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.security.core.context.SecurityContext;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * Before there are people, whoever sits at the machine of the service is its owner, without ceremony. That is somebody whose connection
 * comes from this machine, who calls the service by a name that only leads here, and for whom no proxy speaks: one that passes on what
 * others send would come from this machine too. Once there is a person, everybody signs in.
 */
final class AtThisMachine extends OncePerRequestFilter {

    private static final Set<String> NAMES = Set.of("localhost", "127.0.0.1", "[::1]");

    /** How long "nobody yet" is believed: another instance may have taken in the first owner. */
    private static final Duration BELIEVED = Duration.ofSeconds(2);

    private final People people;
    private final Clock clock;
    private volatile boolean isAnybodyHere;
    private volatile @Nullable Instant lookedAt;

    AtThisMachine(People people, Clock clock) {
        this.people = people;
        this.clock = clock;
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        if (SecurityContextHolder.getContext().getAuthentication() == null && isHere(request) && isNobodyHere()) {
            SecurityContext context = SecurityContextHolder.createEmptyContext();
            context.setAuthentication(Asker.atThisMachine());
            SecurityContextHolder.setContext(context);
        }
        chain.doFilter(request, response);
    }

    /** Takes note of a first person at once. */
    void somebodyCame() {
        isAnybodyHere = true;
    }

    private boolean isNobodyHere() {
        Instant now = clock.instant();
        Instant looked = lookedAt;
        if (!isAnybodyHere && (looked == null || looked.plus(BELIEVED).isBefore(now))) {
            isAnybodyHere = look(looked != null);
            lookedAt = now;
        }
        return !isAnybodyHere;
    }

    /** While the database is away what was seen last holds: nothing can be read or changed meanwhile. */
    private boolean look(boolean sawNobody) {
        try {
            return people.isAnybodyHere();
        } catch (Refused away) {
            if (sawNobody) {
                return false;
            }
            throw away;
        }
    }

    private static boolean isHere(HttpServletRequest request) throws IOException {
        String host = request.getHeader("Host");
        String name = host == null ? "" : host.replaceFirst(":\\d*$", "").toLowerCase(Locale.ROOT);
        return NAMES.contains(name)
                && InetAddress.getByName(request.getRemoteAddr()).isLoopbackAddress()
                && Collections.list(request.getHeaderNames()).stream().noneMatch(AtThisMachine::isOfAProxy);
    }

    private static boolean isOfAProxy(String header) {
        String name = header.toLowerCase(Locale.ROOT);
        return name.equals("forwarded")
                || name.equals("via")
                || name.startsWith("x-forwarded-")
                || name.equals("x-real-ip");
    }
}
