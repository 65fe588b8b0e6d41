package dev.stayfixed.people.access;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpSession;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.session.FindByIndexNameSessionRepository;
import org.springframework.session.Session;
import org.springframework.stereotype.Component;

/** The browsers in which people are signed in. */
@Component
public class Sessions {

    private final ObjectProvider<FindByIndexNameSessionRepository<? extends Session>> stored;

    /** @param stored none in work without a server, where nobody comes in */
    Sessions(ObjectProvider<FindByIndexNameSessionRepository<? extends Session>> stored) {
        this.stored = stored;
    }

    /**
     * One of a person.
     *
     * @param id its digest, by which nobody can come in
     * @param isThis whether it is that of the request at hand
     */
    public record Open(String id, String browser, String address, Instant since, Instant usedAt, boolean isThis) {}

    /** Those of a person, the one used last first. */
    public List<Open> of(String mail, HttpServletRequest request) {
        HttpSession now = request.getSession(false);
        String id = now == null ? "" : now.getId();
        return stored.getObject().findByPrincipalName(mail).values().stream()
                .map(session -> new Open(
                        session.getId(),
                        text(session, SignedIn.BROWSER),
                        text(session, SignedIn.ADDRESS),
                        session.getCreationTime(),
                        session.getLastAccessedTime(),
                        session.getId().equals(id)))
                .sorted(Comparator.comparing(Open::usedAt).reversed())
                .toList();
    }

    private static String text(Session session, String attribute) {
        return session.getAttribute(attribute) instanceof String text ? text : "";
    }

    /** Ends one, if it is the person's. */
    public void end(String mail, String id) {
        if (stored.getObject().findByPrincipalName(mail).containsKey(id)) {
            stored.getObject().deleteById(id);
        }
    }

    public void endAll(String mail) {
        stored.getObject().findByPrincipalName(mail).keySet().forEach(stored.getObject()::deleteById);
    }

    /** All but the one of the request at hand. */
    public void endOthers(String mail, HttpServletRequest request) {
        of(mail, request).stream().filter(open -> !open.isThis()).map(Open::id).forEach(stored.getObject()::deleteById);
    }
}
