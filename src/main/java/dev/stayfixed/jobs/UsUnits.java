package dev.stayfixed.jobs;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.function.DoubleUnaryOperator;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/**
 * Rewrites the quantities of our own sentences, which are metric: "coolant rose 22 K and reached 71 °C" becomes "coolant rose 40 °F
 * and reached 160 °F". Whole numbers stay whole. What already names both units, "25 mph (40 km/h)", stays as it is.
 */
final class UsUnits {

    private static final String NUMBER = "-?\\d+(?:\\.\\d+)?";
    private static final Pattern QUANTITY = Pattern.compile(
            "(?<![\\w.(-])(%1$s)( to %1$s)? (km/h|km|°C|K|kPa|m)(?![\\w/²³])(?! \\()".formatted(NUMBER));

    /** @param step the finest that is still said of a whole number */
    private record To(String unit, double step, DoubleUnaryOperator convert) {}

    private UsUnits() {}

    static String words(String sentence) {
        return QUANTITY.matcher(sentence).replaceAll(UsUnits::quantity);
    }

    private static String quantity(MatchResult found) {
        To to = to(found.group(3));
        String second =
                found.group(2) == null ? "" : " to " + number(to, found.group(2).substring(" to ".length()));
        return number(to, found.group(1)) + second + " " + to.unit();
    }

    private static To to(String metricUnit) {
        return switch (metricUnit) {
            case "km/h" -> new To("mph", 1, v -> v / 1.609344);
            case "km" -> new To("mi", 1, v -> v / 1.609344);
            case "°C" -> new To("°F", 1, v -> v * 1.8 + 32);
            // A difference: 22.2 K are 40 °F, never 72 °F.
            case "K" -> new To("°F", 1, v -> v * 1.8);
            // NIST SP 811, appendix B.8: 1 inHg = 3.386389 kPa.
            case "kPa" -> new To("inHg", 0.1, v -> v / 3.386389);
            case "m" -> new To("ft", 10, v -> v / 0.3048);
            default -> throw new IllegalStateException("a unit without a conversion: " + metricUnit);
        };
    }

    private static String number(To to, String metric) {
        double value = to.convert().applyAsDouble(Double.parseDouble(metric));
        double step = metric.contains(".") || Math.abs(value) < to.step() ? Math.min(to.step(), 0.1) : to.step();
        double rounded = Math.rint(value / step) * step;
        return BigDecimal.valueOf(rounded)
                .setScale(1, RoundingMode.HALF_EVEN)
                .stripTrailingZeros()
                .toPlainString();
    }
}
