package dev.stayfixed.verification;

import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.obd.Scan;
import java.util.Collection;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;

/**
 * The control units that may own a fault: only they can deny it, each for itself (SAE J1979: every unit answers with its own codes).
 *
 * @param units by their headers in hex, as far as headers were ever shown
 * @param nameless whether an answer without header may be the owner's
 * @param namelessUnits how many control units have answered without header, as far as any scan shows
 * @param byLists whether lists of services $03, $07 and $0A say anything of this code: they hold emission-related codes, so of a
 *     body, chassis or network code only where one was seen to name it
 */
record Owner(Set<String> units, boolean nameless, int namelessUnits, boolean byLists) {

    private static final String NAMELESS = "";

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
        boolean headersShown = scan.units().stream().anyMatch(unit -> !unit.isEmpty());
        Set<String> own = headersShown ? units : nameless ? Set.of(NAMELESS) : Set.of();
        return scan.of(own, byLists, namelessUnits);
    }
}
