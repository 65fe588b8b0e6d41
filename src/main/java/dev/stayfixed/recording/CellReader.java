package dev.stayfixed.recording;

import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Unit;
import java.util.Locale;
import java.util.Optional;

/** Turns the cells of one column into values of its signal, and counts what it could not. */
final class CellReader {

    /** So many values may be out of range for each that is in range before the column is none of this signal. */
    private static final int ONE_STRAY_IN = 20;

    private static final int FEWEST_BESIDE_A_STRAY = 5;

    private final ColumnMapping mapping;
    private final DecimalMark mark;
    private final SourceUnit.Conversion conversion;
    private final NoteLog notes;
    private final int signal;
    private final boolean decimal;
    private int index;
    private long values;
    private long blanks;
    private long unreadable;
    private long implausible;
    private String firstImplausible = "";
    private long firstImplausibleLine;
    private final UsualShare usual;

    CellReader(ColumnMapping mapping, int index, DecimalMark mark, NoteLog notes) {
        this.mapping = mapping;
        this.signal = mapping.signal().index();
        this.decimal = mapping.unit() != SourceUnit.BYTES && mapping.unit() != SourceUnit.SWITCH;
        this.index = index;
        this.mark = mark;
        this.conversion = mapping.unit().to(mapping.signal());
        this.notes = notes;
        this.usual = new UsualShare(mapping);
    }

    int index() {
        return index;
    }

    /** The column stands elsewhere from here on. */
    void move(int to) {
        index = to;
    }

    /** The place of its signal among all of them. */
    int signal() {
        return signal;
    }

    ColumnMapping mapping() {
        return mapping;
    }

    /** The value in the signal's own unit; NaN where the cell gives none. */
    double read(LogRow row) {
        double number = decimal ? row.number(index, mark) : Double.NaN;
        if (Double.isNaN(number)) {
            String cell = row.cell(index).strip();
            if (DecimalMark.isBlank(cell) || Glued.isBlank(cell)) {
                blanks++;
                return Double.NaN;
            }
            number = number(cell, mapping.unit(), mark);
        }
        return value(number, row);
    }

    private double value(double number, LogRow row) {
        double value = conversion.apply(number);
        if (Double.isNaN(value)) {
            unreadable++;
            notes.add(NoteKind.UNREADABLE_VALUE, row.line(), mapping.header(), row.cell(index));
            return Double.NaN;
        }
        usual.add(number);
        if (!mapping.signal().isPlausible(value)) {
            if (implausible++ == 0) {
                firstImplausible = Shown.of(row.cell(index));
                firstImplausibleLine = row.line();
            }
            notes.add(NoteKind.IMPLAUSIBLE_VALUE, row.line(), mapping.header(), row.cell(index));
            return Double.NaN;
        }
        values++;
        return value;
    }

    static double number(String cell, SourceUnit unit, DecimalMark mark) {
        return switch (unit) {
            case BYTES -> fourBytes(cell);
            case SWITCH -> onOrOff(cell);
            default -> glued(cell, unit, mark);
        };
    }

    /** A number alone, or with its unit. */
    private static double glued(String cell, SourceUnit unit, DecimalMark mark) {
        double alone = mark.parse(cell);
        if (!Double.isNaN(alone) || cell.isEmpty() || Character.isDigit(cell.charAt(cell.length() - 1))) {
            return alone;
        }
        return unit.isSpelled(Glued.suffix(cell)) ? mark.parse(Glued.number(cell)) : Double.NaN;
    }

    /** Four data bytes in hexadecimal, with or without spaces. */
    private static double fourBytes(String cell) {
        String digits = cell.replace(" ", "");
        return digits.matches("[0-9A-Fa-f]{8}") ? Long.parseLong(digits, 16) : Double.NaN;
    }

    private static double onOrOff(String cell) {
        return switch (cell.toLowerCase(Locale.ROOT)) {
            case "on", "true", "yes", "1", "1.0" -> 1;
            case "off", "false", "no", "0", "0.0" -> 0;
            default -> Double.NaN;
        };
    }

    ColumnUse use() {
        return new ColumnUse(mapping, values, blanks, unreadable, implausible);
    }

    /** Why this column cannot be from a drive; empty where it can. A stray value now and then is dropped and said. */
    Optional<Reason> suspicion() {
        Signal of = mapping.signal();
        if (implausible > Math.max(1, values / ONE_STRAY_IN) || (implausible > 0 && values < FEWEST_BESIDE_A_STRAY)) {
            return Optional.of(Reason.of(
                    LogReason.VALUES_OUTSIDE,
                    of,
                    Part.count(implausible),
                    Part.count((long) of.lowest()),
                    Part.count((long) of.highest()),
                    Unit.of(of.unit()),
                    Part.verbatim(firstImplausible),
                    Part.count(firstImplausibleLine)));
        }
        return unreadable > values
                ? Optional.of(Reason.of(
                        LogReason.CELLS_UNREADABLE,
                        of,
                        Part.count(unreadable),
                        Part.count(unreadable + values),
                        mapping.unit().part()))
                : Optional.empty();
    }

    /** Why the unit of this column is in doubt; empty where it is not. */
    Optional<Reason> doubt() {
        return usual.contradiction()
                .map(unit -> Reason.of(
                        LogReason.UNIT_IN_DOUBT,
                        Shown.part(mapping.header()),
                        Part.verbatim(String.valueOf(usual.highest())),
                        unit.part(),
                        mapping.unit().part()));
    }
}
