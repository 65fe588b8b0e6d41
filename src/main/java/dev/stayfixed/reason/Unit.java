package dev.stayfixed.reason;

import java.util.Arrays;

/** The metric unit of a quantity. Readers in the US are shown another. */
public enum Unit implements Kind {
    KILOMETRE("km"),
    METRE("m"),
    KILOMETRE_PER_HOUR("km/h"),
    CELSIUS("°C"),
    /** A difference of temperatures. */
    KELVIN("K"),
    KILOPASCAL("kPa"),
    PASCAL("Pa"),
    SECOND("s"),
    MINUTE("min"),
    HOUR("h"),
    RPM("rpm"),
    PERCENT("%"),
    /** Of another share. */
    PERCENT_RELATIVE("% relative"),
    POINT("points"),
    VOLT("V"),
    GRAM_PER_SECOND("g/s"),
    LITRE_PER_HOUR("L/h"),
    NEWTON_METRE("Nm"),
    DEGREE("°"),
    CYCLE("cycles"),
    TIMES("count"),
    ON("on"),
    BYTES("bytes"),
    /** A plain number. */
    ONE("");

    private final String symbol;

    Unit(String symbol) {
        this.symbol = symbol;
    }

    /** As answers of the interface print it. */
    public String symbol() {
        return symbol;
    }

    /** The unit of a difference between two values: a temperature is missed by kelvins. */
    public Unit ofDifference() {
        return this == CELSIUS ? KELVIN : this;
    }

    /** By its symbol, as quantities and signals name theirs. */
    public static Unit of(String symbol) {
        return Arrays.stream(values())
                .filter(unit -> unit.symbol.equals(symbol))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(
                        "unit: found " + symbol + ", expected one of " + Arrays.toString(values())));
    }
}
