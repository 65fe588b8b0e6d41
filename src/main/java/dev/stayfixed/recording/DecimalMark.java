package dev.stayfixed.recording;

import java.util.Locale;
import java.util.Set;

/** What stands between the whole and the broken part of a log's numbers. */
public enum DecimalMark {
    POINT('.'),
    COMMA(',');

    private static final Set<String> BLANK =
            Set.of("", "-", "--", "---", "nan", "null", "none", "nodata", "no data", "n/a", "na", "#n/a", "unknown");

    private final char mark;

    DecimalMark(char mark) {
        this.mark = mark;
    }

    /** Whether a cell says that there is no value. */
    static boolean isBlank(String cell) {
        return cell.isEmpty() || (cell.length() <= 7 && BLANK.contains(cell.toLowerCase(Locale.ROOT)));
    }

    /** The number, or NaN where the text is not a finite decimal number with this mark. */
    double parse(String text) {
        int length = text.length();
        if (length == 0 || length > 40) {
            return Double.NaN;
        }
        boolean digit = false;
        for (int i = 0; i < length; i++) {
            char c = text.charAt(i);
            digit |= c >= '0' && c <= '9';
            if (!(c >= '0' && c <= '9') && c != mark && c != '-' && c != '+' && c != 'e' && c != 'E') {
                return Double.NaN;
            }
        }
        try {
            double value = digit ? Double.parseDouble(mark == '.' ? text : text.replace(mark, '.')) : Double.NaN;
            return Double.isFinite(value) ? value : Double.NaN;
        } catch (NumberFormatException notANumber) {
            return Double.NaN;
        }
    }
}
