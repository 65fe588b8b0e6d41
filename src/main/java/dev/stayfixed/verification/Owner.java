package dev.stayfixed.verification;

import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.obd.Scan;
import java.util.IdentityHashMap;
import java.util.Set;
import java.util.TreeSet;

/**
 * The control units that may own a fault: only they can deny it, each for itself (SAE J1979: every unit answers with its own codes).
 * What they said in a scan is looked up once. For one thread.
 */
final class Owner {

    private static final String NAMELESS = "";

    /**
     * Who it is.
     *
     * @param units by their headers in hex, as far as headers were ever shown
     * @param nameless an answer without header may be the owner's
     * @param namelessUnits how many control units have answered without header, as far as any scan shows
     * @param byLists lists of services $03, $07 and $0A say something of this code: they hold emission-related codes, so of a body,
     *     chassis or network code only where one was seen to name it
     */
    private record Who(Set<String> units, boolean nameless, int namelessUnits, boolean byLists) {}

    private final Who who;
    private final IdentityHashMap<Scan, Scan> said = new IdentityHashMap<>();
    private final IdentityHashMap<Scan, Counters> counters = new IdentityHashMap<>();

    private Owner(Who who) {
        this.who = who;
    }

    /**
     * What scans show of it together.
     *
     * @param listing units that list the code
     * @param stating units that state its status byte
     * @param watching units that watch its group
     * @param engine units that watch the fuel system
     * @param any units that report readiness or codes
     */
    record Units(
            Set<String> listing,
            Set<String> stating,
            Set<String> watching,
            Set<String> engine,
            Set<String> any,
            int nameless) {

        static final Units NONE = new Units(Set.of(), Set.of(), Set.of(), Set.of(), Set.of(), 0);

        static Units of(RepairedFault fault, Scan scan) {
            return new Units(
                    scan.unitsListing(fault.code()),
                    scan.unitsStating(fault.code()),
                    scan.unitsWatching(fault.group()),
                    scan.unitsWatching(MonitorGroup.FUEL_SYSTEM),
                    scan.unitsWithMonitors(),
                    scan.namelessUnits());
        }

        Units and(Units others) {
            return new Units(
                    union(listing, others.listing),
                    union(stating, others.stating),
                    union(watching, others.watching),
                    union(engine, others.engine),
                    union(any, others.any),
                    Math.max(nameless, others.nameless));
        }
    }

    private static Set<String> union(Set<String> some, Set<String> others) {
        if (some.containsAll(others)) {
            return some;
        }
        Set<String> all = new TreeSet<>(some);
        all.addAll(others);
        return all;
    }

    /** @param shown by all scans that are known of a vehicle */
    static Owner of(RepairedFault fault, Units shown) {
        Set<String> known = new TreeSet<>(union(shown.stating(), shown.listing()));
        boolean powertrain = fault.code().isPowertrain();
        boolean nameless = known.remove(NAMELESS) || powertrain;
        Set<String> units = known.isEmpty() && powertrain ? likely(fault, shown) : known;
        return new Owner(new Who(
                units,
                nameless,
                shown.nameless(),
                powertrain || !shown.listing().isEmpty()));
    }

    /** A powertrain code that no unit has named: of the one that watches its group, else of the engine's, else of any. */
    private static Set<String> likely(RepairedFault fault, Units shown) {
        Set<String> watching = named(shown.watching());
        Set<String> engine = named(shown.engine());
        if (fault.group() != MonitorGroup.COMPONENTS && watching.size() == 1) {
            return watching;
        }
        return engine.size() == 1 && !fault.code().isOfTransmission() ? engine : named(shown.any());
    }

    private static Set<String> named(Set<String> units) {
        Set<String> named = new TreeSet<>(units);
        named.remove(NAMELESS);
        return named;
    }

    /** The same units. */
    boolean isLike(Owner other) {
        return who.equals(other.who);
    }

    /** The same, with nothing looked up yet. */
    Owner afresh() {
        return new Owner(who);
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
        Set<String> own = headersShown ? who.units() : who.nameless() ? Set.of(NAMELESS) : Set.of();
        return scan.of(own, who.byLists(), who.namelessUnits());
    }
}
