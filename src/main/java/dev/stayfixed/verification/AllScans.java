package dev.stayfixed.verification;

import dev.stayfixed.obd.Scan;
import java.util.OptionalInt;
import java.util.stream.Stream;

/** What all scans of a vehicle show together, before one of them is judged for a fault. */
record AllScans(Owner.Units units, Abilities.Signs signs, Histories.Asked asked) {

    static final AllScans NONE = new AllScans(Owner.Units.NONE, Abilities.Signs.NONE, Histories.Asked.NOTHING);

    /** These with others, in any order. */
    AllScans and(RepairedFault fault, Stream<Scan> others) {
        return others.map(scan -> new AllScans(
                        Owner.Units.of(fault, scan), Abilities.Signs.of(scan), Histories.Asked.in(scan, fault)))
                .reduce(this, AllScans::and);
    }

    private AllScans and(AllScans others) {
        return new AllScans(units.and(others.units), signs.and(others.signs), asked.and(others.asked));
    }

    Owner owner(RepairedFault fault) {
        return Owner.of(fault, units);
    }

    Abilities abilities() {
        return Abilities.shownBy(signs, OptionalInt.empty());
    }
}
