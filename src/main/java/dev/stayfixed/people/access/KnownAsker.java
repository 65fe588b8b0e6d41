package dev.stayfixed.people.access;

import dev.stayfixed.people.Right;
import dev.stayfixed.platform.CurrentShop;
import dev.stayfixed.platform.WhoAsks;
import java.util.UUID;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.stereotype.Component;

/** Who asks, as far as it is known; a stranger is in no shop. */
@Component
class KnownAsker implements WhoAsks {

    @Override
    public UUID shop() {
        return Asker.now().map(Asker::shop).orElse(CurrentShop.NOWHERE);
    }

    @Override
    public String name() {
        return Asker.now().map(Asker::getName).orElse("nobody");
    }

    /** Work that no request asked for does what the service itself wants. */
    @Override
    public boolean vouches() {
        return SecurityContextHolder.getContext().getAuthentication() == null
                || Asker.now().filter(asker -> asker.may(Right.WORK)).isPresent();
    }
}
