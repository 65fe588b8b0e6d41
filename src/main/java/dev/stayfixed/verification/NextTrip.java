package dev.stayfixed.verification;

import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.verification.Abilities.Shown;
import dev.stayfixed.verification.WaysToProve.Kind;
import dev.stayfixed.verification.WaysToProve.Way;
import java.util.Optional;

/** Says what the next drive must bring; asks only for what the vehicle can answer and what speaks of this very code. */
final class NextTrip {

    private NextTrip() {}

    /** Where nothing is known of the vehicle's answers. */
    static Optional<Reason> neededAfter(RepairedFault fault, VerificationState state) {
        return neededAfter(fault, state, Abilities.UNKNOWN);
    }

    static Optional<Reason> neededAfter(RepairedFault fault, VerificationState state, Abilities abilities) {
        return switch (state.name()) {
            case WAITING_FOR_FIRST_TRIP, PASSING ->
                Optional.of(trips(fault, fault.requiredPasses() - state.passes(), abilities));
            case FAILED_ONCE ->
                Optional.of(Reason.of(ProofReason.NEXT_DECIDES, trips(fault, fault.requiredPasses(), abilities)));
            case RECURRED -> Optional.of(Reason.of(ProofReason.FIND_THE_CAUSE));
            case AWAITING_REPAIR, CONFIRMED_FIXED -> Optional.empty();
        };
    }

    private static Reason trips(RepairedFault fault, int count, Abilities abilities) {
        return Reason.of(
                ProofReason.TRIPS_NEEDED,
                Reason.of(ProofReason.MORE_DRIVES, Part.count(count)),
                WaysToProve.test(fault.code(), fault.group()),
                howToRecord(fault, abilities).asSentence());
    }

    /** What to end a drive with, as an instruction. */
    static Reason howToRecord(RepairedFault fault, Abilities abilities) {
        return ending(fault, abilities)
                .map(reading -> Reason.of(ProofReason.END_WITH, reading))
                .orElseGet(() -> otherwise(fault, abilities));
    }

    /** The reading that a drive lacked. */
    static Reason whatWouldHaveTold(RepairedFault fault, Abilities abilities) {
        return ending(fault, abilities)
                .orElseGet(() -> otherwise(fault, abilities))
                .asSentence();
    }

    private static Optional<Reason> ending(RepairedFault fault, Abilities abilities) {
        WaysToProve ways = WaysToProve.of(fault, abilities, true);
        if (has(ways, Kind.CYCLE_READINESS)) {
            return Optional.of(Reason.of(ProofReason.READ_CYCLE));
        }
        if (has(ways, Kind.STATUS_BYTE) && abilities.statusBytes() == Shown.YES) {
            return Optional.of(Reason.of(ProofReason.READ_STATUS));
        }
        Optional<Reason> other = has(ways, Kind.TEST_RESULT)
                ? Optional.of(Reason.of(ProofReason.READ_RESULT))
                : has(ways, Kind.IN_USE_COUNTER)
                        ? Optional.of(Reason.of(ProofReason.READ_COUNTERS))
                        : has(ways, Kind.CONDITIONS) ? Optional.of(conditions(fault)) : Optional.empty();
        if (!has(ways, Kind.STATUS_BYTE)) {
            return other;
        }
        return Optional.of(other.map(reading -> Reason.of(ProofReason.READ_STATUS_OR, reading))
                .orElseGet(() -> Reason.of(ProofReason.READ_STATUS_IF_ANSWERED)));
    }

    private static Reason otherwise(RepairedFault fault, Abilities abilities) {
        return WaysToProve.of(fault, abilities, false).strongest().isPresent()
                ? Reason.of(ProofReason.LEAVE_STORED)
                : WaysToProve.of(fault, abilities, true).inBrief();
    }

    private static Reason conditions(RepairedFault fault) {
        boolean stated =
                !fault.enablingConditions().isEmpty() || fault.recorded().isPresent();
        Part read = fault.code().text().startsWith("P") || fault.code().text().startsWith("U")
                ? ProofReason.LIST_OF_PENDING
                : ProofReason.LIST_OF_ITS_UNIT;
        return Reason.of(stated ? ProofReason.MEET_CONDITIONS : ProofReason.NAME_CONDITIONS, read);
    }

    private static boolean has(WaysToProve ways, Kind kind) {
        return ways.ways().stream().filter(Way::enough).anyMatch(way -> way.kind() == kind);
    }
}
