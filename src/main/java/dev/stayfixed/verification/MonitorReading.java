package dev.stayfixed.verification;

/** What one source of evidence says about the monitor in one drive. */
record MonitorReading(Says says, Evidence evidence) {

    enum Says {
        RAN_AND_PASSED,
        /** It ran; whether it passed, only the code lists can tell. */
        RAN,
        FAILED,
        DID_NOT_RUN
    }

    static MonitorReading of(Says says, EvidenceGrade grade, String words) {
        return new MonitorReading(says, Evidence.monitor(grade, words));
    }

    boolean ran() {
        return says == Says.RAN_AND_PASSED || says == Says.RAN;
    }

    EvidenceGrade grade() {
        return ((Evidence.Monitor) evidence.source()).grade();
    }
}
