package dev.stayfixed.drive.running;

import dev.stayfixed.reason.Kind;

/** The customary cautions for work with the engine running; service information and local rules come first. */
public enum RunCaution implements Kind {
    HOT_COOLANT,
    FANS_AND_BELTS,
    EXHAUST,
    ROAD
}
