package dev.stayfixed.drive.signal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** Drives written by hand: "12.5 ENGINE_SPEED=800 VEHICLE_SPEED=0" is a row at 12.5 s. */
public final class Rows {

    private Rows() {}

    public static List<SignalRow> of(String... lines) {
        return Arrays.stream(lines).map(Rows::row).toList();
    }

    /** One row a second from the first to the last second, both inclusive, all with the same values. */
    public static List<SignalRow> everySecond(int first, int last, String values) {
        List<SignalRow> rows = new ArrayList<>();
        for (int second = first; second <= last; second++) {
            rows.add(row(second + " " + values));
        }
        return rows;
    }

    @SafeVarargs
    @SuppressWarnings("varargs") // only read
    public static List<SignalRow> join(List<SignalRow>... parts) {
        return Arrays.stream(parts).flatMap(List::stream).toList();
    }

    private static SignalRow row(String line) {
        String[] words = line.strip().split("\\s+", -1);
        Map<Signal, Double> values = new EnumMap<>(Signal.class);
        for (String word : Arrays.asList(words).subList(1, words.length)) {
            int equals = word.indexOf('=');
            values.put(Signal.valueOf(word.substring(0, equals)), Double.valueOf(word.substring(equals + 1)));
        }
        return new SignalRow(Math.round(Double.parseDouble(words[0]) * 1000), values);
    }
}
