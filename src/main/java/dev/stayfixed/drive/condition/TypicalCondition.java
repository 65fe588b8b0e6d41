package dev.stayfixed.drive.condition;

import dev.stayfixed.obd.CircuitKind;
import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.reason.Reason;
import java.util.Optional;

/**
 * What a monitor of this group, or the check of a circuit, typically needs. Published figures of some vehicles: the service information of the vehicle at hand
 * overrides them.
 *
 * @param circuit of whose check it is typical; empty for a monitor of the group
 * @param source where the figures are from
 */
public record TypicalCondition(
        MonitorGroup group, Optional<CircuitKind> circuit, ConditionSet set, TypicalSource source) {

    /** To be printed with every use. */
    public Reason caution() {
        return Reason.of(PlanReason.TYPICAL_FIGURES, source);
    }
}
