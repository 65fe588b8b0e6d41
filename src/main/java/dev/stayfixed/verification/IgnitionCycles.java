package dev.stayfixed.verification;

import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.drive.DriveRecord.Moment;
import java.util.Collections;
import java.util.List;
import java.util.OptionalInt;

/**
 * The ignition cycle counter over a series of records (13 CCR 1968.2 (d)(4): one more with every engine start): which of them are one
 * cycle, and how many cycles lie between them that nobody recorded.
 */
final class IgnitionCycles {

    /**
     * What one drive says of it.
     *
     * @param before in the first scan before it that has the counter
     * @param first in the first scan in it or at its end, likewise
     * @param last in the last one
     */
    private record Counted(OptionalInt before, OptionalInt first, OptionalInt last) {

        private static final Counted NOTHING =
                new Counted(OptionalInt.empty(), OptionalInt.empty(), OptionalInt.empty());

        static Counted of(DriveRecord drive, Owner owner) {
            OptionalInt first = OptionalInt.empty();
            OptionalInt last = OptionalInt.empty();
            for (var scan : drive.scans(Moment.AFTER)) {
                OptionalInt count = owner.counters(scan).ignitionCycles();
                first = first.isPresent() ? first : count;
                last = count.isPresent() ? count : last;
            }
            OptionalInt before = drive.scans(Moment.BEFORE).stream()
                    .map(scan -> owner.counters(scan).ignitionCycles())
                    .filter(OptionalInt::isPresent)
                    .findFirst()
                    .orElse(OptionalInt.empty());
            return new Counted(before, first, last);
        }

        boolean isEmpty() {
            return before.isEmpty() && first.isEmpty();
        }

        Counters earliest() {
            return Counters.UNKNOWN.withIgnitionCycles(before.isPresent() ? before : first);
        }
    }

    static final IgnitionCycles NONE = new IgnitionCycles(List.of(), new Counted[0]);

    private final List<DriveRecord> drives;
    private final Counted[] counted;

    /** For each drive the place of the first one from it on that has the counter. */
    private final int[] next;

    private IgnitionCycles(List<DriveRecord> drives, Counted[] counted) {
        this.drives = drives;
        this.counted = counted;
        this.next = new int[counted.length];
        int following = counted.length;
        for (int place = counted.length - 1; place >= 0; place--) {
            following = counted[place].isEmpty() ? following : place;
            next[place] = following;
        }
    }

    /** @param drives in the order of their start, each with an id of its own */
    IgnitionCycles(List<DriveRecord> drives, Owner owner) {
        this(drives, drives.stream().map(drive -> Counted.of(drive, owner)).toArray(Counted[]::new));
    }

    /**
     * The same with one more drive.
     *
     * @param more the drives with it
     * @param place where it stands among them
     */
    IgnitionCycles with(List<DriveRecord> more, int place, Owner owner) {
        Counted[] all = new Counted[counted.length + 1];
        System.arraycopy(counted, 0, all, 0, place);
        all[place] = Counted.of(more.get(place), owner);
        System.arraycopy(counted, place, all, place + 1, counted.length - place);
        return new IgnitionCycles(more, all);
    }

    /** The drive at this place says something of the counter. */
    boolean isCounted(int place) {
        return !counted[place].isEmpty();
    }

    /**
     * The unrecorded cycles that the counter leaves room for.
     *
     * @param seen the place behind the last drive that this rests on, or {@link #ALL}
     */
    record Room(Unrecorded cycles, int seen) {

        /** What later drives say of the counter may change it. */
        static final int ALL = Integer.MAX_VALUE;
    }

    DrivingCycles.Link link(DriveRecord before, DriveRecord now) {
        return DrivingCycles.link(before, of(before).last(), now, of(now).first());
    }

    /**
     * The room before this drive.
     *
     * @param believed the counters as last read
     * @param recorded cycles recorded since then
     * @param perhaps records since then that may be a cycle of their own or not
     */
    Room before(DriveRecord drive, Counters believed, int recorded, int perhaps) {
        int place = place(drive);
        if (place < 0 || believed.ignitionCycles().isEmpty()) {
            return new Room(Unrecorded.ANY, 0);
        }
        for (int at = next[place]; at < counted.length; at = at + 1 < counted.length ? next[at + 1] : counted.length) {
            OptionalInt cycles = believed.ignitionCyclesTo(counted[at].earliest());
            if (cycles.isPresent()) {
                boolean here = at == place;
                boolean own = !here || counted[at].before().isEmpty();
                int room = cycles.getAsInt() - recorded - (own && DrivingCycles.engineRan(drive) ? 1 : 0);
                boolean mayLieInside = counted[at].before().isEmpty()
                        && !drive.scans(Moment.BEFORE).isEmpty();
                return new Room(
                        here
                                ? Unrecorded.between(mayLieInside ? 0 : room - perhaps, room)
                                : Unrecorded.atMost(room - (isAnother(drive, at) ? 1 : 0)),
                        at + 1);
            }
        }
        return new Room(Unrecorded.ANY, Room.ALL);
    }

    private int place(DriveRecord drive) {
        return Collections.binarySearch(drives, drive, Verification.BY_START);
    }

    /** The count was read in a recorded cycle that is not the one of this drive. */
    private boolean isAnother(DriveRecord drive, int at) {
        return counted[at].before().isEmpty()
                && DrivingCycles.engineRan(drives.get(at))
                && DrivingCycles.link(drive, OptionalInt.empty(), drives.get(at), OptionalInt.empty())
                        == DrivingCycles.Link.NEW;
    }

    private Counted of(DriveRecord drive) {
        int place = place(drive);
        return place < 0 ? Counted.NOTHING : counted[place];
    }
}
