package dev.stayfixed.people.access;

import dev.stayfixed.people.People;
import dev.stayfixed.people.PeopleSettings;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;
import java.time.Clock;
import java.time.Instant;
import java.util.Optional;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.springframework.security.core.context.DeferredSecurityContext;
import org.springframework.security.core.context.SecurityContext;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.core.context.SecurityContextImpl;
import org.springframework.security.web.context.HttpRequestResponseHolder;
import org.springframework.security.web.context.SecurityContextRepository;
import org.springframework.session.FindByIndexNameSessionRepository;

/**
 * A session says who came; in which shop they are, and what they may do there, is asked anew at each request, so that a changed role or an ended
 * membership holds at once.
 */
final class SignedIn implements SecurityContextRepository {

    static final String BROWSER = "browser";
    static final String ADDRESS = "address";
    static final String SINCE = "since";
    private static final String PERSON = FindByIndexNameSessionRepository.PRINCIPAL_NAME_INDEX_NAME;
    private static final int LONGEST = 300;

    private final People people;
    private final PeopleSettings settings;
    private final Clock clock;

    SignedIn(People people, PeopleSettings settings, Clock clock) {
        this.people = people;
        this.settings = settings;
        this.clock = clock;
    }

    @Override
    public DeferredSecurityContext loadDeferredContext(HttpServletRequest request) {
        return new Once(() -> context(request));
    }

    /** Found when it is first asked for, and once. */
    private static final class Once implements DeferredSecurityContext {

        private final Supplier<SecurityContext> finder;
        private Optional<SecurityContext> found = Optional.empty();

        Once(Supplier<SecurityContext> finder) {
            this.finder = finder;
        }

        @Override
        public SecurityContext get() {
            if (found.isEmpty()) {
                found = Optional.of(finder.get());
            }
            return found.get();
        }

        @Override
        public boolean isGenerated() {
            return get().getAuthentication() == null;
        }
    }

    @Override
    @Deprecated
    @SuppressWarnings("removal")
    public SecurityContext loadContext(HttpRequestResponseHolder holder) {
        return context(holder.getRequest());
    }

    private SecurityContext context(HttpServletRequest request) {
        return asker(request)
                .<SecurityContext>map(SecurityContextImpl::new)
                .orElseGet(SecurityContextHolder::createEmptyContext);
    }

    private Optional<Asker> asker(HttpServletRequest request) {
        HttpSession session = request.getSession(false);
        if (session == null || !(session.getAttribute(PERSON) instanceof String mail) || isOver(session)) {
            return Optional.empty();
        }
        return people.memberships(mail).stream().findFirst().map(Asker::person);
    }

    /** However much it was used. */
    private boolean isOver(HttpSession session) {
        return !(session.getAttribute(SINCE) instanceof String since)
                || Instant.parse(since).plus(settings.session()).isBefore(clock.instant());
    }

    @Override
    public void saveContext(SecurityContext context, HttpServletRequest request, HttpServletResponse response) {
        HttpSession before = request.getSession(false);
        if (before != null) {
            // What a visitor had is nothing to whoever comes in; and nobody can have put it there.
            before.invalidate();
        }
        if (context.getAuthentication() != null && context.getAuthentication().isAuthenticated()) {
            HttpSession session = request.getSession(true);
            session.setAttribute(PERSON, context.getAuthentication().getName());
            session.setAttribute(BROWSER, shortened(request.getHeader("User-Agent")));
            session.setAttribute(ADDRESS, request.getRemoteAddr());
            session.setAttribute(SINCE, clock.instant().toString());
        }
    }

    private static String shortened(@Nullable String text) {
        return text == null ? "" : text.substring(0, Math.min(LONGEST, text.length()));
    }

    @Override
    public boolean containsContext(HttpServletRequest request) {
        HttpSession session = request.getSession(false);
        return session != null && session.getAttribute(PERSON) != null;
    }
}
