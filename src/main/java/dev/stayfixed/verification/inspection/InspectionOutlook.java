package dev.stayfixed.verification.inspection;

import dev.stayfixed.reason.Kind;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Shape;
import java.util.List;

/**
 * What is likely under one rule; never a promise.
 *
 * @param reasons never empty
 */
public record InspectionOutlook(InspectionRule rule, Likely likely, List<Reason> reasons) {

    /** "Not ready" means come back later; a fault that fails an inspection is another thing. */
    public enum Likely implements Kind {
        READY,
        NOT_READY,
        FAULT,
        UNKNOWN
    }

    public InspectionOutlook {
        reasons = List.copyOf(reasons);
        if (reasons.isEmpty()) {
            throw new IllegalArgumentException("an outlook names its reasons");
        }
    }

    /** "likely not ready under X, because …". */
    public Reason said() {
        return Reason.of(InspectionReason.OUTLOOK, likely, rule, because());
    }

    public Reason because() {
        return Shape.EACH.of(reasons);
    }
}
