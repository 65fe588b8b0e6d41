package dev.stayfixed.verification;

import java.util.Arrays;
import java.util.Collection;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.function.ToIntFunction;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;

/** A set of states, in an order of its own, so that two of them are compared at once. Never empty. */
final class States implements Iterable<UnitState> {

    private final UnitState[] states;
    private final int hash;

    /** @param states sorted by their keys, each once */
    private States(UnitState[] states) {
        if (states.length == 0) {
            throw new IllegalArgumentException("histories: found none that fits, expected at least one");
        }
        this.states = states;
        int sum = 1;
        for (UnitState state : states) {
            sum = sum * 31 + state.key();
        }
        this.hash = sum * 0x9E3779B1;
    }

    static States of(Collection<UnitState> states) {
        return sorted(states.toArray(UnitState[]::new));
    }

    private static States sorted(UnitState[] states) {
        Arrays.sort(states, UnitState.BY_KEY);
        int size = 0;
        for (UnitState state : states) {
            if (size == 0 || state.key() != states[size - 1].key()) {
                states[size++] = state;
            }
        }
        return new States(size == states.length ? states : Arrays.copyOf(states, size));
    }

    int size() {
        return states.length;
    }

    UnitState any() {
        return states[0];
    }

    boolean all(Predicate<UnitState> fact) {
        for (UnitState state : states) {
            if (!fact.test(state)) {
                return false;
            }
        }
        return true;
    }

    int least(ToIntFunction<UnitState> number) {
        int least = number.applyAsInt(states[0]);
        for (UnitState state : states) {
            least = Math.min(least, number.applyAsInt(state));
        }
        return least;
    }

    /** These, where all fit. */
    Optional<States> fitting(Predicate<UnitState> reading) {
        UnitState[] left = new UnitState[states.length];
        int size = 0;
        for (UnitState state : states) {
            if (reading.test(state)) {
                left[size++] = state;
            }
        }
        if (size == states.length) {
            return Optional.of(this);
        }
        return size == 0 ? Optional.empty() : Optional.of(new States(Arrays.copyOf(left, size)));
    }

    /** These, where nothing changes. */
    States map(UnaryOperator<UnitState> change) {
        UnitState[] changed = new UnitState[states.length];
        boolean same = true;
        for (int i = 0; i < states.length; i++) {
            changed[i] = change.apply(states[i]);
            same = same && changed[i].equals(states[i]);
        }
        return same ? this : sorted(changed);
    }

    @Override
    public Iterator<UnitState> iterator() {
        return List.of(states).iterator();
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof States more && hash == more.hash && Arrays.equals(states, more.states);
    }

    @Override
    public int hashCode() {
        return hash;
    }

    @Override
    public String toString() {
        return Arrays.toString(states);
    }
}
