package dev.stayfixed.verification;

import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Whether the clear that was stated at a repair can have happened: it sets the counters since the clear to 0, so what they say at the
 * first reading must fit into the time since then.
 *
 * @param doubt why it cannot have happened
 * @param seen the place behind the last drive that this rests on, or {@link #ALL}
 */
record ClearTaken(Optional<Reason> doubt, int seen) {

    private static final int ALL = Integer.MAX_VALUE;

    /**
     * Asks the scan after the repair, and every drive for it up to one before which codes were cleared again.
     *
     * @param from the place of the first drive for this repair
     * @param until the place behind the last one
     */
    static ClearTaken at(
            RepairAttempt repair, RepairedFault fault, List<DriveRecord> drives, int from, int until, Owner owner) {
        if (!repair.codesCleared()) {
            return new ClearTaken(Optional.empty(), 0);
        }
        Optional<Reason> atOnce = repair.scanAfter()
                .flatMap(scan -> owner.counters(scan)
                        .moreThanFitsInto(Duration.ZERO)
                        .or(() -> stillStored(fault, owner.in(scan))));
        boolean isSeen = repair.scanAfter()
                .filter(scan -> owner.counters(scan).countsSinceTheClear())
                .isPresent();
        return atOnce.isPresent() || isSeen ? new ClearTaken(atOnce, 0) : in(repair, drives, from, until, owner);
    }

    private static ClearTaken in(RepairAttempt repair, List<DriveRecord> drives, int from, int until, Owner owner) {
        for (int place = from; place < until; place++) {
            DriveRecord drive = drives.get(place);
            if (drive.clearedBefore()) {
                return new ClearTaken(Optional.empty(), place + 1);
            }
            if (isOfAnotherCar(repair, drive, owner)) {
                continue;
            }
            Optional<Reason> doubt = drive.scans().stream()
                    .map(timed -> owner.counters(timed.scan())
                            .moreThanFitsInto(Duration.between(repair.at(), DrivingCycles.until(drive))))
                    .flatMap(Optional::stream)
                    .findFirst();
            if (doubt.isPresent()) {
                return new ClearTaken(doubt, place + 1);
            }
        }
        return new ClearTaken(Optional.empty(), ALL);
    }

    /** The same with one more drive for this repair, at this place; those in front of it are not asked again. */
    ClearTaken with(RepairAttempt repair, List<DriveRecord> drives, int place, int until, Owner owner) {
        return seen <= place ? this : in(repair, drives, place, until, owner);
    }

    /** The same with one more drive that is not for this repair. */
    ClearTaken behind(int place) {
        return seen <= place || seen == ALL ? this : new ClearTaken(doubt, seen + 1);
    }

    /** Its odometer is behind that of the repair, or its VIN is another: what it counts is no word on this clear. */
    private static boolean isOfAnotherCar(RepairAttempt repair, DriveRecord drive, Owner owner) {
        return Stream.of(repair.scanBefore(), repair.scanAfter())
                .flatMap(Optional::stream)
                .anyMatch(then -> drive.scans().stream()
                        .map(DriveRecord.TimedScan::scan)
                        .anyMatch(now -> owner.counters(then)
                                        .odometerBackIn(owner.counters(now))
                                        .isPresent()
                                || (then.vin().isPresent()
                                        && now.vin().isPresent()
                                        && !then.vin().equals(now.vin()))));
    }

    private static Optional<Reason> stillStored(RepairedFault fault, Scan own) {
        return own.confirmed(fault.code()) == Scan.Presence.PRESENT
                ? Optional.of(Reason.of(
                        StepReason.STILL_STORED, Part.verbatim(fault.code().text())))
                : Optional.empty();
    }
}
