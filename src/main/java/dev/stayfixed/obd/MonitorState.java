package dev.stayfixed.obd;

/** What one readiness monitor is reported to be (SAE J1979 service $01 PID $01 and $41). */
public enum MonitorState {
    COMPLETE("complete"),
    INCOMPLETE("not complete"),
    /** The control unit has no such monitor, or it is not enabled in this cycle. */
    NOT_SUPPORTED("not supported");

    private final String label;

    MonitorState(String label) {
        this.label = label;
    }

    /** In plain trade words, for people. */
    public String label() {
        return label;
    }
}
