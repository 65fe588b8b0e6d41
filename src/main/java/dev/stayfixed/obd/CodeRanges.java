package dev.stayfixed.obd;

import java.util.Arrays;
import java.util.List;

/**
 * Codes by ranges, both ends inclusive. The numbers ending in A to F came later and went to other parts than their decimal neighbours
 * (P0418 and P0419 are relays of the secondary air, P041A is a temperature sensor of the EGR), so a range between two numbers that
 * end in a decimal digit skips them; one that names such a number takes every number between its ends.
 */
record CodeRanges(List<Range> ranges) {

    private static final int POWERTRAIN_LENGTH = 4;

    private record Range(int first, int last) {

        boolean contains(int number) {
            return number >= first && number <= last && (endsInDecimal(number) || !decimalOnly());
        }

        private boolean decimalOnly() {
            return endsInDecimal(first) && endsInDecimal(last);
        }

        private static boolean endsInDecimal(int number) {
            return (number & 0xF) <= 9;
        }
    }

    /** Reads "0420-0422 013A-013F C0035": numbers of powertrain codes, or whole codes. */
    static CodeRanges of(String text) {
        return new CodeRanges(
                Arrays.stream(text.split(" ", -1)).map(CodeRanges::range).toList());
    }

    private static Range range(String text) {
        String[] ends = text.split("-", -1);
        return new Range(number(ends[0]), number(ends[ends.length - 1]));
    }

    private static int number(String text) {
        return TroubleCode.parse(text.length() == POWERTRAIN_LENGTH ? "P" + text : text)
                .number();
    }

    boolean contain(TroubleCode code) {
        return ranges.stream().anyMatch(range -> range.contains(code.number()));
    }
}
