package dev.stayfixed.recording;

import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * The head of a log, cut into columns.
 *
 * @param unitsRow whether a row of units stands under the header; the columns' headers tell the units then
 * @param tall how rows of time, name and value are put side by side; empty where each signal has its column
 * @param inFile columns as they stand in the file
 * @param firstRow the first under the header, put side by side
 * @param columns in the order of the file; of a tall log, what they are once they stand side by side
 */
record LogSample(
        Layout layout,
        DecimalMark mark,
        boolean unitsRow,
        Optional<TallForm> tall,
        int inFile,
        Optional<LogRow> firstRow,
        List<Column> columns) {

    private static final double NEARLY_ALL = 0.9;

    /** A header and the cells under it that are not blank. */
    record Column(HeaderText header, List<String> cells) {

        /** The cells as numbers; NaN where a cell is none. */
        double[] numbers(SourceUnit unit, DecimalMark mark) {
            return cells.stream()
                    .mapToDouble(cell -> CellReader.number(cell, unit, mark))
                    .toArray();
        }

        /** Whether nearly every cell is like this, and there is one. */
        boolean isMostly(Predicate<String> form) {
            long like = cells.stream().filter(form).count();
            return like > 0 && like >= NEARLY_ALL * cells.size();
        }
    }

    static LogSample of(LogSource source, LogLimits limits) throws IOException {
        String head = source.head();
        Layout layout = Layout.of(head);
        int end = source.isHeadWhole() ? head.length() : Math.max(head.lastIndexOf('\n'), head.lastIndexOf('\r')) + 1;
        Records records = new Records(new StringReader(head.substring(0, end)), layout.separator(), limits);
        List<List<String>> rows = new ArrayList<>();
        while (records.hasNext()) {
            LogRow row = records.next();
            if (row.line() >= layout.headerLine()) {
                rows.add(row.cells());
            }
        }
        if (rows.isEmpty()) {
            throw LogFormatException.atLine(layout.headerLine(), LogFound.NO_HEADER, LogExpected.HEADER);
        }
        return of(layout, rows);
    }

    private static LogSample of(Layout layout, List<List<String>> rows) {
        boolean unitsRow = rows.size() > 1 && UnitsRow.isOne(rows.get(0), rows.get(1));
        List<String> headers = unitsRow ? UnitsRow.joined(rows.get(0), rows.get(1)) : UnitsRow.cleaned(rows.get(0));
        List<List<String>> below = rows.subList(unitsRow ? 2 : 1, rows.size());
        List<Column> inFile = columns(headers, below);
        Optional<TallForm> tall = TallForm.of(inFile, below);
        List<List<String>> wide =
                tall.map(form -> sideBySide(form, headers.size(), below)).orElse(below);
        List<Column> columns =
                tall.map(form -> columns(form.headers(headers), wide)).orElse(inFile);
        DecimalMark mark = DecimalMark.of(layout.separator(), columns);
        return new LogSample(
                layout,
                mark,
                unitsRow,
                tall,
                headers.size(),
                wide.stream().findFirst().map(cells -> LogRow.of(0, cells)),
                columns.stream().map(column -> withUnitOfCells(column, mark)).toList());
    }

    private static List<List<String>> sideBySide(TallForm form, int columns, List<List<String>> rows) {
        List<List<String>> wide = new ArrayList<>();
        SideBySide joining = new SideBySide(form, columns, (row, last) -> wide.add(row.cells()));
        rows.forEach(cells -> joining.read(LogRow.of(0, cells), false));
        joining.end();
        return wide;
    }

    private static List<Column> columns(List<String> headers, List<List<String>> rows) {
        List<Column> columns = headers.stream()
                .map(header -> new Column(HeaderText.of(header), new ArrayList<>()))
                .toList();
        for (List<String> row : rows) {
            for (int i = 0; i < Math.min(columns.size(), row.size()); i++) {
                String cell = row.get(i).strip();
                if (!DecimalMark.isBlank(cell)
                        && !cell.equals(columns.get(i).header().text())) {
                    columns.get(i).cells().add(cell);
                }
            }
        }
        return columns;
    }

    /** Where each value carries its unit, the column's header tells it. */
    private static Column withUnitOfCells(Column column, DecimalMark mark) {
        String unit = column.cells().stream().map(Glued::unit).findFirst().orElse("");
        boolean glued = !unit.isEmpty()
                && column.isMostly(
                        cell -> Glued.unit(cell).equals(unit) && !Double.isNaN(mark.parse(Glued.number(cell))));
        boolean known = column.header().unit().filter(u -> u.isSpelled(unit)).isPresent();
        return glued && !known
                ? new Column(HeaderText.of(HeaderText.withUnit(column.header().text(), unit)), column.cells())
                : column;
    }

    List<String> headers() {
        return columns.stream().map(column -> column.header().text()).toList();
    }

    /** Where a header stands; -1 where there is none such. A unit that was written elsewhere may be left out. */
    static int indexOf(List<String> headers, String wanted) {
        int exact = headers.indexOf(wanted);
        if (exact >= 0) {
            return exact;
        }
        String longer = wanted + " [";
        for (int i = 0; i < headers.size(); i++) {
            if (headers.get(i).startsWith(longer) || isWithoutUnit(headers.get(i), wanted)) {
                return i;
            }
        }
        return -1;
    }

    private static boolean isWithoutUnit(String header, String wanted) {
        return !header.isEmpty() && wanted.startsWith(header) && wanted.startsWith(" [", header.length());
    }
}
