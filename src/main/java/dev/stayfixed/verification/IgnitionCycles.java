package dev.stayfixed.verification;

import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.drive.DriveRecord.Moment;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
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

    private final Map<String, Integer> places = new HashMap<>();
    private final Counted[] counted;

    /** For each drive the place of the first one from it on that has the counter. */
    private final int[] next;

    /** @param drives in the order of their start, each with an id of its own */
    IgnitionCycles(List<DriveRecord> drives, Owner owner) {
        counted = new Counted[drives.size()];
        next = new int[drives.size()];
        int following = drives.size();
        for (int place = drives.size() - 1; place >= 0; place--) {
            DriveRecord drive = drives.get(place);
            places.put(drive.id(), place);
            counted[place] = Counted.of(drive, owner);
            following = counted[place].isEmpty() ? following : place;
            next[place] = following;
        }
    }

    DrivingCycles.Link link(DriveRecord before, DriveRecord now) {
        return DrivingCycles.link(before, of(before).last(), now, of(now).first());
    }

    /**
     * The unrecorded cycles that the counter leaves room for before this drive.
     *
     * @param believed the counters as last read
     * @param recorded cycles recorded since then
     * @param perhaps records since then that may be a cycle of their own or not
     */
    Unrecorded before(DriveRecord drive, Counters believed, int recorded, int perhaps) {
        Integer place = places.get(drive.id());
        if (place == null || believed.ignitionCycles().isEmpty()) {
            return Unrecorded.ANY;
        }
        for (int at = next[place]; at < counted.length; at = at + 1 < counted.length ? next[at + 1] : counted.length) {
            OptionalInt cycles = believed.ignitionCyclesTo(counted[at].earliest());
            if (cycles.isPresent()) {
                boolean here = at == place;
                boolean own = !here || counted[at].before().isEmpty();
                int room = cycles.getAsInt() - recorded - (own && DrivingCycles.engineRan(drive) ? 1 : 0);
                return here ? Unrecorded.between(room - perhaps, room) : Unrecorded.atMost(room);
            }
        }
        return Unrecorded.ANY;
    }

    private Counted of(DriveRecord drive) {
        Integer place = places.get(drive.id());
        return place == null ? Counted.NOTHING : counted[place];
    }
}
