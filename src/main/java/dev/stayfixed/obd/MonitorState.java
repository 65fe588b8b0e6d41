package dev.stayfixed.obd;

import dev.stayfixed.reason.Kind;

/** What one readiness monitor is reported to be (SAE J1979 service $01 PID $01 and $41). */
public enum MonitorState implements Kind {
    COMPLETE,
    INCOMPLETE,
    /** The control unit has no such monitor, or it is not enabled in this cycle. */
    NOT_SUPPORTED
}
