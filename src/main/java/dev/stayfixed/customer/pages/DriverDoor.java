package dev.stayfixed.customer.pages;

import dev.stayfixed.customer.DriverLinks;
import dev.stayfixed.customer.Visit;
import dev.stayfixed.platform.http.Turnstile;
import jakarta.servlet.http.HttpServletRequest;
import java.time.Duration;
import org.springframework.stereotype.Component;

/** Lets in who has a link that is good, and nobody too often. */
@Component
class DriverDoor {

    private final DriverLinks links;
    private final Turnstile turnstile;

    DriverDoor(DriverLinks links, Turnstile turnstile) {
        this.links = links;
        this.turnstile = turnstile;
    }

    /** Whether to wait, or what the token opens. */
    sealed interface Entry {}

    /** The link was used too often. */
    record Wait(Duration duration) implements Entry {}

    /** What the token opens. */
    record Opened(Visit visit) implements Entry {}

    Entry enter(String token, HttpServletRequest request) {
        Visit visit = links.visit(token);
        String who = visit instanceof Visit.Unknown ? "address " + request.getRemoteAddr() : "link " + token;
        Duration wait = turnstile.enter(who);
        return wait.isZero() ? new Opened(visit) : new Wait(wait);
    }
}
