package dev.stayfixed.verification;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One state that the control unit may be in, as far as it concerns one fault: what it has stored, and how it came there since the
 * repair. It moves by 13 CCR 1968.2 (d)(2.2) to (d)(2.5), as {@link Assumption} reads them.
 */
final class UnitState {

    /** More passes in a row than the two that confirm a fault tell nothing more. */
    static final int MOST = 2;

    static final int MANY = 3;

    static final Comparator<UnitState> BY_KEY = Comparator.comparingInt(UnitState::key);

    /** What the fault's monitor did in a driving cycle; a failure in any part of it makes a failed trip. */
    enum Trip {
        NOT_RUN,
        PASSED,
        FAILED;

        Trip worse(Trip other) {
            return compareTo(other) >= 0 ? this : other;
        }
    }

    /**
     * What the unit has stored for the fault.
     *
     * @param completed the test has run since the last clear
     * @param failedSinceClear and failed since then
     */
    record Stored(
            Pending pending,
            boolean confirmed,
            Lamp lamp,
            boolean permanent,
            boolean completed,
            boolean failedSinceClear) {

        Stored with(Pending now) {
            return new Stored(now, confirmed, lamp, permanent, completed, failedSinceClear);
        }

        Stored with(Lamp now) {
            return new Stored(pending, confirmed, now, permanent, completed, failedSinceClear);
        }

        Stored withConfirmed(boolean now) {
            return new Stored(pending, now, lamp, permanent, completed, failedSinceClear);
        }

        Stored withPermanent(boolean now) {
            return new Stored(pending, confirmed, lamp, now, completed, failedSinceClear);
        }

        Stored tested(boolean nowCompleted, boolean nowFailed) {
            return nowCompleted == completed && nowFailed == failedSinceClear
                    ? this
                    : new Stored(pending, confirmed, lamp, permanent, nowCompleted, nowFailed);
        }

        Stored ran() {
            return new Stored(pending, confirmed, lamp, permanent, true, failedSinceClear);
        }

        Stored failed(boolean confirms) {
            Lamp now = confirms || lamp.isLit() ? Lamp.ON : Lamp.OFF;
            return new Stored(Pending.FRESH, confirmed || confirms, now, permanent, true, true);
        }

        Stored cleared() {
            return new Stored(Pending.NONE, false, Lamp.OFF, permanent, false, false);
        }
    }

    /**
     * What the monitor did since it was last asked.
     *
     * @param counted it ran in a cycle, so that its in-use numerator may have grown since that was read
     * @param ran it ran since its service $06 result was read
     * @param failed and failed since then
     */
    record Tally(boolean counted, boolean ran, boolean failed) {

        static final Tally NOTHING = new Tally(false, false, false);

        Tally afterRun() {
            return new Tally(true, true, failed);
        }

        /** A second run in one cycle counts no second time, but may leave another result. */
        Tally ranAgain() {
            return new Tally(counted, true, failed);
        }

        Tally afterFailure(boolean ranBefore) {
            return new Tally(counted || !ranBefore, true, true);
        }

        Tally numeratorRead() {
            return new Tally(false, ran, failed);
        }

        Tally resultRead() {
            return new Tally(counted, false, false);
        }
    }

    /**
     * The trips since the repair, the present cycle left out.
     *
     * @param passes passed ones in a row since the repair or the last clear; counted up to {@link #MOST}
     * @param failedLast the last one since then failed
     * @param row the unit's last trip failed: it does not know of the repair
     * @param fell one failed since the repair, or since the repair was last confirmed fixed; the present cycle included
     * @param recurred the control unit confirmed the code since the repair; likewise
     * @param confirmedNow it did so in the present cycle
     */
    record Series(int passes, boolean failedLast, boolean row, boolean fell, boolean recurred, boolean confirmedNow) {

        static Series atRepair(boolean row) {
            return new Series(0, false, row, false, false, false);
        }

        Series withFailure(boolean back, boolean anew) {
            return new Series(passes, failedLast, row, true, recurred || anew || back, confirmedNow || anew);
        }

        /** A clear: what was counted is forgotten. */
        Series cleared(boolean failure) {
            return new Series(0, false, false, fell || failure, recurred, false);
        }

        Series withoutPasses() {
            return new Series(0, failedLast, row, fell, recurred, confirmedNow);
        }

        /** It failed at a time that nobody knows. */
        Series failedSomewhere() {
            return new Series(0, false, row, true, recurred, confirmedNow);
        }

        Series unexplained() {
            return new Series(0, failedLast, row, true, recurred, confirmedNow);
        }

        Series cameBack() {
            return new Series(passes, failedLast, row, true, true, confirmedNow);
        }

        Series standing() {
            return new Series(passes, failedLast, row, false, recurred, confirmedNow);
        }
    }

    /**
     * What the monitor did in the last cycles.
     *
     * @param now so far in the present driving cycle
     * @param spoiled it had failed in this cycle before a clear in the same cycle: a failed trip that the unit has forgotten
     * @param previous in the recorded cycle before that, when that was last read
     * @param unseen between those two, with nobody recording it
     */
    record Cycles(Trip now, boolean spoiled, Trip previous, Trip unseen) {

        static final Cycles NONE = new Cycles(Trip.NOT_RUN, false, Trip.NOT_RUN, Trip.NOT_RUN);

        Cycles with(Trip trip) {
            return new Cycles(trip, spoiled, previous, unseen);
        }

        Cycles withoutPass() {
            return now == Trip.PASSED ? with(Trip.NOT_RUN) : this;
        }

        /** A clear in the present cycle: the unit knows nothing more of it. */
        Cycles cleared(boolean failedBefore) {
            return new Cycles(Trip.NOT_RUN, failedBefore, previous, unseen);
        }

        Cycles failedUnseen() {
            return new Cycles(now, spoiled, previous, Trip.FAILED);
        }
    }

    /** The pending code, and how it may go. */
    enum Pending {
        NONE,
        /** From a trip since the last reading: it does not go again before the next one. */
        FRESH,
        /** From a trip that nothing shows: it stays through the next trip that passes. */
        KEPT,
        /** Read, or from a trip that is known: the next pass may erase it at once. */
        ERASABLE,
        /** A trip passed and ended; the code may still be listed until the next start. */
        LINGERING,
        /** The same with one from a trip since the last reading: there has to be a reading before the next start. */
        FRESH_LINGERING;

        /** After a reading, whatever it asked for. */
        Pending read() {
            return this == FRESH ? KEPT : this == FRESH_LINGERING ? LINGERING : this;
        }
    }

    /** The code's own request for the MIL, with the passed trips in a row since it was lit. */
    enum Lamp {
        OFF,
        ON,
        ON_AFTER_ONE,
        ON_AFTER_TWO,
        /** Three trips passed; it may burn until the next start. */
        LINGERING;

        boolean isLit() {
            return this != OFF;
        }

        private Lamp afterPass() {
            return switch (this) {
                case OFF -> OFF;
                case ON -> ON_AFTER_ONE;
                case ON_AFTER_ONE -> ON_AFTER_TWO;
                case ON_AFTER_TWO, LINGERING -> LINGERING;
            };
        }
    }

    /**
     * What a unit of this fault does by.
     *
     * @param cleared codes were cleared since the repair, which decides when a permanent code may go
     * @param permanent permanent codes are followed at all
     */
    record Course(Trips trips, boolean cleared, boolean permanent) {}

    private final Stored stored;
    private final Tally tally;
    private final Series series;
    private final Cycles cycles;

    /** Trips that nobody recorded and that had to be thought up to come here, counted up to {@link #MANY}. */
    private final int guesses;

    private final int key;

    private UnitState(Stored stored, Tally tally, Series series, Cycles cycles, int guesses) {
        this.stored = stored;
        this.tally = tally;
        this.series = series;
        this.cycles = cycles;
        this.guesses = guesses;
        this.key = keyOf();
    }

    /** Nothing has happened since a repair that left this in store. */
    static UnitState repairedWith(Stored stored) {
        boolean row = stored.pending() == Pending.KEPT || stored.pending() == Pending.ERASABLE;
        return new UnitState(stored, Tally.NOTHING, Series.atRepair(row), Cycles.NONE, 0);
    }

    /** All of it in one number: states are kept in large sets. The places of the enums never leave this method. */
    @SuppressWarnings("EnumOrdinal")
    private int keyOf() {
        int of = stored.pending().ordinal() << 3 | stored.lamp().ordinal();
        of = of << 4 | bit(stored.confirmed(), 3) | bit(stored.permanent(), 2);
        of |= bit(stored.completed(), 1) | bit(stored.failedSinceClear(), 0);
        of = of << 3 | bit(tally.counted(), 2) | bit(tally.ran(), 1) | bit(tally.failed(), 0);
        of = of << 6 | bit(series.row(), 5) | bit(series.failedLast(), 4) | bit(series.fell(), 3);
        of |= bit(series.recurred(), 2) | bit(series.confirmedNow(), 1) | bit(cycles.spoiled(), 0);
        of = of << 4 | series.passes() << 2 | cycles.now().ordinal();
        return of << 6 | cycles.previous().ordinal() << 4 | cycles.unseen().ordinal() << 2 | guesses;
    }

    private static int bit(boolean set, int at) {
        return set ? 1 << at : 0;
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof UnitState state && state.key == key;
    }

    @Override
    public int hashCode() {
        return key * 0x9E3779B1;
    }

    @Override
    public String toString() {
        return "%s, %s, %s, %s, guesses %d".formatted(stored, tally, series, cycles, guesses);
    }

    /** All of it in one number. */
    int key() {
        return key;
    }

    Stored stored() {
        return stored;
    }

    Tally tally() {
        return tally;
    }

    int guesses() {
        return guesses;
    }

    Trip cycle() {
        return cycles.now();
    }

    Trip previous() {
        return cycles.previous();
    }

    Trip unseen() {
        return cycles.unseen();
    }

    boolean fell() {
        return series.fell();
    }

    boolean recurred() {
        return series.recurred();
    }

    boolean confirmedNow() {
        return series.confirmedNow();
    }

    boolean isPending() {
        return stored.pending() != Pending.NONE;
    }

    /** Passed trips in a row, the present cycle included. */
    int passesSoFar() {
        return switch (cycle()) {
            case NOT_RUN -> series.passes();
            case PASSED -> cycles.spoiled() ? 0 : Math.min(MOST, series.passes() + 1);
            case FAILED -> 0;
        };
    }

    /** What the present cycle has come to so far as a trip. */
    Trip trip() {
        return cycles.spoiled() ? Trip.FAILED : cycle();
    }

    /** The last trip failed, the present cycle included. */
    boolean failedSoFar() {
        return cycle() == Trip.FAILED || (series.failedLast() && cycle() == Trip.NOT_RUN);
    }

    /** What the present cycle may have come to by its next reading. */
    List<UnitState> goingOn(Course course) {
        if (stored.pending() == Pending.FRESH_LINGERING) {
            return List.of();
        }
        UnitState started = started();
        List<UnitState> soFar = new ArrayList<>(List.of(started));
        if (cycle() != Trip.FAILED) {
            soFar.addAll(started.passing());
        } else {
            soFar.add(started.with(tally.ranAgain()));
        }
        List<UnitState> ways = moved(soFar, course);
        if (cycle() != Trip.FAILED) {
            List.copyOf(ways).forEach(way -> ways.addAll(moved(way.failing(course.trips()), course)));
        }
        return ways;
    }

    private static List<UnitState> moved(List<UnitState> states, Course course) {
        List<UnitState> ways = new ArrayList<>();
        states.forEach(
                state -> ways.addAll(course.permanent() ? state.withPermanentMoved(course.cleared()) : List.of(state)));
        return ways;
    }

    /** The engine was started: what only waited for that is gone. */
    private UnitState started() {
        UnitState state = stored.pending() == Pending.LINGERING ? with(stored.with(Pending.NONE)) : this;
        return state.stored.lamp() == Lamp.LINGERING ? state.with(state.stored.with(Lamp.OFF)) : state;
    }

    private List<UnitState> passing() {
        UnitState passed = new UnitState(
                stored.ran(),
                cycle() == Trip.NOT_RUN ? tally.afterRun() : tally.ranAgain(),
                series,
                cycles.with(Trip.PASSED),
                guesses);
        List<UnitState> ways = new ArrayList<>(List.of(passed));
        if (stored.pending() == Pending.ERASABLE) {
            ways.add(passed.with(passed.stored.with(Pending.NONE)));
        }
        if (stored.lamp() == Lamp.ON_AFTER_TWO) {
            List.copyOf(ways).forEach(way -> ways.add(way.with(way.stored.with(Lamp.OFF))));
        }
        return ways;
    }

    /**
     * The second failed trip in a row confirms at once, and so does the first of a one-trip fault; a unit may confirm sooner. It does
     * not know of the repair: a code pending from before it is the first failure.
     */
    private List<UnitState> failing(Trips trips) {
        boolean back = trips == Trips.ONE || series.failedLast();
        return trips == Trips.ONE || series.row()
                ? List.of(failed(true, back))
                : List.of(failed(true, back), failed(false, back));
    }

    private UnitState failed(boolean confirms, boolean back) {
        boolean anew = confirms && !(stored.confirmed() && stored.lamp().isLit());
        return new UnitState(
                stored.failed(confirms),
                tally.afterFailure(cycle() == Trip.PASSED),
                series.withFailure(back, anew),
                cycles.with(Trip.FAILED),
                guesses);
    }

    /** The end of a cycle that was recorded, after whatever the monitor still did behind the last reading. */
    List<UnitState> endOfRecorded(Course course) {
        List<UnitState> ways = new ArrayList<>();
        for (UnitState way : goingOn(course)) {
            boolean more = way.cycle() != cycle();
            ways.addAll(moved(way.ended(trip(), more ? way.cycle() : Trip.NOT_RUN, more ? 1 : 0), course));
        }
        return ways;
    }

    /** A whole driving cycle that nobody recorded. */
    List<UnitState> unrecordedCycle(Course course) {
        List<UnitState> ways = new ArrayList<>();
        for (UnitState way : goingOn(course)) {
            int guessed = way.cycle() == Trip.NOT_RUN ? 0 : 1;
            ways.addAll(moved(way.ended(previous(), unseen().worse(way.cycle()), guessed), course));
        }
        return ways;
    }

    private List<UnitState> ended(Trip nowPrevious, Trip nowUnseen, int guessed) {
        boolean passed = cycle() == Trip.PASSED;
        Stored left = passed ? stored.with(stored.lamp().afterPass()) : stored;
        boolean fresh = stored.pending() == Pending.FRESH;
        Pending lingering = fresh ? Pending.FRESH_LINGERING : Pending.LINGERING;
        List<Stored> ways = new ArrayList<>(List.of(passed && isPending() ? left.with(lingering) : left));
        if (passed && isPending() && !fresh) {
            ways.add(left.with(Pending.NONE));
        }
        if (left.lamp() == Lamp.LINGERING) {
            List.copyOf(ways).forEach(way -> ways.add(way.with(Lamp.OFF)));
        }
        boolean row = cycle() == Trip.FAILED || (series.row() && cycle() == Trip.NOT_RUN);
        Series after = new Series(passesSoFar(), failedSoFar(), row, fell(), recurred(), false);
        Cycles next = new Cycles(Trip.NOT_RUN, false, nowPrevious, nowUnseen);
        int more = Math.min(MANY, guesses + guessed);
        return ways.stream()
                .map(way -> new UnitState(way, tally, after, next, more))
                .toList();
    }

    /**
     * The permanent code as it may stand by now: stored in the cycle that failed and left the lamp lit; free to go once a trip passed since the clear, or where nothing
     * was cleared once the lamp went out.
     */
    private List<UnitState> withPermanentMoved(boolean cleared) {
        boolean mayGo = cleared ? passesSoFar() > 0 : !stored.lamp().isLit();
        if (stored.permanent() && mayGo) {
            return List.of(this, with(stored.withPermanent(false)));
        }
        return !stored.permanent() && stored.lamp().isLit() && cycle() == Trip.FAILED
                ? List.of(this, with(stored.withPermanent(true)))
                : List.of(this);
    }

    /** After a reading: what has failed before it may go. */
    UnitState read() {
        Pending now = stored.pending().read();
        return now == stored.pending() ? this : with(stored.with(now));
    }

    /** After a clear: all but the permanent code is gone, and the count begins anew. */
    UnitState cleared() {
        return new UnitState(
                stored.cleared(), tally.resultRead(), series.cleared(false), cycles.cleared(false), guesses);
    }

    /** A clear in the middle of a cycle that had failed before it: the trip stays a failed one, and the unit does not know. */
    UnitState clearedAfterFailure(boolean certain) {
        int guessed = certain ? guesses : Math.min(MANY, guesses + 1);
        return new UnitState(stored.cleared(), tally, series.cleared(true), cycles.cleared(true), guessed);
    }

    /** At a repair: what is stored stays, what was counted does not. */
    UnitState repaired() {
        boolean counting = stored.lamp().isLit() && stored.lamp() != Lamp.LINGERING;
        Stored left = counting ? stored.with(Lamp.ON) : stored;
        return new UnitState(left, tally, Series.atRepair(series.row()), Cycles.NONE, 0);
    }

    /** It is marked as failed since the clear, and no history that fits says when: somewhere nobody recorded. */
    UnitState failedSomewhere() {
        return new UnitState(
                stored.tested(true, true),
                tally,
                series.failedSomewhere(),
                cycles.failedUnseen(),
                Math.min(MANY, guesses + 1));
    }

    /**
     * The code is there and no history that fits says why: it failed, or an earlier denial was none. What this cycle has come to is for
     * the readings of the monitor to say.
     */
    UnitState unexplained() {
        return new UnitState(stored, tally, series.unexplained(), cycles, guesses);
    }

    /** The code was confirmed since the repair, whenever that was. */
    UnitState cameBack() {
        return new UnitState(stored, tally, series.cameBack(), cycles, guesses);
    }

    /** The passes so far cannot be relied on; failures stay. */
    UnitState doubted() {
        Stored left = stored.lamp().isLit() ? stored.with(Lamp.ON) : stored;
        return new UnitState(left, tally, series.withoutPasses(), cycles.withoutPass(), guesses);
    }

    UnitState with(Stored now) {
        return now.equals(stored) ? this : new UnitState(now, tally, series, cycles, guesses);
    }

    UnitState with(Tally now) {
        return now.equals(tally) ? this : new UnitState(stored, now, series, cycles, guesses);
    }

    /** It was confirmed fixed here: only a later failure counts against it. */
    UnitState standing() {
        return new UnitState(stored, tally, series.standing(), cycles, guesses);
    }

    /** So many of them turned out to be certain. */
    UnitState withFewerGuesses(int certain) {
        return certain == 0 ? this : new UnitState(stored, tally, series, cycles, guesses - certain);
    }
}
