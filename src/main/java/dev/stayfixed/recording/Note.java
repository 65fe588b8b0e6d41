package dev.stayfixed.recording;

import java.util.List;

/**
 * How often something was seen, and the first few places.
 *
 * @param total in the whole log
 * @param examples the first ones, at most {@link #MOST_EXAMPLES}
 */
public record Note(NoteKind kind, long total, List<Example> examples) {

    public static final int MOST_EXAMPLES = 5;

    /** One place; the column's header is empty where the row as a whole is meant. */
    public record Example(long line, String column, String found) {}

    public Note {
        examples = List.copyOf(examples);
    }
}
