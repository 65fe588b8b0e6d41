package dev.stayfixed.histories;

import dev.stayfixed.histories.Reading.Phase;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Between two readings: how many times the engine was started in it (assumption 2). The count begins at 1 for a history that was in a
 * running cycle where {@code running} is counted, so that "the same cycle" is 0 and "the drive of this record" is 1.
 *
 * @param countsRunning the drive that a record is of may have begun with or before its first reading
 * @param most 2 stands for any number
 */
record Gap(boolean countsRunning, int least, int most, String why) {

    static final int ANY = 2;

    private static final int FEW_SECONDS = 5;
    private static final int SURELY_PARKED = 3600;
    private static final int A_DRIVE = 5 * 60;
    private static final int SURELY_STARTED_LATER = 60;

    /**
     * When and where a reading was taken.
     *
     * @param entry its place among the entries of the record
     * @param after in the drive or at its end; else before it, or at a repair
     * @param last the last reading of its record: only then its time is the record's end
     */
    record Taken(int entry, boolean after, boolean last, Phase phase, Instant start, Instant end, OptionalInt runTime) {

        Instant at() {
            return after ? end : start;
        }
    }

    static Gap unlimited(String why) {
        return new Gap(false, 0, ANY, why);
    }

    /**
     * @param counted the ignition counter was read in both and tells by itself
     * @param countedSince it was read now and at some time before
     */
    static Gap between(Optional<Taken> before, Taken now, boolean counted, boolean countedSince) {
        if (before.isEmpty()) {
            return unlimited("the first reading");
        }
        Taken then = before.get();
        return then.entry() == now.entry() ? inOneRecord(then, now, countedSince) : betweenRecords(then, now, counted);
    }

    /** A reading before the engine start ends its gap without one, whatever the pause. */
    boolean accepts(long memory) {
        int starts = Memory.GAP_STARTS.of(memory);
        return starts >= least || (!countsRunning && !Memory.RUNNING.in(memory));
    }

    private static Gap inOneRecord(Taken then, Taken now, boolean counted) {
        if (!now.after()) {
            return counted ? new Gap(true, 0, ANY, "counted") : new Gap(true, 0, 1, "before the drive");
        }
        if (then.after() && then.phase() == Phase.KEY_ON) {
            return unlimited("after a reading at the next key-on");
        }
        boolean fell = then.after()
                && now.phase() == Phase.RUNNING
                && then.runTime().isPresent()
                && now.runTime().isPresent()
                && now.runTime().getAsInt() < then.runTime().getAsInt();
        boolean startedInside = now.last()
                && now.phase() == Phase.RUNNING
                && now.runTime().isPresent()
                && now.end()
                        .minusSeconds(now.runTime().getAsInt())
                        .isAfter(now.start().plusSeconds(SURELY_STARTED_LATER));
        return counted || fell || startedInside
                ? new Gap(true, 1, ANY, "one record, started again by its run time or its counter")
                : new Gap(true, 1, 1, "one record is one driving cycle");
    }

    private static Gap betweenRecords(Taken then, Taken now, boolean counted) {
        if (counted) {
            return unlimited("the ignition counter tells");
        }
        if (now.phase() == Phase.RUNNING && now.runTime().isPresent()) {
            Instant started = now.at().minusSeconds(now.runTime().getAsInt());
            if (started.isBefore(then.at())) {
                return new Gap(false, 0, 0, "the run time reaches back over the record before");
            }
            if (started.isAfter(then.at().plusSeconds(FEW_SECONDS))) {
                return new Gap(false, 1, ANY, "the run time tells of a start in between");
            }
        }
        long pause = now.start().getEpochSecond() - then.at().getEpochSecond();
        if (now.phase() == Phase.KEY_ON) {
            boolean driven = now.after() && now.end().minusSeconds(A_DRIVE).compareTo(now.start()) >= 0;
            return driven ? new Gap(true, 1, ANY, "driven, and read at the next key-on") : unlimited("key on");
        }
        if (pause <= FEW_SECONDS) {
            return new Gap(true, 0, 1, "a few seconds between");
        }
        return pause >= SURELY_PARKED
                ? new Gap(false, 1, ANY, "hours between")
                : unlimited("nothing tells how many cycles lie between");
    }
}
