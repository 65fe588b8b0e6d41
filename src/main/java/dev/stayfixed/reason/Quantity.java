package dev.stayfixed.reason;

import java.math.BigDecimal;
import java.util.OptionalDouble;

/**
 * A number with its unit.
 *
 * @param decimals that are shown at most
 * @param beside a limit that it is read beside: it is shown with as many decimals as it takes to differ from it
 */
public record Quantity(double value, Unit unit, int decimals, OptionalDouble beside) implements Part {

    /** To the nearest whole number. */
    public static Quantity whole(double value, Unit unit) {
        return new Quantity(value, unit, 0, OptionalDouble.empty());
    }

    /** To one decimal. */
    public static Quantity of(double value, Unit unit) {
        return new Quantity(value, unit, 1, OptionalDouble.empty());
    }

    /** To two decimals. */
    public static Quantity fine(double value, Unit unit) {
        return new Quantity(value, unit, 2, OptionalDouble.empty());
    }

    /** With every decimal that it has. */
    public static Quantity exactly(double value, Unit unit) {
        int decimals = BigDecimal.valueOf(value).stripTrailingZeros().scale();
        return new Quantity(value, unit, Math.max(0, decimals), OptionalDouble.empty());
    }

    public Quantity beside(double limit) {
        return new Quantity(value, unit, decimals, OptionalDouble.of(limit));
    }

    @Override
    public <T> T match(Cases<T> cases) {
        return cases.quantity(this);
    }
}
