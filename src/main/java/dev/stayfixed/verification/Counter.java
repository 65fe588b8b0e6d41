package dev.stayfixed.verification;

import dev.stayfixed.reason.Kind;
import dev.stayfixed.reason.Unit;

/** A counter of the car that only grows, until codes are cleared. */
enum Counter implements Kind {
    DISTANCE_SINCE_CLEAR(Unit.KILOMETRE),
    WARM_UPS_SINCE_CLEAR(Unit.CYCLE),
    MINUTES_SINCE_CLEAR(Unit.MINUTE),
    ODOMETER(Unit.KILOMETRE);

    private final Unit unit;

    Counter(Unit unit) {
        this.unit = unit;
    }

    Unit unit() {
        return unit;
    }
}
