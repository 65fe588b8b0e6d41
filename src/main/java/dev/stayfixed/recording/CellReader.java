package dev.stayfixed.recording;

import java.util.Locale;

/** Turns the cells of one column into values of its signal, and counts what it could not. */
final class CellReader {

    private final ColumnMapping mapping;
    private final int index;
    private final DecimalMark mark;
    private final SourceUnit.Conversion conversion;
    private final NoteLog notes;
    private long values;
    private long blanks;
    private long unreadable;
    private long implausible;
    private String firstImplausible = "";

    CellReader(ColumnMapping mapping, int index, DecimalMark mark, NoteLog notes) {
        this.mapping = mapping;
        this.index = index;
        this.mark = mark;
        this.conversion = mapping.unit().to(mapping.signal());
        this.notes = notes;
    }

    int index() {
        return index;
    }

    ColumnMapping mapping() {
        return mapping;
    }

    /** The value in the signal's own unit; NaN where the cell gives none. */
    double read(String raw, long line) {
        String cell = raw.strip();
        if (DecimalMark.isBlank(cell)) {
            blanks++;
            return Double.NaN;
        }
        double value = conversion.apply(number(cell, mapping.unit(), mark));
        if (Double.isNaN(value)) {
            unreadable++;
            notes.add(NoteKind.UNREADABLE_VALUE, line, mapping.header(), raw);
            return Double.NaN;
        }
        if (!mapping.signal().isPlausible(value)) {
            firstImplausible = implausible == 0 ? Shown.of(raw) + " in line " + line : firstImplausible;
            implausible++;
            notes.add(NoteKind.IMPLAUSIBLE_VALUE, line, mapping.header(), raw);
            return Double.NaN;
        }
        values++;
        return value;
    }

    static double number(String cell, SourceUnit unit, DecimalMark mark) {
        return switch (unit) {
            case BYTES -> fourBytes(cell);
            case SWITCH -> onOrOff(cell);
            default -> mark.parse(cell);
        };
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

    /** Why this column cannot be from a drive; empty where it can. */
    String suspicion() {
        if (implausible > 0) {
            return "%s: %d values outside %s to %s %s, the first %s"
                    .formatted(
                            mapping.signal().words(),
                            implausible,
                            number(mapping.signal().lowest()),
                            number(mapping.signal().highest()),
                            mapping.signal().unit(),
                            firstImplausible);
        }
        return unreadable > values
                ? "%s: %d of %d cells cannot be read as %s"
                        .formatted(
                                mapping.signal().words(),
                                unreadable,
                                unreadable + values,
                                mapping.unit().spelling())
                : "";
    }

    private static String number(double limit) {
        return String.valueOf((long) limit);
    }
}
