package dev.stayfixed.drive.condition;

import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Shape;
import java.util.List;

/**
 * One thing to do in a drive.
 *
 * @param condition that it meets, merged from those of all the faults
 * @param faults that need it
 */
public record DriveStep(Condition condition, List<String> faults) {

    public DriveStep {
        faults = List.copyOf(faults);
    }

    public Phase phase() {
        return condition.phase();
    }

    /** "Cruise: Keep vehicle speed 70 to 110 km/h for at least 60 s without a break. (for P0420)". */
    public Reason said() {
        return Reason.of(
                PlanReason.STEP_FOR,
                plain(),
                Shape.LIST.of(faults.stream().map(Part::verbatim).toList()));
    }

    /** The same where the plan serves one fault only. */
    Reason plain() {
        return Reason.of(PlanReason.STEP, phase(), condition.toDo());
    }
}
