package dev.stayfixed.recording;

import dev.stayfixed.reason.Kind;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** What stands between the whole and the broken part of a log's numbers; the other mark may part thousands. */
public enum DecimalMark implements Kind {
    POINT('.', ','),
    COMMA(',', '.');

    private static final Set<String> BLANK =
            Set.of("", "-", "--", "---", "nan", "null", "none", "nodata", "no data", "n/a", "na", "#n/a", "unknown");
    private static final int LONGEST = 40;

    private final char mark;
    private final char thousands;

    DecimalMark(char mark, char thousands) {
        this.mark = mark;
        this.thousands = thousands;
    }

    char character() {
        return mark;
    }

    /** Whether a cell says that there is no value. */
    static boolean isBlank(String cell) {
        return cell.isEmpty()
                || (cell.length() <= 7
                        && !(cell.charAt(0) >= '0' && cell.charAt(0) <= '9')
                        && BLANK.contains(cell.toLowerCase(Locale.ROOT)));
    }

    /**
     * The mark of these columns. "2,500" may be both; between semicolons it is read as two and a half, between commas as thousands.
     */
    static DecimalMark of(char separator, List<LogSample.Column> columns) {
        return seen(separator, columns).orElse(POINT);
    }

    /** The same; empty where no number tells. */
    static Optional<DecimalMark> seen(char separator, List<LogSample.Column> columns) {
        long commas = 0;
        long points = 0;
        long doubtful = 0;
        for (LogSample.Column column : columns) {
            for (String cell : column.cells()) {
                if (cell.indexOf('.') < 0 && cell.indexOf(',') < 0) {
                    continue;
                }
                String number = Glued.number(cell);
                boolean comma = isBroken(number, ',');
                boolean point = isBroken(number, '.');
                boolean either = isGrouped(number, ',', '.');
                commas += comma && !either ? 1 : 0;
                doubtful += comma && either ? 1 : 0;
                points += point && !isGrouped(number, '.', ',') ? 1 : 0;
            }
        }
        if (commas == 0 && points == 0) {
            return doubtful == 0 ? Optional.empty() : Optional.of(separator == ',' ? POINT : COMMA);
        }
        return Optional.of(commas > points ? COMMA : POINT);
    }

    /** Digits, this mark once or last, digits: "12,5" and "1.234,5". */
    private static boolean isBroken(String number, char mark) {
        int at = number.lastIndexOf(mark);
        int start = number.isEmpty() || "+-".indexOf(number.charAt(0)) < 0 ? 0 : 1;
        if (number.length() > LONGEST || at <= start || at == number.length() - 1) {
            return false;
        }
        char other = mark == '.' ? ',' : '.';
        for (int i = start; i < number.length(); i++) {
            char c = number.charAt(i);
            boolean digit = c >= '0' && c <= '9';
            if (!digit && i != at && (c != other || i > at)) {
                return false;
            }
        }
        return true;
    }

    /** Whether thousands may be parted by this character: "2,500", "12,500.5", never "0,500". */
    private static boolean isGrouped(String number, char thousands, char mark) {
        int start = number.isEmpty() || "+-".indexOf(number.charAt(0)) < 0 ? 0 : 1;
        int whole = number.indexOf(mark) < 0 ? number.length() : number.indexOf(mark);
        int first = number.indexOf(thousands);
        if (first < start + 1 || first > start + 3 || number.charAt(start) == '0' || (whole - first) % 4 != 0) {
            return false;
        }
        for (int i = start; i < whole; i++) {
            char c = number.charAt(i);
            boolean parts = i >= first && (i - first) % 4 == 0;
            if (parts ? c != thousands : c < '0' || c > '9') {
                return false;
            }
        }
        return number.indexOf(thousands, whole) < 0;
    }

    /** The number, or NaN where the text is not a finite decimal number with this mark. */
    double parse(String text) {
        int length = text.length();
        if (length == 0 || length > LONGEST) {
            return Double.NaN;
        }
        boolean digit = false;
        boolean grouped = false;
        for (int i = 0; i < length; i++) {
            char c = text.charAt(i);
            digit |= c >= '0' && c <= '9';
            grouped |= c == thousands;
            if (!(c >= '0' && c <= '9')
                    && c != mark
                    && c != thousands
                    && c != '-'
                    && c != '+'
                    && c != 'e'
                    && c != 'E') {
                return Double.NaN;
            }
        }
        if (!digit || (grouped && !isGrouped(text, thousands, mark))) {
            return Double.NaN;
        }
        String whole = grouped ? text.replace(String.valueOf(thousands), "") : text;
        try {
            double value = Double.parseDouble(mark == '.' ? whole : whole.replace(mark, '.'));
            return Double.isFinite(value) ? value : Double.NaN;
        } catch (NumberFormatException notANumber) {
            return Double.NaN;
        }
    }
}
