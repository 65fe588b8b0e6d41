package dev.stayfixed.recording;

import java.util.List;

/**
 * The first lines of a log, cut into columns, whatever they mean.
 *
 * @param separator between its cells
 * @param columns in the order of the file
 */
public record LogHead(char separator, List<Column> columns) {

    private static final int MOST_SAMPLES = 3;
    private static final int LONGEST = 60;

    /**
     * A column as it stands there.
     *
     * @param header cleaned
     * @param samples the first cells that are not blank
     */
    public record Column(String header, List<String> samples) {

        public Column {
            samples = List.copyOf(samples);
        }
    }

    public LogHead {
        columns = List.copyOf(columns);
    }

    public List<String> headers() {
        return columns.stream().map(Column::header).toList();
    }

    static LogHead of(LogSample sample) {
        return new LogHead(
                sample.layout().separator(),
                sample.columns().stream()
                        .map(column -> new Column(
                                column.header().text(),
                                column.cells().stream()
                                        .limit(MOST_SAMPLES)
                                        .map(LogHead::shortened)
                                        .toList()))
                        .toList());
    }

    private static String shortened(String cell) {
        String plain = cell.replaceAll("\\p{Cntrl}", "·");
        return plain.length() > LONGEST ? plain.substring(0, LONGEST) + "…" : plain;
    }
}
