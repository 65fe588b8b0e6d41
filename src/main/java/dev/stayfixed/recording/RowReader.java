package dev.stayfixed.recording;

import de.siegmar.fastcsv.reader.CsvRecord;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.drive.signal.SignalRow;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Consumer;
import java.util.stream.Stream;

/** Takes the rows of one log after its header. */
final class RowReader {

    private final List<String> headers;
    private final LogMapping mapping;
    private final NoteLog notes;
    private final Consumer<SignalRow> sink;
    private final int timeIndex;
    private final Optional<Integer> dateIndex;
    private final List<CellReader> cells = new ArrayList<>();
    private final List<String> missing = new ArrayList<>();
    private final LogClock clock;
    private final long headerLine;
    private long rows;
    private String firstTime = "";
    private String lastTime = "";

    RowReader(CsvRecord header, LogMapping mapping, NoteLog notes, Consumer<SignalRow> sink) {
        this.headers = header.getFields().stream().map(HeaderText::clean).toList();
        this.headerLine = header.getStartingLineNumber();
        this.mapping = mapping;
        this.notes = notes;
        this.sink = sink;
        this.clock = new LogClock(mapping.timeFormat(), notes);
        this.timeIndex = headers.indexOf(mapping.timeColumn());
        this.dateIndex = mapping.dateColumn().map(headers::indexOf);
        for (ColumnMapping column : mapping.columns()) {
            int index = headers.indexOf(column.header());
            if (index < 0) {
                missing.add(column.header());
            } else {
                cells.add(new CellReader(column, index, mapping.decimalMark(), notes));
            }
        }
        boolean lacksDate = dateIndex.filter(index -> index < 0).isPresent();
        if (timeIndex < 0 || lacksDate || cells.isEmpty()) {
            String lacking = timeIndex < 0
                    ? mapping.timeColumn()
                    : mapping.dateColumn()
                            .filter(date -> lacksDate)
                            .orElse(mapping.columns().get(0).header());
            throw LogFormatException.atLine(
                    headerLine,
                    "columns " + Shown.of(String.join(", ", headers)),
                    "the columns of the saved mapping, among them " + Shown.of(lacking) + "; propose a new mapping");
        }
    }

    void read(CsvRecord row, boolean last) {
        long line = row.getStartingLineNumber();
        if (isUsable(row, line, last)) {
            String time = time(row);
            OptionalLong millis = mapping.timeFormat().millis(time, mapping.decimalMark());
            if (millis.isPresent()) {
                take(row, line, clock.advance(millis.getAsLong(), line, time), time);
            } else {
                boolean blank = DecimalMark.isBlank(time);
                notes.add(blank ? NoteKind.BLANK_TIME : NoteKind.UNREADABLE_TIME, line, mapping.timeColumn(), time);
            }
        }
    }

    private String time(CsvRecord row) {
        String time = cell(row, timeIndex);
        return dateIndex
                .filter(index -> !DecimalMark.isBlank(time))
                .map(index -> cell(row, index) + " " + time)
                .orElse(time);
    }

    private boolean isUsable(CsvRecord row, long line, boolean last) {
        Optional<String> broken = row.getFields().stream()
                .filter(cell -> cell.indexOf('\n') >= 0 || cell.indexOf('\r') >= 0)
                .findFirst();
        if (broken.isPresent()) {
            refuseUnlessLast(broken.get(), line, last);
            return false;
        }
        int surplus = row.getFieldCount() - headers.size();
        boolean realSurplus =
                surplus > 0 && row.getFields().stream().skip(headers.size()).anyMatch(cell -> !cell.isBlank());
        if (realSurplus) {
            notes.add(NoteKind.LONG_ROW, line, "", String.join(",", row.getFields()));
            return false;
        }
        if (surplus < 0) {
            notes.add(last ? NoteKind.CUT_OFF_ROW : NoteKind.SHORT_ROW, line, "", String.join(",", row.getFields()));
            return !last;
        }
        if (cell(row, timeIndex).equals(mapping.timeColumn())) {
            notes.add(NoteKind.REPEATED_HEADER, line, "", mapping.timeColumn());
            return false;
        }
        return true;
    }

    /** A quote that opens in one line and does not close there swallows rows: in the last row it is a cut, elsewhere damage. */
    private void refuseUnlessLast(String cell, long line, boolean last) {
        if (last && cell.strip().lines().count() <= 1) {
            notes.add(NoteKind.BROKEN_QUOTE, line, "", cell);
            return;
        }
        throw LogFormatException.atLine(
                line, "a quoted cell that runs over several lines", "every opened quote closed in the same line");
    }

    private void take(CsvRecord row, long line, long millis, String time) {
        Map<Signal, Double> values = new EnumMap<>(Signal.class);
        for (CellReader cell : cells) {
            double value = cell.read(cell.index() < row.getFieldCount() ? row.getField(cell.index()) : "", line);
            if (!Double.isNaN(value)) {
                values.put(cell.mapping().signal(), value);
            }
        }
        firstTime = rows == 0 ? time : firstTime;
        lastTime = time;
        rows++;
        sink.accept(new SignalRow(millis, values));
    }

    private static String cell(CsvRecord row, int index) {
        return index < row.getFieldCount() ? HeaderText.clean(row.getField(index)) : "";
    }

    LogReport report() {
        if (rows == 0) {
            throw LogFormatException.atLine(
                    headerLine + 1,
                    "no row with a readable time in column " + Shown.of(mapping.timeColumn()),
                    mapping.timeFormat().words());
        }
        Optional<Instant> start =
                mapping.timeFormat().isInstant() ? Optional.of(Instant.ofEpochMilli(clock.first())) : Optional.empty();
        return new LogReport(
                rows,
                start,
                firstTime,
                lastTime,
                cells.stream().map(CellReader::use).toList(),
                unused(),
                missing,
                notes.notes(),
                implausible());
    }

    private List<String> unused() {
        List<String> used = Stream.concat(
                        Stream.concat(Stream.of(mapping.timeColumn()), mapping.dateColumn().stream()),
                        mapping.columns().stream().map(ColumnMapping::header))
                .toList();
        return headers.stream().filter(header -> !used.contains(header)).toList();
    }

    private List<String> implausible() {
        List<String> reasons = new ArrayList<>(clock.wildness(rows));
        cells.stream().map(CellReader::suspicion).filter(s -> !s.isEmpty()).forEach(reasons::add);
        if (notes.droppedRows() > rows) {
            reasons.add("more rows had to be dropped (" + notes.droppedRows() + ") than could be read (" + rows + ")");
        }
        return reasons;
    }
}
