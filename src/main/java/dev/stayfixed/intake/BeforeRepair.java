package dev.stayfixed.intake;

import dev.stayfixed.verification.RepairAttempt;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;

/** A drive that lies before the repair of a fault proves nothing of it, and a wrong date is common: so it is said. */
public final class BeforeRepair {

    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("d MMMM uuuu HH:mm 'UTC'", Locale.ENGLISH)
            .withZone(ZoneOffset.UTC);

    private BeforeRepair() {}

    /** When the first repair of the fault was done, where its job is open and the drive began before it. */
    public static Optional<Instant> repair(String driveId, FaultVerdict verdict) {
        Instant start = verdict.driveStarts().get(driveId);
        if (start == null || verdict.faultCase().job().closedAt().isPresent()) {
            return Optional.empty();
        }
        return verdict.faultCase().repairs().stream()
                .map(RepairAttempt::at)
                .min(Comparator.naturalOrder())
                .filter(start::isBefore);
    }

    /** Why a drive does not count, and what to do about it; empty where it does, or where its job is closed. */
    static Optional<String> words(String driveId, FaultVerdict verdict) {
        if (verdict.faultCase().repairs().isEmpty()
                && verdict.faultCase().job().closedAt().isEmpty()
                && verdict.driveStarts().containsKey(driveId)) {
            return Optional.of(
                    "no repair of this fault is recorded yet, so this drive does not count for one; drives that start"
                            + " after the repair do");
        }
        return repair(driveId, verdict)
                .map(
                        at -> "this drive is from before the repair of " + TIME.format(at)
                                + " and does not count for it; if a date is wrong, correct that of the drive or that of the repair");
    }
}
