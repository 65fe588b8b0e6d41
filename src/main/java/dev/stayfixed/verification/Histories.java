package dev.stayfixed.verification;

import dev.stayfixed.verification.UnitState.Course;
import dev.stayfixed.verification.UnitState.Lamp;
import dev.stayfixed.verification.UnitState.Pending;
import dev.stayfixed.verification.UnitState.Stored;
import dev.stayfixed.verification.UnitState.Tally;
import dev.stayfixed.verification.UnitState.Trip;
import java.util.ArrayDeque;
import java.util.Collection;
import java.util.Deque;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
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
record Histories(Set<UnitState> states, Trips trips, boolean cleared, Asked asked) {

    /** Some scan reads permanent codes, in-use counters, service $06 results, readiness or status bytes, status bytes. */
    record Asked(boolean permanent, boolean numerators, boolean results, boolean tested, boolean statuses) {

        private UnitState only(UnitState state) {
            Tally tally = state.tally();
            Tally kept = new Tally(numerators && tally.counted(), results && tally.ran(), results && tally.failed());
            Stored stored = state.stored()
                    .tested(
                            tested && state.stored().completed(),
                            statuses && state.stored().failedSinceClear());
            UnitState of = kept.equals(tally) ? state : state.with(kept);
            return stored.equals(state.stored()) ? of : of.with(stored);
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

    private record Moved(UnitState from, Move move, Trips trips, boolean cleared, Asked asked) {

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
                    && asked.equals(moved.asked);
        }
    }

    /** Where each move of a state leads, kept because the same ones come again and again; thrown away before it fills the heap. */
    private static final Map<Moved, List<UnitState>> WAYS = new ConcurrentHashMap<>();

    private static final int MOST_KEPT = 50_000;

    Histories {
        if (states.isEmpty()) {
            throw new IllegalArgumentException("histories: found none that fits, expected at least one");
        }
    }

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
        return new Histories(states, trips, false, asked);
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
        return each(state -> ways(state, Move.ON));
    }

    Histories endOfRecorded() {
        return each(state -> ways(state, Move.END_OF_RECORDED));
    }

    Histories throughUnrecorded(Unrecorded between) {
        Set<UnitState> all = new LinkedHashSet<>(states);
        if (between.least() > 0) {
            all.clear();
            states.forEach(state -> all.addAll(ways(state, Move.UNRECORDED)));
            if (all.isEmpty()) {
                states.forEach(state -> all.addAll(ways(state.read(), Move.UNRECORDED)));
            }
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
        return with(all);
    }

    private List<UnitState> ways(UnitState state, Move move) {
        if (WAYS.size() > MOST_KEPT) {
            WAYS.clear();
        }
        return WAYS.computeIfAbsent(new Moved(state, move, trips, cleared, asked), moved -> {
            Set<UnitState> all = new LinkedHashSet<>();
            move.of(state, new Course(trips, cleared, asked.permanent())).forEach(way -> all.add(asked.only(way)));
            return List.copyOf(all);
        });
    }

    /** Both may be what happened. */
    Histories or(Histories other) {
        Set<UnitState> all = new LinkedHashSet<>(states);
        all.addAll(other.states);
        return new Histories(all, trips, cleared || other.cleared, asked);
    }

    /** Those that fit a reading; empty where none does. */
    Optional<Histories> fitting(Predicate<UnitState> reading) {
        Set<UnitState> left = new LinkedHashSet<>();
        states.stream().filter(reading).forEach(left::add);
        return left.isEmpty() ? Optional.empty() : Optional.of(with(left));
    }

    Histories map(UnaryOperator<UnitState> change) {
        return each(state -> List.of(change.apply(state)));
    }

    Histories afterClear() {
        return new Histories(map(UnitState::cleared).states, trips, true, asked);
    }

    /** A clear in the present cycle: a failure that lay before it in the same cycle remains one. */
    Histories clearedInCycle(boolean certain) {
        Set<UnitState> next = new LinkedHashSet<>();
        for (UnitState state : states) {
            next.add(state.trip() == Trip.FAILED ? state.clearedAfterFailure(certain) : state.cleared());
        }
        return new Histories(next, trips, true, asked);
    }

    /** @param withClear the codes were cleared at this repair */
    Histories afterRepair(boolean withClear) {
        return new Histories(map(UnitState::repaired).states, trips, withClear, asked);
    }

    boolean all(Predicate<UnitState> fact) {
        return states.stream().allMatch(fact);
    }

    boolean any(Predicate<UnitState> fact) {
        return states.stream().anyMatch(fact);
    }

    /** Passed trips in a row that every history has. */
    int certainPasses() {
        return states.stream().mapToInt(UnitState::passesSoFar).min().orElse(0);
    }

    /** Those with the fewest trips that nobody recorded: what is told until something says otherwise. */
    Histories plainest() {
        int fewest = fewestGuesses();
        return fitting(state -> state.guesses() == fewest).orElseThrow();
    }

    int fewestGuesses() {
        return states.stream().mapToInt(UnitState::guesses).min().orElseThrow();
    }

    /** What this cycle came to, where all agree. */
    Optional<Trip> agreed(Function<UnitState, Trip> of) {
        List<Trip> seen = states.stream().map(of).distinct().toList();
        return seen.size() == 1 ? Optional.of(seen.get(0)) : Optional.empty();
    }

    private Histories each(Function<UnitState, Collection<UnitState>> move) {
        Set<UnitState> next = new LinkedHashSet<>();
        states.forEach(state -> next.addAll(move.apply(state)));
        if (next.isEmpty()) {
            states.forEach(state -> next.addAll(move.apply(state.read())));
        }
        return with(next);
    }

    private Histories with(Set<UnitState> next) {
        return new Histories(next, trips, cleared, asked);
    }
}
