package dev.stayfixed.recording;

import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.drive.signal.SignalRow;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Takes the rows of one log after its header. */
final class RowReader implements RowSink {

    private static final int SIGNALS = Signal.values().length;

    private final LogMapping mapping;
    private final NoteLog notes;
    private final StrayValues values;
    private final List<CellReader> cells = new ArrayList<>();
    private final List<String> missing = new ArrayList<>();
    private final LogClock clock;
    private final long headerLine;
    private List<String> headers;
    private int timeIndex;
    private int dateIndex;
    private int fewestCells;
    private boolean afterHeader;
    private @Nullable Placed astray;
    private long rows;
    private String firstTime = "";
    private @Nullable Placed last;

    /** A row with its time, and the columns that gave it. */
    private record Placed(LogRow row, long millis, int timeIndex, int dateIndex) {
        String time() {
            return RowReader.time(row, timeIndex, dateIndex);
        }
    }

    RowReader(LogSample sample, LogMapping mapping, NoteLog notes, Consumer<SignalRow> sink) {
        this.headers = sample.headers();
        this.headerLine = sample.layout().headerLine();
        this.mapping = mapping;
        this.notes = notes;
        this.values = new StrayValues(notes, sink);
        this.clock = new LogClock(mapping.timeFormat(), notes);
        this.fewestCells = headers.size();
        this.timeIndex = LogSample.indexOf(headers, mapping.timeColumn());
        this.dateIndex = dateIndex(headers);
        for (ColumnMapping column : mapping.columns()) {
            int index = LogSample.indexOf(headers, column.header());
            if (index < 0) {
                missing.add(column.header());
            } else {
                cells.add(new CellReader(column, index, mapping.decimalMark(), notes));
            }
        }
        boolean lacksDate = mapping.dateColumn().isPresent() && dateIndex < 0;
        if (timeIndex < 0 || lacksDate || cells.isEmpty()) {
            String lacking = timeIndex < 0
                    ? mapping.timeColumn()
                    : mapping.dateColumn()
                            .filter(date -> lacksDate)
                            .orElse(mapping.columns().get(0).header());
            throw LogFormatException.atLine(
                    headerLine,
                    Reason.of(LogFound.COLUMNS, Shown.part(String.join(", ", headers))),
                    Reason.of(LogExpected.MAPPED_COLUMNS, Shown.part(lacking)));
        }
    }

    private int dateIndex(List<String> among) {
        return mapping.dateColumn().map(date -> LogSample.indexOf(among, date)).orElse(-1);
    }

    /** Goes on with the next log of the same drive; false where it lacks a column or begins before the end of this one. */
    boolean goOn(LogSample sample, Optional<LogRow> first) {
        boolean follows = first.map(row -> {
                    int time = LogSample.indexOf(sample.headers(), mapping.timeColumn());
                    int date = dateIndex(sample.headers());
                    return mapping.timeFormat().millis(time(row, time, date), mapping.decimalMark());
                })
                .filter(OptionalLong::isPresent)
                .filter(millis -> clock.goesOn(millis.getAsLong()))
                .isPresent();
        return follows && relocate(sample.headers());
    }

    /** Follows the columns to where they stand now; false where one is gone. */
    private boolean relocate(List<String> now) {
        int time = LogSample.indexOf(now, mapping.timeColumn());
        int date = dateIndex(now);
        int[] places = cells.stream()
                .mapToInt(cell -> LogSample.indexOf(now, cell.mapping().header()))
                .toArray();
        boolean all = time >= 0 && (date >= 0 || mapping.dateColumn().isEmpty());
        for (int place : places) {
            all &= place >= 0;
        }
        if (all) {
            headers = now;
            timeIndex = time;
            dateIndex = date;
            for (int i = 0; i < places.length; i++) {
                cells.get(i).move(places[i]);
            }
        }
        return all;
    }

    @Override
    public void read(LogRow row, boolean last) {
        if (!isUsable(row, last)) {
            return;
        }
        long plain =
                dateIndex < 0 ? row.millis(timeIndex, mapping.timeFormat(), mapping.decimalMark()) : PlainCell.NO_TIME;
        if (plain != PlainCell.NO_TIME) {
            place(new Placed(row, plain, timeIndex, dateIndex));
            return;
        }
        String time = time(row, timeIndex, dateIndex);
        OptionalLong millis = mapping.timeFormat().millis(time, mapping.decimalMark());
        if (millis.isPresent()) {
            place(new Placed(row, millis.getAsLong(), timeIndex, dateIndex));
        } else if (!isHeaderAgain(row)) {
            boolean blank = DecimalMark.isBlank(time);
            notes.add(blank ? NoteKind.BLANK_TIME : NoteKind.UNREADABLE_TIME, row.line(), mapping.timeColumn(), time);
        }
    }

    private static String time(LogRow row, int timeIndex, int dateIndex) {
        String time = HeaderText.clean(row.cell(timeIndex));
        return dateIndex < 0 || DecimalMark.isBlank(time) ? time : HeaderText.clean(row.cell(dateIndex)) + " " + time;
    }

    /** A row whose time is far from the one before is believed when the next one goes on from it. */
    private void place(Placed next) {
        Placed before = astray;
        astray = null;
        if (before != null && clock.isAstray(next.millis())) {
            take(before);
        } else if (before != null) {
            notes.add(NoteKind.STRAY_TIME, before.row().line(), mapping.timeColumn(), before.time());
        }
        if (rows > 0 && clock.isAstray(next.millis())) {
            astray = next;
        } else {
            take(next);
        }
    }

    private boolean isUsable(LogRow row, boolean last) {
        if (row.isBroken()) {
            row.cells().stream()
                    .filter(cell -> cell.indexOf('\n') >= 0 || cell.indexOf('\r') >= 0)
                    .findFirst()
                    .ifPresent(cell -> refuseUnlessLast(cell, row.line(), last));
            return false;
        }
        int surplus = row.size() - headers.size();
        boolean realSurplus =
                surplus > 0 && row.cells().stream().skip(headers.size()).anyMatch(cell -> !cell.isBlank());
        if (realSurplus) {
            if (!isHeaderAgain(row)) {
                notes.add(NoteKind.LONG_ROW, row.line(), "", row::joined);
            }
            return false;
        }
        if (surplus < 0) {
            // where rows leave out what is blank at their end, the last one does so too
            boolean cutOff = last && row.size() < fewestCells;
            fewestCells = Math.min(fewestCells, row.size());
            if (!cutOff && !beginsLikeATime(row) && isHeaderAgain(row)) {
                return false;
            }
            notes.add(cutOff ? NoteKind.CUT_OFF_ROW : NoteKind.SHORT_ROW, row.line(), "", row::joined);
            return !cutOff;
        }
        return true;
    }

    private boolean beginsLikeATime(LogRow row) {
        String time = row.cell(timeIndex).strip();
        return !time.isEmpty() && Character.isDigit(time.charAt(0));
    }

    /** The header in the middle of a log: it was written in pieces. A row of units may follow it. */
    private boolean isHeaderAgain(LogRow row) {
        boolean below = afterHeader;
        afterHeader = false;
        List<String> texts = UnitsRow.cleaned(row.cells());
        if (below && UnitsRow.isOne(headers, row.cells())) {
            List<String> joined =
                    UnitsRow.joined(headers.stream().map(RowReader::withoutUnit).toList(), texts);
            if (!relocate(joined)) {
                throw LogFormatException.atLine(
                        row.line(),
                        Reason.of(LogFound.UNITS_IN_THE_MIDDLE, Shown.part(String.join(", ", texts))),
                        LogExpected.UNITS_AT_TOP);
            }
            notes.add(NoteKind.UNITS_ROW, row.line(), "", String.join(",", texts));
            return true;
        }
        int time = LogSample.indexOf(texts, mapping.timeColumn());
        boolean header = time >= 0
                && cells.stream()
                        .anyMatch(
                                cell -> LogSample.indexOf(texts, cell.mapping().header()) >= 0);
        if (!header) {
            return false;
        }
        boolean moved = time != timeIndex
                || cells.stream()
                        .anyMatch(
                                cell -> LogSample.indexOf(texts, cell.mapping().header()) != cell.index());
        if (moved && !relocate(texts)) {
            throw LogFormatException.atLine(
                    row.line(),
                    Reason.of(LogFound.HEADER_IN_THE_MIDDLE, Shown.part(String.join(", ", texts))),
                    LogExpected.COLUMNS_AT_TOP);
        }
        notes.add(
                moved ? NoteKind.MOVED_COLUMNS : NoteKind.REPEATED_HEADER,
                row.line(),
                "",
                moved ? String.join(",", texts) : mapping.timeColumn());
        afterHeader = true;
        return true;
    }

    private static String withoutUnit(String header) {
        return header.endsWith("]") ? header.substring(0, Math.max(0, header.lastIndexOf(" ["))) : header;
    }

    /** A quote that opens in one line and does not close there swallows rows: in the last row it is a cut, elsewhere damage. */
    private void refuseUnlessLast(String cell, long line, boolean last) {
        if (last && cell.strip().lines().count() <= 1) {
            notes.add(NoteKind.BROKEN_QUOTE, line, "", cell);
            return;
        }
        throw LogFormatException.atLine(line, LogFound.CELL_OVER_LINES, LogExpected.CLOSED_QUOTE);
    }

    private void take(Placed placed) {
        LogRow row = placed.row();
        long millis = clock.advance(placed.millis(), row.line(), placed::time);
        double[] taken = new double[SIGNALS];
        Arrays.fill(taken, Double.NaN);
        for (CellReader cell : cells) {
            taken[cell.signal()] = cell.read(row);
        }
        firstTime = rows == 0 ? placed.time() : firstTime;
        last = placed;
        rows++;
        values.accept(millis, row.line(), taken);
    }

    /** To be called once, after the last row. */
    LogReport report() {
        if (astray != null) {
            take(astray);
            astray = null;
        }
        values.end();
        if (rows == 0) {
            throw LogFormatException.atLine(
                    headerLine + 1,
                    Reason.of(LogFound.NO_READABLE_TIME, Shown.part(mapping.timeColumn())),
                    mapping.timeFormat());
        }
        Optional<Instant> start =
                mapping.timeFormat().isInstant() ? Optional.of(Instant.ofEpochMilli(clock.first())) : Optional.empty();
        return new LogReport(
                rows,
                start,
                firstTime,
                last == null ? "" : last.time(),
                cells.stream().map(CellReader::use).toList(),
                unused(),
                missing,
                notes.notes(),
                implausible(),
                cells.stream().flatMap(cell -> cell.doubt().stream()).toList());
    }

    private List<String> unused() {
        List<Integer> used = Stream.concat(
                        Stream.of(timeIndex, dateIndex), cells.stream().map(CellReader::index))
                .toList();
        List<String> unused = new ArrayList<>();
        for (int i = 0; i < headers.size(); i++) {
            if (!used.contains(i)) {
                unused.add(headers.get(i));
            }
        }
        return List.copyOf(unused);
    }

    private List<Reason> implausible() {
        List<Reason> reasons = new ArrayList<>(clock.wildness(rows));
        cells.forEach(cell -> cell.suspicion().ifPresent(reasons::add));
        if (notes.droppedRows() > rows) {
            reasons.add(Reason.of(LogReason.MORE_DROPPED, Part.count(notes.droppedRows()), Part.count(rows)));
        }
        return reasons;
    }
}
