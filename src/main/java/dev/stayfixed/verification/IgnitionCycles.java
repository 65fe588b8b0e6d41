package dev.stayfixed.verification;

import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.drive.DriveRecord.Moment;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/**
 * The ignition cycle counter over a series of records (13 CCR 1968.2 (d)(4): one more with every engine start): which of them are one
 * cycle, and how many cycles lie between them that nobody recorded.
 *
 * @param drives in the order of their start
 */
record IgnitionCycles(List<DriveRecord> drives, Owner owner) {

    DrivingCycles.Link link(DriveRecord before, DriveRecord now) {
        return DrivingCycles.link(
                before,
                counts(before, Moment.AFTER).reduce((a, b) -> b),
                now,
                counts(now, Moment.AFTER).findFirst());
    }

    /**
     * The unrecorded cycles that the counter leaves room for before this drive.
     *
     * @param believed the counters as last read
     * @param recorded cycles recorded since then
     * @param perhaps records since then that may be a cycle of their own or not
     */
    Unrecorded before(DriveRecord drive, Counters believed, int recorded, int perhaps) {
        for (DriveRecord next : drives.subList(Math.max(0, drives.indexOf(drive)), drives.size())) {
            OptionalInt atStart = counts(next, Moment.BEFORE).findFirst();
            OptionalInt to =
                    atStart.isPresent() ? atStart : counts(next, Moment.AFTER).findFirst();
            OptionalInt cycles = believed.ignitionCyclesTo(Counters.UNKNOWN.withIgnitionCycles(to));
            if (cycles.isPresent()) {
                boolean here = next.equals(drive);
                int own = (!here || atStart.isEmpty()) && DrivingCycles.engineRan(drive) ? 1 : 0;
                int room = cycles.getAsInt() - recorded - own;
                return here ? Unrecorded.between(room - perhaps, room) : Unrecorded.atMost(room);
            }
        }
        return Unrecorded.ANY;
    }

    private IntStream counts(DriveRecord drive, Moment moment) {
        return drive.scans(moment).stream()
                .map(scan -> Counters.read(owner.in(scan)).ignitionCycles())
                .filter(OptionalInt::isPresent)
                .mapToInt(OptionalInt::getAsInt);
    }
}
