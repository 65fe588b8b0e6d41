package dev.stayfixed.platform;

import dev.stayfixed.judging.VerdictChanged;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.CopyOnWriteArrayList;
import org.springframework.boot.test.context.TestComponent;
import org.springframework.transaction.event.TransactionalEventListener;

/** Remembers what was announced after commit. */
@TestComponent
public class HeardVerdicts {

    private final List<VerdictChanged> heard = new CopyOnWriteArrayList<>();

    @TransactionalEventListener
    void hear(VerdictChanged changed) {
        heard.add(changed);
    }

    public List<String> of(UUID faultId) {
        return heard.stream()
                .filter(e -> e.faultId().equals(faultId))
                .map(e -> e.before().words() + " -> " + e.now().words())
                .toList();
    }
}
