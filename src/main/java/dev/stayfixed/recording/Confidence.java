package dev.stayfixed.recording;

import dev.stayfixed.reason.Kind;

/** How sure a proposal is; a person confirms all of them. */
public enum Confidence implements Kind {
    /** The header is a published name, or header, unit and values all say the same. */
    CERTAIN,
    /** The header says it and the values agree, but the unit is assumed. */
    LIKELY,
    /** Something had to be assumed that the log does not tell: to be looked at. */
    GUESS,
    /** Not used. */
    NONE
}
