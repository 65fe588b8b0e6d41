package dev.stayfixed.reports;

import java.math.BigDecimal;

/** A number as people write it: 6, 6.1, 0.00005; never 6.0 and never 5.0E-5. */
final class PlainNumber {

    private PlainNumber() {}

    static String of(double number) {
        return BigDecimal.valueOf(number).stripTrailingZeros().toPlainString();
    }
}
