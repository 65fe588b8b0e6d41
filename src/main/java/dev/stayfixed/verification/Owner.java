package dev.stayfixed.verification;

import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.obd.Scan;
import java.util.Collection;
import java.util.IdentityHashMap;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;

/**
 * The control units that may own a fault: only they can deny it, each for itself (SAE J1979: every unit answers with its own codes).
 * What they said in a scan is looked up once. For one thread.
 */
final class Owner {

    private static final String NAMELESS = "";

    /** By their headers in hex, as far as headers were ever shown. */
    private final Set<String> units;

    /** An answer without header may be the owner's. */
    private final boolean nameless;

    /** How many control units have answered without header, as far as any scan shows. */
    private final int namelessUnits;

    /**
     * Lists of services $03, $07 and $0A say something of this code: they hold emission-related codes, so of a body, chassis or network
     * code only where one was seen to name it.
     */
    private final boolean byLists;

    private final IdentityHashMap<Scan, Scan> said = new IdentityHashMap<>();
    private final IdentityHashMap<Scan, Counters> counters = new IdentityHashMap<>();

    private Owner(Set<String> units, boolean nameless, int namelessUnits, boolean byLists) {
        this.units = units;
        this.nameless = nameless;
        this.namelessUnits = namelessUnits;
        this.byLists = byLists;
    }

    /** Of all scans that are known of a vehicle, in any order. */
    static Owner of(RepairedFault fault, Collection<Scan> scans) {
        Set<String> listing = all(scans, scan -> scan.unitsListing(fault.code()));
        Set<String> known = all(scans, scan -> scan.unitsStating(fault.code()));
        known.addAll(listing);
        boolean powertrain = fault.code().isPowertrain();
        boolean nameless = known.remove(NAMELESS) || powertrain;
        Set<String> units = known.isEmpty() && powertrain ? likely(fault, scans) : known;
        int namelessUnits = scans.stream().mapToInt(Scan::namelessUnits).max().orElse(0);
        return new Owner(units, nameless, namelessUnits, powertrain || !listing.isEmpty());
    }

    /** A powertrain code that no unit has named: of the one that watches its group, else of the engine's, else of any. */
    private static Set<String> likely(RepairedFault fault, Collection<Scan> scans) {
        Set<String> watching = all(scans, scan -> scan.unitsWatching(fault.group()));
        Set<String> engine = all(scans, scan -> scan.unitsWatching(MonitorGroup.FUEL_SYSTEM));
        Set<String> any = all(scans, Scan::unitsWithMonitors);
        any.remove(NAMELESS);
        watching.remove(NAMELESS);
        engine.remove(NAMELESS);
        if (fault.group() != MonitorGroup.COMPONENTS && watching.size() == 1) {
            return watching;
        }
        return engine.size() == 1 && !fault.code().isOfTransmission() ? engine : any;
    }

    private static Set<String> all(Collection<Scan> scans, Function<Scan, Set<String>> of) {
        Set<String> all = new TreeSet<>();
        scans.forEach(scan -> all.addAll(of.apply(scan)));
        return all;
    }

    /** What the owner said in this scan. */
    Scan in(Scan scan) {
        return said.computeIfAbsent(scan, this::ownIn);
    }

    /** The counters in this scan: the owner's, else those of the car that another unit gave. */
    Counters counters(Scan scan) {
        return counters.computeIfAbsent(scan, whole -> Counters.read(in(whole)));
    }

    private Scan ownIn(Scan scan) {
        boolean headersShown = scan.units().stream().anyMatch(unit -> !unit.isEmpty());
        Set<String> own = headersShown ? units : nameless ? Set.of(NAMELESS) : Set.of();
        return scan.of(own, byLists, namelessUnits);
    }
}
