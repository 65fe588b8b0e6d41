package dev.stayfixed.recording;

import java.util.ArrayList;
import java.util.List;

/** A row of units right under the header. */
final class UnitsRow {

    private static final int LONGEST_UNIT = 20;

    private UnitsRow() {}

    /** At least one cell is a unit, none is a number, and all are short. */
    static boolean isOne(List<String> header, List<String> below) {
        boolean unit = false;
        for (int i = 0; i < below.size(); i++) {
            String cell = bare(below.get(i));
            if (cell.length() > LONGEST_UNIT
                    || cell.equals(HeaderText.clean(header.get(Math.min(i, header.size() - 1))))) {
                return false;
            }
            boolean spelled = SourceUnit.spelled(cell).isPresent();
            if (!spelled && cell.chars().anyMatch(c -> c >= '0' && c <= '9') && !isLettersFirst(cell)) {
                return false;
            }
            unit |= spelled && !cell.equalsIgnoreCase("on");
        }
        return unit && header.size() > 1;
    }

    private static boolean isLettersFirst(String cell) {
        return Character.isLetter(cell.charAt(0)) || cell.charAt(0) == '°';
    }

    /** "[km/h]" and "(km/h)" say the same as "km/h". */
    private static String bare(String cell) {
        String text = HeaderText.clean(cell);
        boolean bracketed = text.length() > 2
                && ((text.startsWith("[") && text.endsWith("]")) || (text.startsWith("(") && text.endsWith(")")));
        return bracketed ? text.substring(1, text.length() - 1).strip() : text;
    }

    static List<String> cleaned(List<String> header) {
        return header.stream().map(HeaderText::clean).toList();
    }

    /** Each header with its unit in brackets, unless it says it already. */
    static List<String> joined(List<String> header, List<String> units) {
        List<String> joined = new ArrayList<>();
        for (int i = 0; i < header.size(); i++) {
            String name = HeaderText.clean(header.get(i));
            String unit = i < units.size() ? bare(units.get(i)) : "";
            joined.add(isSilent(name, unit) ? name : HeaderText.withUnit(name, unit));
        }
        return List.copyOf(joined);
    }

    /** Whether a unit says nothing that the header does not say. */
    static boolean isSilent(String header, String unit) {
        return DecimalMark.isBlank(unit)
                || HeaderText.of(header).unit().filter(u -> u.isSpelled(unit)).isPresent();
    }
}
