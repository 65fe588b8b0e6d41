package dev.stayfixed.verification.held;

import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Quantity;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Unit;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How long a repair has held, as drives and the driver's reports tell: distance, starts and days with the lamp off and no code. Weaker
 * than proof, because nothing in it shows that the fault's monitor ran.
 *
 * @param since when the stretch began; empty where nothing shows the lamp off or the codes gone yet
 * @param until the last moment at which that was seen
 * @param kilometres driven in the stretch, at least; empty where no distance was recorded
 * @param starts drives recorded in the stretch
 * @param days whole days from {@code since} to {@code until}
 * @param ended what ended it, with its time; empty while it lasts
 */
public record HeldSoFar(
        Optional<Instant> since,
        Optional<Instant> until,
        OptionalDouble kilometres,
        int starts,
        long days,
        Optional<Ended> ended) {

    /**
     * What ended the stretch.
     *
     * @param driveId of the drive in which it showed
     */
    public record Ended(Instant at, String driveId, Reason reason) {}

    /** All of it in a sentence. */
    public Reason said() {
        if (ended.isEmpty()) {
            return until.isEmpty() ? Reason.of(HeldReason.NOTHING_YET) : Reason.of(HeldReason.HELD_SO_FAR, stretch());
        }
        Reason why = ended.get().reason();
        return until.isEmpty()
                ? Reason.of(HeldReason.NEVER_HELD, why)
                : Reason.of(HeldReason.HELD_THEN, stretch(), why);
    }

    private Reason stretch() {
        Reason started = Reason.of(HeldReason.STARTS, Part.count(starts));
        Reason lasted = Reason.of(HeldReason.DAYS, Part.count(days));
        return kilometres.isEmpty()
                ? Reason.of(HeldReason.STRETCH, started, lasted)
                : Reason.of(
                        HeldReason.STRETCH_DRIVEN,
                        Quantity.whole(kilometres.getAsDouble(), Unit.KILOMETRE),
                        started,
                        lasted);
    }
}
