package dev.stayfixed.verification;

import dev.stayfixed.obd.MonitorGroup;
import java.util.Optional;

/** Says in a sentence what the next drive must bring. */
final class NextTrip {

    private NextTrip() {}

    static Optional<String> neededAfter(RepairedFault fault, VerificationState state) {
        if (state instanceof VerificationState.WaitingForFirstTrip) {
            return Optional.of(trips(fault, fault.requiredPasses()));
        }
        if (state instanceof VerificationState.Passing passing) {
            return Optional.of(trips(fault, passing.needed() - passing.passes()));
        }
        if (state instanceof VerificationState.FailedOnce) {
            return Optional.of(
                    "The next trip decides: if it fails too, the fault has recurred; if it passes, the count starts at 1. "
                            + trips(fault, fault.requiredPasses()));
        }
        if (state instanceof VerificationState.Recurred) {
            return Optional.of("Find the cause and record the next repair; its trips are counted anew.");
        }
        return Optional.empty();
    }

    private static String trips(RepairedFault fault, int count) {
        return "%s in which the %s monitor runs and passes. %s"
                .formatted(
                        count == 1 ? "One more drive" : count + " more drives in a row",
                        fault.group().label(),
                        howToRecord(fault.group()));
    }

    /** On the continuous monitors the readiness bits prove nothing, so another record is asked for. */
    private static String howToRecord(MonitorGroup group) {
        return group.isContinuous()
                ? "End it with a scan of the code's status byte ($19 0A or $19 02 FF) where the car answers it, or of $06 and $07, key still on."
                : "End it with a scan of PID $41 and service $07, key still on.";
    }
}
