package dev.stayfixed.recording;

import java.util.List;

/**
 * One row of a log as it stands there.
 *
 * @param line from 1
 */
record LogRow(long line, List<String> cells) {

    String cell(int index) {
        return index >= 0 && index < cells.size() ? cells.get(index) : "";
    }
}
