package dev.stayfixed.wording;

import java.math.BigDecimal;
import java.math.RoundingMode;
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

    private UsUnits() {}

    static String words(String sentence) {
        return QUANTITY.matcher(sentence).replaceAll(UsUnits::quantity);
    }

    private static String quantity(MatchResult found) {
        Scale scale = Scale.us(found.group(3));
        String second = found.group(2) == null
                ? ""
                : " to " + number(scale, found.group(2).substring(" to ".length()));
        return number(scale, found.group(1)) + second + " " + scale.unit();
    }

    private static String number(Scale scale, String metric) {
        double value = scale.shown(Double.parseDouble(metric));
        double coarse = step(scale.unit());
        double step = metric.contains(".") || Math.abs(value) < coarse ? Math.min(coarse, 0.1) : coarse;
        double rounded = Math.rint(value / step) * step;
        return BigDecimal.valueOf(rounded)
                .setScale(1, RoundingMode.HALF_EVEN)
                .stripTrailingZeros()
                .toPlainString();
    }

    /** The finest that is still said of a whole number. */
    private static double step(String unit) {
        return switch (unit) {
            case "inHg" -> 0.1;
            case "ft" -> 10;
            default -> 1;
        };
    }
}
