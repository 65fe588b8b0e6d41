package dev.stayfixed.recording;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.IntPredicate;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/**
 * A log with one value a row: its time, the name of the signal, the value, perhaps the unit. Its rows are put side by side: each name
 * is a column, and rows of one time are one row.
 *
 * @param name index of the column with the names
 * @param value index of the column with the values
 * @param unit index of the column with the units, where there is one
 * @param names the columns that the names become, with their units, by name and unit as they stand in the file
 */
record TallForm(int name, int value, OptionalInt unit, Map<String, String> names) {

    private static final Pattern VALUE =
            Pattern.compile("values?|wert|messwert|valor|valeur|valore|waarde|wartosc|reading|result");
    private static final Pattern UNIT = Pattern.compile("units?|einheit|unidad|unite|unita|eenheid|unidade|jednostka");
    private static final int FEWEST_ROWS = 4;
    private static final int MOST_NAMES = 200;
    private static final int MOST_COLUMNS = 8;

    /** The form of these rows; empty where each signal has a column of its own. */
    static Optional<TallForm> of(List<LogSample.Column> columns, List<List<String>> rows) {
        if (columns.size() < 3 || columns.size() > MOST_COLUMNS) {
            return Optional.empty();
        }
        return IntStream.range(0, columns.size())
                .filter(i -> isNames(columns.get(i).cells()))
                .boxed()
                .findFirst()
                .flatMap(name -> of(columns, rows, name));
    }

    private static Optional<TallForm> of(List<LogSample.Column> columns, List<List<String>> rows, int name) {
        OptionalInt unit = first(
                columns,
                i -> i != name
                        && (UNIT.matcher(columns.get(i).header().words()).matches()
                                || columns.get(i)
                                        .isMostly(
                                                cell -> SourceUnit.spelled(cell).isPresent())));
        IntPredicate free = i -> i != name && i != unit.orElse(-1);
        OptionalInt named = first(
                columns,
                i -> free.test(i)
                        && VALUE.matcher(columns.get(i).header().words()).matches());
        OptionalInt value = named.isPresent()
                ? named
                : first(
                        columns,
                        i -> free.test(i)
                                && !TimeProposer.isNamed(columns.get(i))
                                && columns.get(i).isMostly(Glued::isNumber));
        if (value.isEmpty()) {
            return Optional.empty();
        }
        TallForm form = new TallForm(name, value.getAsInt(), unit, Map.of());
        Map<String, String> names = new LinkedHashMap<>();
        for (List<String> cells : rows) {
            LogRow row = LogRow.of(0, cells);
            if (!row.cell(name).isBlank() && names.size() < MOST_NAMES) {
                names.putIfAbsent(form.key(row), form.header(row));
            }
        }
        return Optional.of(new TallForm(name, value.getAsInt(), unit, Collections.unmodifiableMap(names)));
    }

    private static OptionalInt first(List<LogSample.Column> columns, IntPredicate like) {
        return IntStream.range(0, columns.size()).filter(like).findFirst();
    }

    /** Few texts again and again, at least two of them names of signals. */
    private static boolean isNames(List<String> cells) {
        Set<String> distinct = new LinkedHashSet<>(cells);
        boolean few = distinct.size() >= 2 && distinct.size() <= MOST_NAMES && distinct.size() < cells.size();
        if (cells.size() < FEWEST_ROWS || !few) {
            return false;
        }
        long named = distinct.stream().filter(TallForm::isName).count();
        return named >= 2 && named >= 0.3 * distinct.size();
    }

    private static boolean isName(String cell) {
        return VssNames.named(cell).isPresent()
                || PidNames.named(cell).isPresent()
                || (Glued.unit(cell).isEmpty()
                        && CommonWords.named(HeaderText.of(cell)).isPresent());
    }

    /** The headers side by side: of the columns that are neither name nor value nor unit, then one for each name. */
    List<String> headers(List<String> headers) {
        List<String> all = new ArrayList<>(beside(LogRow.of(0, headers), headers.size()));
        all.addAll(names.values());
        return List.copyOf(all);
    }

    /** The cells that stand beside name, value and unit: the time above all. */
    List<String> beside(LogRow row, int columns) {
        return IntStream.range(0, columns)
                .filter(i -> i != name && i != value && unit.orElse(-1) != i)
                .mapToObj(i -> row.cell(i).strip())
                .toList();
    }

    /** By what the column of a row's value is found among {@link #names}. */
    String key(LogRow row) {
        return row.cell(name).strip() + "\n" + row.cell(unit.orElse(-1)).strip();
    }

    private String header(LogRow row) {
        String text = HeaderText.clean(row.cell(name));
        String written = HeaderText.clean(row.cell(unit.orElse(-1)));
        return UnitsRow.isSilent(text, written) ? text : HeaderText.withUnit(text, written);
    }
}
