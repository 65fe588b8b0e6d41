package dev.stayfixed.obd;

import dev.stayfixed.reason.Reason;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** What became of each line of a paste. The notes are made when somebody asks: most scans are judged and never read line by line. */
final class Explanations {

    private record Note(Scan.Line.Outcome outcome, Supplier<Reason> explanation) {}

    private final List<String> texts;
    private final @Nullable Note[] notes;
    private @Nullable List<Scan.Line> lines;

    Explanations(List<String> texts) {
        this.texts = texts;
        this.notes = new Note[texts.size()];
    }

    /** The lines as they were pasted. */
    List<String> texts() {
        return texts;
    }

    /**
     * Notes what became of a line, in place of what was noted before.
     *
     * @param line one-based
     * @param explanation has to give the same whenever it is asked
     */
    void note(int line, Scan.Line.Outcome outcome, Supplier<Reason> explanation) {
        notes[line - 1] = new Note(outcome, explanation);
    }

    /** Every line of the paste, in its order; to be asked for when all are noted. Two threads may make them twice, and alike. */
    List<Scan.Line> lines() {
        List<Scan.Line> made = lines;
        if (made == null) {
            made = made();
            lines = made;
        }
        return made;
    }

    private List<Scan.Line> made() {
        List<Scan.Line> made = new ArrayList<>(notes.length);
        for (int i = 0; i < notes.length; i++) {
            Note note = notes[i];
            if (note == null) {
                throw new IllegalStateException("line " + (i + 1) + ": nobody noted what became of it");
            }
            made.add(new Scan.Line(
                    i + 1, texts.get(i), note.outcome(), note.explanation().get()));
        }
        return List.copyOf(made);
    }
}
