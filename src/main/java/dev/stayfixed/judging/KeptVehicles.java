package dev.stayfixed.judging;

import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/**
 * The vehicles that were folded last. Whoever asks names the drives that count by now, as the database tells it in the same
 * transaction: so what another instance has written makes what is kept here useless, and never wrong.
 */
@Component
class KeptVehicles {

    private final Map<UUID, Kept> kept = new LinkedHashMap<>(16, 0.75f, true);

    /** One in eight of the heap. */
    private final long most = Runtime.getRuntime().maxMemory() / 8;

    private long weight;

    private record Kept(UUID drives, FoldedVehicle folded, long weight) {}

    /** @param drives the name of the drives that count now */
    synchronized Optional<FoldedVehicle> find(UUID vehicleId, UUID drives) {
        return Optional.ofNullable(kept.get(vehicleId))
                .filter(one -> one.drives().equals(drives))
                .map(Kept::folded);
    }

    /**
     * Keeps one, and lets those go that nobody has asked for the longest. A transaction that is undone takes the name of its drives
     * with it, so what it kept is never found.
     */
    synchronized void keep(UUID vehicleId, UUID drives, FoldedVehicle folded) {
        remove(kept.remove(vehicleId));
        Kept one = new Kept(drives, folded, folded.weight());
        kept.put(vehicleId, one);
        weight += one.weight();
        for (Iterator<Kept> eldest = kept.values().iterator(); weight > most && eldest.hasNext(); ) {
            remove(eldest.next());
            eldest.remove();
        }
    }

    private void remove(@Nullable Kept one) {
        weight -= one == null ? 0 : one.weight();
    }
}
