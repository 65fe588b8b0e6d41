package dev.stayfixed.drive.condition;

import dev.stayfixed.obd.MonitorGroup;

/**
 * What a monitor of this group typically needs. Published figures of some vehicles: the service information of the vehicle at hand
 * overrides them.
 *
 * @param source where the figures are from
 */
public record TypicalCondition(MonitorGroup group, ConditionSet set, String source) {

    /** To be printed with every use. */
    public String caution() {
        return "Typical figures (" + source + "); the service information of this vehicle overrides them.";
    }
}
