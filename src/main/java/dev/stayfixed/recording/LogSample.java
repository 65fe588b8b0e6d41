package dev.stayfixed.recording;

import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;

/**
 * The head of a log, cut into columns.
 *
 * @param columns in the order of the file
 */
record LogSample(Layout layout, DecimalMark mark, List<Column> columns) {

    /** A header and the cells under it that are not blank. */
    record Column(HeaderText header, List<String> cells) {

        /** The cells as numbers; NaN where a cell is none. */
        double[] numbers(SourceUnit unit, DecimalMark mark) {
            return cells.stream()
                    .mapToDouble(cell -> CellReader.number(cell, unit, mark))
                    .toArray();
        }
    }

    static LogSample of(LogSource source, LogLimits limits) throws IOException {
        String head = source.head();
        Layout layout = Layout.of(head);
        int end = source.isHeadWhole() ? head.length() : Math.max(head.lastIndexOf('\n'), head.lastIndexOf('\r')) + 1;
        Records records = new Records(new StringReader(head.substring(0, end)), layout.separator(), limits);
        List<Column> columns = new ArrayList<>();
        while (records.hasNext()) {
            CsvRecord row = records.next();
            if (row.getStartingLineNumber() < layout.headerLine()) {
                continue;
            }
            if (columns.isEmpty()) {
                row.getFields().forEach(cell -> columns.add(new Column(HeaderText.of(cell), new ArrayList<>())));
                continue;
            }
            for (int i = 0; i < Math.min(columns.size(), row.getFieldCount()); i++) {
                String cell = row.getField(i).strip();
                if (!DecimalMark.isBlank(cell)
                        && !cell.equals(columns.get(i).header().text())) {
                    columns.get(i).cells().add(cell);
                }
            }
        }
        return new LogSample(layout, decimalMark(columns), List.copyOf(columns));
    }

    private static DecimalMark decimalMark(List<Column> columns) {
        long commas = count(columns, "[-+]?\\d+,\\d+");
        return commas > count(columns, "[-+]?\\d+\\.\\d+") ? DecimalMark.COMMA : DecimalMark.POINT;
    }

    private static long count(List<Column> columns, String form) {
        return columns.stream()
                .flatMap(column -> column.cells().stream())
                .filter(cell -> cell.matches(form))
                .count();
    }
}
