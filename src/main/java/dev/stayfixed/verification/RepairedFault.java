package dev.stayfixed.verification;

import dev.stayfixed.drive.EnablingCondition;
import dev.stayfixed.drive.OperatingPoint;
import dev.stayfixed.obd.Ignition;
import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.obd.TroubleCode;
import java.util.List;
import java.util.Optional;

/**
 * A fault whose repair is to be proven.
 *
 * @param group the readiness monitor that covers the code
 * @param requiredPasses consecutive passed trips that prove the repair; never fewer than the fault needs to confirm
 * @param weakestAccepted evidence weaker than this is recorded and counts for nothing
 * @param enablingConditions from service information; empty where none were given
 * @param freezeFrame conditions stored with the code: misfire and fuel-system faults pass only under similar ones
 * @param recorded further conditions, which only recorded signals can meet
 */
public record RepairedFault(
        TroubleCode code,
        Ignition ignition,
        MonitorGroup group,
        Trips trips,
        int requiredPasses,
        EvidenceGrade weakestAccepted,
        List<EnablingCondition> enablingConditions,
        Optional<OperatingPoint> freezeFrame,
        Optional<RecordedConditions> recorded) {

    /** The highest number of passes that can be asked for. */
    public static final int MOST_PASSES = 1000;

    public RepairedFault {
        if (requiredPasses < trips.count() || requiredPasses > MOST_PASSES) {
            throw new IllegalArgumentException(
                    "required passes: found %d, expected %d (the trips this fault needs to confirm) to %d"
                            .formatted(requiredPasses, trips.count(), MOST_PASSES));
        }
        if (weakestAccepted == EvidenceGrade.DRIVEN) {
            throw new IllegalArgumentException(
                    "weakest evidence: found DRIVEN, expected ENABLING_CONDITIONS or stronger:"
                            + " that it was driven and the lamp stayed off is recorded and counts for nothing");
        }
        enablingConditions = List.copyOf(enablingConditions);
    }

    /** A fault without conditions that only recorded signals can meet. */
    public RepairedFault(
            TroubleCode code,
            Ignition ignition,
            MonitorGroup group,
            Trips trips,
            int requiredPasses,
            EvidenceGrade weakestAccepted,
            List<EnablingCondition> enablingConditions,
            Optional<OperatingPoint> freezeFrame) {
        this(
                code,
                ignition,
                group,
                trips,
                requiredPasses,
                weakestAccepted,
                enablingConditions,
                freezeFrame,
                Optional.empty());
    }

    /** The same fault with conditions that recorded signals are held against. */
    public RepairedFault with(RecordedConditions conditions) {
        return new RepairedFault(
                code,
                ignition,
                group,
                trips,
                requiredPasses,
                weakestAccepted,
                enablingConditions,
                freezeFrame,
                Optional.of(conditions));
    }

    /** A fault with the defaults: group by code, as many passes as trips, evidence down to the enabling conditions. */
    public static RepairedFault of(TroubleCode code, Ignition ignition, Trips trips) {
        return new RepairedFault(
                code,
                ignition,
                MonitorGroup.of(code, ignition),
                trips,
                trips.count(),
                EvidenceGrade.ENABLING_CONDITIONS,
                List.of(),
                Optional.empty());
    }

    /** Misfire and fuel-system faults are erased only under conditions similar to the freeze frame. */
    boolean needsSimilarConditions() {
        return group.needsSimilarConditions(code);
    }

    /** The readiness bits of its group speak of this very fault: see {@link MonitorGroup#bitReaches}. */
    boolean isReachedByReadiness() {
        return group.bitReaches(code, ignition);
    }
}
