package dev.stayfixed.wording;

/**
 * The unit in which people read and type a quantity: shown = kept * factor + offset.
 *
 * @param unit as it is printed
 */
public record Scale(String unit, double factor, double offset) {

    /** From a metric unit, which is how everything is kept, to the US one; what has none stays as it is. */
    public static Scale us(String metricUnit) {
        return switch (metricUnit) {
            case "km/h" -> new Scale("mph", 1 / 1.609344, 0);
            case "km" -> new Scale("mi", 1 / 1.609344, 0);
            case "m" -> new Scale("ft", 1 / 0.3048, 0);
            case "°C" -> new Scale("°F", 1.8, 32);
            // A difference: 22.2 K are 40 °F, never 72 °F.
            case "K" -> new Scale("°F", 1.8, 0);
            // NIST SP 811, appendix B.8: 1 inHg = 3.386389 kPa.
            case "kPa" -> new Scale("inHg", 1 / 3.386389, 0);
            default -> new Scale(metricUnit, 1, 0);
        };
    }

    /** What is kept in a metric unit stays as it is. */
    public static Scale metric(String metricUnit) {
        return new Scale(metricUnit, 1, 0);
    }

    public double shown(double kept) {
        return kept * factor + offset;
    }

    /** The inverse of {@link #shown}, rounded to a millionth so that 212 °F is 100 °C. */
    public double kept(double shown) {
        return Math.rint((shown - offset) / factor * 1e6) / 1e6;
    }
}
