package dev.stayfixed.verification.held;

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
 * @param sentence all of it for a person; distances in km
 */
public record HeldSoFar(
        Optional<Instant> since,
        Optional<Instant> until,
        OptionalDouble kilometres,
        int starts,
        long days,
        Optional<Ended> ended,
        String sentence) {

    /**
     * What ended the stretch.
     *
     * @param driveId of the drive in which it showed
     */
    public record Ended(Instant at, String driveId, String reason) {}
}
