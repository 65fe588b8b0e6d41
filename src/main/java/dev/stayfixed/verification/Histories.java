package dev.stayfixed.verification;

import dev.stayfixed.obd.Scan;
import dev.stayfixed.verification.UnitState.Course;
import dev.stayfixed.verification.UnitState.Lamp;
import dev.stayfixed.verification.UnitState.Pending;
import dev.stayfixed.verification.UnitState.Stored;
import dev.stayfixed.verification.UnitState.Tally;
import dev.stayfixed.verification.UnitState.Trip;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * Every history of the control unit that fits what was read so far, each by the state in which it ends. Never empty. A reading narrows
 * the set; a stretch that nobody recorded widens it. What all of them share is certain.
 *
 * @param cleared codes were cleared since the repair, which decides when a permanent code may go
 * @param asked what the scans of this vehicle ask for; the rest is left out of account
 */
record Histories(States states, Trips trips, boolean cleared, Asked asked) {

    /** Some scan reads permanent codes, in-use counters, service $06 results, readiness or status bytes, status bytes. */
    record Asked(boolean permanent, boolean numerators, boolean results, boolean tested, boolean statuses) {

        static final Asked NOTHING = new Asked(false, false, false, false, false);

        static Asked in(Scan scan, RepairedFault fault) {
            return new Asked(
                    scan.asksForPermanentCodes(),
                    scan.inUse().isPresent(),
                    !scan.testResults().isEmpty(),
                    scan.sinceClear(fault.group()).isPresent() || scan.hasStatuses(),
                    scan.hasStatuses());
        }

        Asked and(Asked more) {
            return new Asked(
                    permanent || more.permanent,
                    numerators || more.numerators,
                    results || more.results,
                    tested || more.tested,
                    statuses || more.statuses);
        }

        private UnitState only(UnitState state) {
            Tally tally = state.tally();
            Tally kept = new Tally(numerators && tally.counted(), results && tally.ran(), results && tally.failed());
            Stored stored = state.stored()
                    .tested(
                            tested && state.stored().completed(),
                            statuses && state.stored().failedSinceClear());
            return state.with(kept).with(stored);
        }
    }

    /** How a state may move. */
    private enum Move {
        ON,
        END_OF_RECORDED,
        UNRECORDED;

        private List<UnitState> of(UnitState state, Course course) {
            return switch (this) {
                case ON -> state.goingOn(course);
                case END_OF_RECORDED -> state.endOfRecorded(course);
                case UNRECORDED -> state.unrecordedCycle(course);
            };
        }
    }

    /** Where a set of states leads by a move: the same ones come again with every drive. */
    private record Moved(States from, Move move, Unrecorded between, Trips trips, boolean cleared, Asked asked) {

        @Override
        public int hashCode() {
            return from.hashCode() * 31 + move.hashCode();
        }

        @Override
        public boolean equals(@Nullable Object other) {
            return other instanceof Moved moved
                    && move == moved.move
                    && trips == moved.trips
                    && cleared == moved.cleared
                    && from.equals(moved.from)
                    && between.equals(moved.between)
                    && asked.equals(moved.asked);
        }
    }

    /** Kept, and thrown away before it fills the heap: {@link #MOST_KEPT} states in all. */
    private static final Map<Moved, States> WAYS = new ConcurrentHashMap<>();

    private static final AtomicInteger KEPT = new AtomicInteger();
    private static final int MOST_KEPT = 200_000;

    /** Nothing is known of what the unit has stored. */
    static Histories unknown(Trips trips, Asked asked) {
        Set<UnitState> states = new LinkedHashSet<>();
        for (Pending pending : List.of(Pending.NONE, Pending.ERASABLE)) {
            for (boolean confirmed : new boolean[] {false, true}) {
                for (Lamp lamp : confirmed ? List.of(Lamp.OFF, Lamp.ON) : List.of(Lamp.OFF)) {
                    for (boolean permanent : asked.permanent() ? new boolean[] {false, true} : new boolean[] {false}) {
                        addTested(states, pending, confirmed, lamp, permanent, asked);
                    }
                }
            }
        }
        return new Histories(States.of(states), trips, false, asked);
    }

    private static void addTested(
            Set<UnitState> states, Pending pending, boolean confirmed, Lamp lamp, boolean permanent, Asked asked) {
        for (boolean completed : new boolean[] {false, true}) {
            for (boolean failed : new boolean[] {false, true}) {
                Stored stored = new Stored(pending, confirmed, lamp, permanent, completed, failed);
                states.add(asked.only(UnitState.repairedWith(stored)));
            }
        }
    }

    /** The present cycle runs on to its next reading. */
    Histories goingOn() {
        return moved(Move.ON, Unrecorded.ANY);
    }

    Histories endOfRecorded() {
        return moved(Move.END_OF_RECORDED, Unrecorded.ANY);
    }

    Histories throughUnrecorded(Unrecorded between) {
        return moved(Move.UNRECORDED, between);
    }

    private Histories moved(Move move, Unrecorded between) {
        Moved step = new Moved(states, move, between, trips, cleared, asked);
        States known = WAYS.get(step);
        if (known != null) {
            return with(known);
        }
        States to = move == Move.UNRECORDED ? unrecorded(between) : each(move);
        if (KEPT.addAndGet(states.size() + to.size()) > MOST_KEPT) {
            WAYS.clear();
            KEPT.set(0);
        }
        WAYS.put(step, to);
        return with(to);
    }

    private States each(Move move) {
        Set<UnitState> next = new LinkedHashSet<>();
        states.forEach(state -> next.addAll(ways(state, move)));
        if (next.isEmpty()) {
            states.forEach(state -> next.addAll(ways(state.read(), move)));
        }
        return States.of(next);
    }

    private States unrecorded(Unrecorded between) {
        Set<UnitState> all = new LinkedHashSet<>();
        if (between.least() > 0) {
            states.forEach(state -> all.addAll(ways(state, Move.UNRECORDED)));
            if (all.isEmpty()) {
                states.forEach(state -> all.addAll(ways(state.read(), Move.UNRECORDED)));
            }
        } else {
            states.forEach(all::add);
        }
        Deque<UnitState> rim = new ArrayDeque<>(all);
        for (int cycle = Math.min(1, between.least()); !rim.isEmpty() && between.allows(cycle + 1); cycle++) {
            Deque<UnitState> next = new ArrayDeque<>();
            for (UnitState state : rim) {
                for (UnitState way : ways(state, Move.UNRECORDED)) {
                    if (all.add(way)) {
                        next.add(way);
                    }
                }
            }
            rim = next;
        }
        return States.of(all);
    }

    private List<UnitState> ways(UnitState state, Move move) {
        return move.of(state, new Course(trips, cleared, asked.permanent())).stream()
                .map(asked::only)
                .toList();
    }

    /** Both may be what happened. */
    Histories or(Histories other) {
        Set<UnitState> all = new LinkedHashSet<>();
        states.forEach(all::add);
        other.states.forEach(all::add);
        return new Histories(States.of(all), trips, cleared || other.cleared, asked);
    }

    /** Those that fit a reading; empty where none does. */
    Optional<Histories> fitting(Predicate<UnitState> reading) {
        return states.fitting(reading).map(this::with);
    }

    Histories map(UnaryOperator<UnitState> change) {
        return with(states.map(change));
    }

    Histories afterClear() {
        return new Histories(states.map(UnitState::cleared), trips, true, asked);
    }

    /** A clear in the present cycle: a failure that lay before it in the same cycle remains one. */
    Histories clearedInCycle(boolean certain) {
        return new Histories(
                states.map(state -> state.trip() == Trip.FAILED ? state.clearedAfterFailure(certain) : state.cleared()),
                trips,
                true,
                asked);
    }

    /** @param withClear the codes were cleared at this repair */
    Histories afterRepair(boolean withClear) {
        return new Histories(states.map(UnitState::repaired), trips, withClear, asked);
    }

    boolean all(Predicate<UnitState> fact) {
        return states.all(fact);
    }

    boolean any(Predicate<UnitState> fact) {
        return !states.all(fact.negate());
    }

    /** Passed trips in a row that every history has. */
    int certainPasses() {
        return states.least(UnitState::passesSoFar);
    }

    /** Those with the fewest trips that nobody recorded: what is told until something says otherwise. */
    Histories plainest() {
        int fewest = fewestGuesses();
        return fitting(state -> state.guesses() == fewest).orElseThrow();
    }

    int fewestGuesses() {
        return states.least(UnitState::guesses);
    }

    /** What this cycle came to, where all agree. */
    Optional<Trip> agreed(Function<UnitState, Trip> of) {
        Trip one = of.apply(states.any());
        return states.all(state -> of.apply(state) == one) ? Optional.of(one) : Optional.empty();
    }

    private Histories with(States next) {
        return next.equals(states) ? this : new Histories(next, trips, cleared, asked);
    }
}
