package dev.stayfixed.verification;

import dev.stayfixed.verification.Abilities.Shown;
import dev.stayfixed.verification.WaysToProve.Kind;
import dev.stayfixed.verification.WaysToProve.Way;
import java.util.Optional;

/** Says in a sentence what the next drive must bring; asks only for what the vehicle can answer and what speaks of this very code. */
final class NextTrip {

    private NextTrip() {}

    /** Where nothing is known of the vehicle's answers. */
    static Optional<String> neededAfter(RepairedFault fault, VerificationState state) {
        return neededAfter(fault, state, Abilities.UNKNOWN);
    }

    static Optional<String> neededAfter(RepairedFault fault, VerificationState state, Abilities abilities) {
        if (state instanceof VerificationState.WaitingForFirstTrip) {
            return Optional.of(trips(fault, fault.requiredPasses(), abilities));
        }
        if (state instanceof VerificationState.Passing passing) {
            return Optional.of(trips(fault, passing.needed() - passing.passes(), abilities));
        }
        if (state instanceof VerificationState.FailedOnce) {
            return Optional.of(
                    "The next trip decides: if it fails too, the fault has recurred; if it passes, the count starts at 1. "
                            + trips(fault, fault.requiredPasses(), abilities));
        }
        if (state instanceof VerificationState.Recurred) {
            return Optional.of("Find the cause and record the next repair; its trips are counted anew.");
        }
        return Optional.empty();
    }

    private static String trips(RepairedFault fault, int count, Abilities abilities) {
        return "%s in which %s runs and passes. %s"
                .formatted(
                        count == 1 ? "One more drive" : count + " more drives in a row",
                        WaysToProve.test(fault.code(), fault.group()),
                        howToRecord(fault, abilities));
    }

    /** What to end a drive with, as an instruction. */
    static String howToRecord(RepairedFault fault, Abilities abilities) {
        return ending(fault, abilities)
                .map(reading -> "End it with " + reading)
                .orElseGet(() -> otherwise(fault, abilities));
    }

    /** The reading that a drive lacked. */
    static String whatWouldHaveTold(RepairedFault fault, Abilities abilities) {
        return ending(fault, abilities)
                .map(reading -> Character.toUpperCase(reading.charAt(0)) + reading.substring(1))
                .orElseGet(() -> otherwise(fault, abilities));
    }

    private static Optional<String> ending(RepairedFault fault, Abilities abilities) {
        WaysToProve ways = WaysToProve.of(fault, abilities, true);
        if (has(ways, Kind.CYCLE_READINESS)) {
            return Optional.of("a scan of PID $41 and service $07, key still on.");
        }
        String status = "a scan of the code's status byte ($19 0A or $19 02 FF)";
        if (has(ways, Kind.STATUS_BYTE) && abilities.statusBytes() == Shown.YES) {
            return Optional.of(status + ", key still on.");
        }
        Optional<String> other = has(ways, Kind.TEST_RESULT)
                ? Optional.of("a scan of services $06 and $07, key still on.")
                : has(ways, Kind.IN_USE_COUNTER)
                        ? Optional.of("a scan of the in-use counters (service $09) and service $07, key still on.")
                        : has(ways, Kind.CONDITIONS) ? Optional.of(conditions(fault)) : Optional.empty();
        if (!has(ways, Kind.STATUS_BYTE)) {
            return other;
        }
        status += " where the car answers it";
        return Optional.of(status + other.map(o -> ", or " + o).orElse(", key still on."));
    }

    private static String otherwise(RepairedFault fault, Abilities abilities) {
        return WaysToProve.of(fault, abilities, false).strongest().isPresent()
                ? "This car has no list of pending codes: leave the codes stored, and the MIL going out by itself proves it."
                : WaysToProve.of(fault, abilities, true).sentence();
    }

    private static String conditions(RepairedFault fault) {
        boolean stated =
                !fault.enablingConditions().isEmpty() || fault.recorded().isPresent();
        String read = fault.code().text().startsWith("P") || fault.code().text().startsWith("U")
                ? "service $07 read, key still on."
                : "the code list of its own control unit read, key still on.";
        return stated
                ? "its conditions met and " + read
                : "its conditions met (name those of the service information, or adopt the typical ones) and " + read;
    }

    private static boolean has(WaysToProve ways, Kind kind) {
        return ways.ways().stream().filter(Way::enough).anyMatch(way -> way.kind() == kind);
    }
}
