package dev.stayfixed.verification;

import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.obd.Scan.Presence;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.verification.UnitState.Trip;
import java.util.Optional;

/**
 * Why it is not decided: a history that still fits all readings and would be bad.
 *
 * @param history what may have happened
 * @param reading the one reading that would have ruled it out
 */
public record Doubt(Reason history, Reason reading) {

    /** The worst that fits; empty where the verdict is decided or nothing was driven yet. */
    static Optional<Doubt> of(
            RepairedFault fault,
            VerificationState state,
            Histories histories,
            Knowledge known,
            Abilities abilities,
            Optional<DriveRecord> last) {
        if (!state.name().isOpen() || last.isEmpty()) {
            return Optional.empty();
        }
        Part day = new Part.Day(last.get().start());
        if (histories.any(s -> s.cycle() == Trip.FAILED) && histories.any(s -> s.cycle() != Trip.FAILED)) {
            return Optional.of(new Doubt(Reason.of(ProofReason.MAY_HAVE_FAILED, day), failureReading(fault, known)));
        }
        if (histories.any(s -> s.unseen() == Trip.FAILED) && histories.any(s -> s.unseen() != Trip.FAILED)) {
            return Optional.of(new Doubt(
                    Reason.of(ProofReason.MAY_HAVE_FAILED_BEFORE, day), Reason.of(ProofReason.PENDING_AT_START)));
        }
        return histories.any(s -> s.cycle() == Trip.NOT_RUN)
                ? Optional.of(new Doubt(
                        Reason.of(ProofReason.MAY_NOT_HAVE_RUN, day), NextTrip.whatWouldHaveTold(fault, abilities)))
                : Optional.empty();
    }

    private static Reason failureReading(RepairedFault fault, Knowledge known) {
        return known.pending() == Presence.PRESENT
                ? Reason.of(ProofReason.SCAN_AT_NEXT_START)
                : Reason.of(
                        ProofReason.PENDING_OF_OWNER, Part.verbatim(fault.code().text()));
    }
}
