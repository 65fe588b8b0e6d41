package dev.stayfixed.histories;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.function.LongPredicate;
import java.util.function.LongUnaryOperator;
import org.jspecify.annotations.Nullable;

/** A set of memories, each with one history that leads to it. Told apart by the memory alone, in the order in which they were found. */
final class Histories {

    private long[] memories = new long[64];
    private Trace[] traces = new Trace[64];
    private int[] places = new int[256];
    private int size;

    /** How a history came to where it is; without one before it, the event is the memory that it began with. */
    private record Trace(@Nullable Trace before, String event, long memory) {
        String words() {
            return before == null ? "at first: " + Memory.words(memory) : event;
        }
    }

    Histories() {
        Arrays.fill(places, -1);
    }

    int size() {
        return size;
    }

    boolean isEmpty() {
        return size == 0;
    }

    long memory(int place) {
        return memories[place];
    }

    void begin(long memory) {
        add(memory, new Trace(null, "", memory));
    }

    /** The history at that place of the other set goes on with this event; nothing where its memory is here already. */
    void add(long memory, Histories other, int place, String event) {
        Trace trace = other.traces[place];
        add(memory, event.isEmpty() ? trace : new Trace(trace, event, memory));
    }

    private void add(long memory, Trace trace) {
        int slot = slot(memory);
        if (places[slot] >= 0) {
            return;
        }
        if (size == memories.length) {
            grow();
            slot = slot(memory);
        }
        memories[size] = memory;
        traces[size] = trace;
        places[slot] = size++;
    }

    boolean holds(long memory) {
        return places[slot(memory)] >= 0;
    }

    private int slot(long memory) {
        int mask = places.length - 1;
        long mixed = memory * 0x9E3779B97F4A7C15L;
        int slot = (int) (mixed >>> 40) & mask;
        while (places[slot] >= 0 && memories[places[slot]] != memory) {
            slot = slot + 1 & mask;
        }
        return slot;
    }

    private void grow() {
        memories = Arrays.copyOf(memories, 2 * size);
        traces = Arrays.copyOf(traces, 2 * size);
        places = new int[8 * size];
        Arrays.fill(places, -1);
        for (int place = 0; place < size; place++) {
            places[slot(memories[place])] = place;
        }
    }

    Histories kept(LongPredicate fits) {
        Histories kept = new Histories();
        for (int place = 0; place < size; place++) {
            if (fits.test(memories[place])) {
                kept.add(memories[place], this, place, "");
            }
        }
        return kept;
    }

    Histories changed(String event, LongUnaryOperator change) {
        Histories changed = new Histories();
        for (int place = 0; place < size; place++) {
            changed.add(change.applyAsLong(memories[place]), this, place, event);
        }
        return changed;
    }

    boolean all(LongPredicate condition) {
        for (int place = 0; place < size; place++) {
            if (!condition.test(memories[place])) {
                return false;
            }
        }
        return true;
    }

    List<Long> memories() {
        return Arrays.stream(memories, 0, size).boxed().toList();
    }

    /** The shortest history of those whose memory is so, an event a line; empty where there is none. */
    List<String> shortest(LongPredicate condition) {
        List<String> shortest = List.of();
        for (int place = 0; place < size; place++) {
            if (condition.test(memories[place])) {
                List<String> events = events(place);
                shortest = shortest.isEmpty() || events.size() < shortest.size() ? events : shortest;
            }
        }
        return shortest;
    }

    private List<String> events(int place) {
        List<String> events = new ArrayList<>();
        events.add("now: " + Memory.words(memories[place]));
        for (Trace at = traces[place]; at != null; at = at.before()) {
            events.add(at.words());
        }
        Collections.reverse(events);
        return events;
    }
}
