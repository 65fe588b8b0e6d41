package dev.stayfixed.people.access;

import dev.stayfixed.platform.CurrentShop;
import dev.stayfixed.platform.WhoAsks;
import java.util.UUID;
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
}
