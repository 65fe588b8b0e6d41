package dev.stayfixed.recording;

/** A cell that carries its unit: "88 °C", "2,500rpm". */
final class Glued {

    private static final int LONGEST = 60;

    private Glued() {}

    /** Up to the last digit. */
    static String number(String cell) {
        return cell.substring(0, end(cell));
    }

    /** What stands behind the number. */
    static String suffix(String cell) {
        return cell.substring(end(cell)).strip();
    }

    /** The unit behind a number: one that we know, or letters behind a space; empty where there is none. */
    static String unit(String cell) {
        int end = end(cell);
        if (end == 0 || end == cell.length() || cell.length() > LONGEST) {
            return "";
        }
        String suffix = HeaderText.clean(cell.substring(end));
        boolean word = cell.charAt(end) == ' ' && suffix.chars().allMatch(c -> Character.isLetter(c) || c == '/');
        return word || SourceUnit.spelled(suffix).isPresent() ? suffix : "";
    }

    /** No value, with a unit: "-- rpm". */
    static boolean isBlank(String cell) {
        String number = number(cell);
        return !number.isEmpty() && number.length() < 5 && number.chars().allMatch(c -> c == '-');
    }

    static boolean isNumber(String cell) {
        String number = number(cell);
        return !Double.isNaN(DecimalMark.POINT.parse(number)) || !Double.isNaN(DecimalMark.COMMA.parse(number));
    }

    private static int end(String cell) {
        int end = Math.min(cell.length(), LONGEST);
        int at = 0;
        while (at < end && "+-.,0123456789".indexOf(cell.charAt(at)) >= 0) {
            at++;
        }
        return at;
    }
}
