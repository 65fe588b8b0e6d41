package dev.stayfixed.drive.condition;

import dev.stayfixed.reason.Kind;

/** The parts of a verification drive, in the order in which they are driven. */
public enum Phase implements Kind {
    SOAK,
    START,
    IDLE,
    WARM_UP,
    CRUISE,
    COAST,
    WARM_IDLE,
    KEY_OFF
}
