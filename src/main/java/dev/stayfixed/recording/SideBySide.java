package dev.stayfixed.recording;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Puts the rows of a tall log side by side: rows of one time are one row, until a name comes again. */
final class SideBySide implements RowSink {

    private final TallForm form;
    private final int columns;
    private final RowSink sink;
    private final Map<String, Integer> places = new HashMap<>();
    private final int width;
    private List<String> beside = List.of();
    private List<String> values = List.of();
    private long line;
    private boolean open;

    SideBySide(TallForm form, int columns, RowSink sink) {
        this.form = form;
        this.columns = columns;
        this.sink = sink;
        form.names().keySet().forEach(key -> places.put(key, places.size()));
        this.width = places.size();
    }

    @Override
    public void read(LogRow row, boolean last) {
        List<String> next = form.beside(row, columns);
        Integer place = places.get(form.key(row));
        boolean same = open
                && next.equals(beside)
                && (place == null || values.get(place).isEmpty());
        if (!same) {
            end();
            open = true;
            line = row.line();
            beside = next;
            values = new ArrayList<>(Collections.nCopies(width, ""));
        }
        if (place != null) {
            values.set(place, row.cell(form.value()).strip());
        }
        if (last) {
            end();
        }
    }

    /** Hands on the row that is still open. */
    void end() {
        if (open) {
            open = false;
            List<String> cells = new ArrayList<>(beside);
            cells.addAll(values);
            sink.read(LogRow.of(line, cells), false);
        }
    }
}
