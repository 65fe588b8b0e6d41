package dev.stayfixed.recording;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** Counts what is noted and keeps the first few places of each kind, however long the log. */
final class NoteLog {

    private final Map<NoteKind, Long> totals = new EnumMap<>(NoteKind.class);
    private final Map<NoteKind, List<Note.Example>> examples = new EnumMap<>(NoteKind.class);

    void add(NoteKind kind, long line, String column, String found) {
        totals.merge(kind, 1L, Long::sum);
        List<Note.Example> kept = examples.computeIfAbsent(kind, k -> new ArrayList<>());
        if (kept.size() < Note.MOST_EXAMPLES) {
            kept.add(new Note.Example(line, column, Shown.of(found)));
        }
    }

    long droppedRows() {
        return totals.entrySet().stream()
                .filter(entry -> entry.getKey().dropsRow())
                .mapToLong(Map.Entry::getValue)
                .sum();
    }

    List<Note> notes() {
        return totals.entrySet().stream()
                .map(entry ->
                        new Note(entry.getKey(), entry.getValue(), examples.getOrDefault(entry.getKey(), List.of())))
                .toList();
    }
}
