package dev.stayfixed.verification;

import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.obd.Scan.Presence;
import dev.stayfixed.verification.UnitState.Trip;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;

/**
 * Why it is not decided: a history that still fits all readings and would be bad.
 *
 * @param history what may have happened, in a sentence
 * @param reading the one reading that would have ruled it out
 */
public record Doubt(String history, String reading) {

    private static final DateTimeFormatter DAY =
            DateTimeFormatter.ofPattern("d MMMM", Locale.ENGLISH).withZone(ZoneOffset.UTC);

    /** The worst that fits; empty where the verdict is decided or nothing was driven yet. */
    static Optional<Doubt> of(
            RepairedFault fault,
            VerificationState state,
            Histories histories,
            Knowledge known,
            Abilities abilities,
            Optional<DriveRecord> last) {
        boolean open = state instanceof VerificationState.Passing
                || state instanceof VerificationState.WaitingForFirstTrip
                || state instanceof VerificationState.FailedOnce;
        if (!open || last.isEmpty()) {
            return Optional.empty();
        }
        String day = DAY.format(last.get().start());
        if (histories.any(s -> s.cycle() == Trip.FAILED) && histories.any(s -> s.cycle() != Trip.FAILED)) {
            return Optional.of(new Doubt(
                    "The monitor may have failed in the drive of " + day + ": nothing read in it would look different.",
                    failureReading(fault, known)));
        }
        if (histories.any(s -> s.unseen() == Trip.FAILED) && histories.any(s -> s.unseen() != Trip.FAILED)) {
            return Optional.of(new Doubt(
                    "A failed trip between the record before and the drive of " + day + " would look the same.",
                    "The pending codes (service $07) at the start of that drive."));
        }
        return histories.any(s -> s.cycle() == Trip.NOT_RUN)
                ? Optional.of(new Doubt(
                        "The monitor may not have run in the drive of " + day + ".",
                        NextTrip.whatWouldHaveTold(fault, abilities)))
                : Optional.empty();
    }

    private static String failureReading(RepairedFault fault, Knowledge known) {
        return known.pending() == Presence.PRESENT
                ? "A scan at the next start, before the engine runs: a pending code that is gone then was erased by a passed trip."
                : "The pending codes (service $07) of the control unit that owns "
                        + fault.code().text() + ", at the end of that drive.";
    }
}
