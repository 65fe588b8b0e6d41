package dev.stayfixed.recording;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;

/** Counts what is noted and keeps the first few places of each kind, however long the log. */
final class NoteLog {

    private final long[] totals = new long[NoteKind.values().length];
    private final Map<NoteKind, List<Note.Example>> examples = new EnumMap<>(NoteKind.class);

    void add(NoteKind kind, long line, String column, String found) {
        add(kind, line, column, () -> found);
    }

    /** @param found asked for only where this place is kept */
    void add(NoteKind kind, long line, String column, Supplier<String> found) {
        if (totals[kind.index()]++ < Note.MOST_EXAMPLES) {
            examples.computeIfAbsent(kind, k -> new ArrayList<>())
                    .add(new Note.Example(line, column, Shown.of(found.get())));
        }
    }

    long droppedRows() {
        return Arrays.stream(NoteKind.values())
                .filter(NoteKind::dropsRow)
                .mapToLong(kind -> totals[kind.index()])
                .sum();
    }

    List<Note> notes() {
        return examples.entrySet().stream()
                .map(entry -> new Note(entry.getKey(), totals[entry.getKey().index()], entry.getValue()))
                .toList();
    }
}
