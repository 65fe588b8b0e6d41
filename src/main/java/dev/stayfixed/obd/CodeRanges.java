package dev.stayfixed.obd;

import java.util.Arrays;
import java.util.List;

/**
 * Powertrain codes by ranges, both ends inclusive. Only codes whose last digit is decimal belong to a range: SAE J2012 gave the later
 * numbers ending in A to F (P040A, P041A, P042A) to other parts than their decimal neighbours.
 */
record CodeRanges(List<Range> ranges) {

    private record Range(int first, int last) {}

    /** Reads "0420-0422 0425": hexadecimal code numbers, as in P0420. */
    static CodeRanges of(String text) {
        return new CodeRanges(
                Arrays.stream(text.split(" ", -1)).map(CodeRanges::range).toList());
    }

    private static Range range(String text) {
        String[] ends = text.split("-", -1);
        return new Range(Integer.parseInt(ends[0], 16), Integer.parseInt(ends[ends.length - 1], 16));
    }

    boolean contain(TroubleCode code) {
        int number = code.number();
        return (number & 0xF) <= 9
                && ranges.stream().anyMatch(range -> number >= range.first() && number <= range.last());
    }
}
