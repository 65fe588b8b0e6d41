package dev.stayfixed.learning;

import java.util.Arrays;
import java.util.stream.Collectors;

/**
 * Lines of RFC 4180 that a spreadsheet cannot take for formulas: text that begins like one gets an apostrophe before it. Which
 * beginnings are dangerous is advice of the OWASP page "CSV Injection".
 */
public final class SafeCsv {

    private SafeCsv() {}

    /** One line with its end; numbers stay numbers, null is an empty field. */
    public static String line(@org.jspecify.annotations.Nullable Object... fields) {
        return Arrays.stream(fields).map(SafeCsv::field).collect(Collectors.joining(",", "", "\r\n"));
    }

    private static String field(@org.jspecify.annotations.Nullable Object value) {
        if (value == null) {
            return "";
        }
        String text = value.toString();
        if (value instanceof Number) {
            return text;
        }
        String harmless = text.matches("(?s)\\s*[=+\\-@\\t\\r\\n\\uFF1D\\uFF0B\\uFF0D\\uFF20].*") ? "'" + text : text;
        return '"' + harmless.replace("\"", "\"\"") + '"';
    }
}
