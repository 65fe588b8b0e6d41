package dev.stayfixed.drive.condition;

import dev.stayfixed.obd.MonitorGroup;

/**
 * What a monitor of this group, or the check of a circuit, typically needs. Published figures of some vehicles: the service information of the vehicle at hand
 * overrides them.
 *
 * @param source where the figures are from
 */
public record TypicalCondition(MonitorGroup group, ConditionSet set, String source) {

    /** What it is typical of: the name of a group, or a kind of circuit in words. */
    public String name() {
        return set.name();
    }

    /** To be printed with every use. */
    public String caution() {
        return "Typical figures (" + source + "); the service information of this vehicle overrides them.";
    }
}
