package dev.stayfixed.verification;

import dev.stayfixed.reason.Reason;
import java.util.function.Predicate;

/**
 * What one source of evidence says about the monitor in one drive.
 *
 * @param fits the histories that it leaves
 */
record MonitorReading(Says says, Evidence evidence, Predicate<UnitState> fits) {

    enum Says {
        RAN_AND_PASSED,
        /** It ran; whether it passed, only the code lists can tell. */
        RAN,
        FAILED,
        DID_NOT_RUN
    }

    static MonitorReading of(Says says, EvidenceGrade grade, Reason reason, Predicate<UnitState> fits) {
        return new MonitorReading(says, Evidence.monitor(grade, reason), fits);
    }

    /** The same, leaving other histories. */
    MonitorReading leaving(Predicate<UnitState> others) {
        return new MonitorReading(says, evidence, others);
    }

    boolean ran() {
        return says == Says.RAN_AND_PASSED || says == Says.RAN;
    }

    boolean isBad() {
        return says == Says.FAILED;
    }

    EvidenceGrade grade() {
        return ((Evidence.Monitor) evidence.source()).grade();
    }
}
