package dev.stayfixed.recording;

import static javax.measure.MetricPrefix.HECTO;
import static javax.measure.MetricPrefix.KILO;
import static javax.measure.MetricPrefix.MILLI;
import static tech.units.indriya.unit.Units.CELSIUS;
import static tech.units.indriya.unit.Units.GRAM;
import static tech.units.indriya.unit.Units.HERTZ;
import static tech.units.indriya.unit.Units.HOUR;
import static tech.units.indriya.unit.Units.KELVIN;
import static tech.units.indriya.unit.Units.KILOGRAM;
import static tech.units.indriya.unit.Units.KILOMETRE_PER_HOUR;
import static tech.units.indriya.unit.Units.METRE;
import static tech.units.indriya.unit.Units.METRE_PER_SECOND;
import static tech.units.indriya.unit.Units.MINUTE;
import static tech.units.indriya.unit.Units.PASCAL;
import static tech.units.indriya.unit.Units.PERCENT;
import static tech.units.indriya.unit.Units.SECOND;
import static tech.units.indriya.unit.Units.VOLT;

import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.reason.Part;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.measure.IncommensurableException;
import javax.measure.Unit;
import javax.measure.UnitConverter;
import systems.uom.common.USCustomary;
import tech.units.indriya.AbstractUnit;

/** The units in which logs are written, with the ways in which headers spell them. */
@SuppressWarnings("ImmutableEnumChecker") // units and their spellings never change once made
public enum SourceUnit {
    REVOLUTIONS_PER_MINUTE(
            HERTZ.divide(60),
            "rpm",
            "1/min",
            "r/min",
            "u/min",
            "min-1",
            "revs/min",
            "rev/min",
            "obr/min",
            "tr/min",
            "giri/min",
            "min⁻¹"),
    /** As a rev counter's dial is marked. */
    THOUSANDS_PER_MINUTE(HERTZ.divide(60).multiply(1000), "1000 rpm", "x1000 rpm", "rpm x1000", "1000/min", "krpm"),
    KILOMETRES_PER_HOUR(KILOMETRE_PER_HOUR, "km/h", "kmh", "kph", "kmph", "km/hr", "km/std"),
    MILES_PER_HOUR(USCustomary.MILE_PER_HOUR, "mph", "mi/h", "miles/hour", "mi/hr", "miles/h"),
    METRES_PER_SECOND(METRE_PER_SECOND, "m/s", "mps", "meters/second", "metres/second", "m/sec"),
    DEGREES_CELSIUS(CELSIUS, "°C", "c", "℃", "celsius", "degc", "deg c", "deg. c", "gradc", "grad c", "° c"),
    DEGREES_FAHRENHEIT(USCustomary.FAHRENHEIT, "°F", "f", "℉", "fahrenheit", "degf", "deg f", "deg. f", "° f"),
    KELVINS(KELVIN, "K", "kelvin"),
    PER_CENT(PERCENT, "%", "percent", "pct", "prozent"),
    FRACTION(AbstractUnit.ONE, "fraction", "0-1", "ratio"),
    PASCALS(PASCAL, "Pa"),
    KILOPASCALS(KILO(PASCAL), "kPa"),
    HECTOPASCALS(HECTO(PASCAL), "hPa", "mbar", "mb"),
    BARS(PASCAL.multiply(100_000), "bar"),
    POUNDS_PER_SQUARE_INCH(PASCAL.multiply(6_894.757293168), "psi", "psia"),
    INCHES_OF_MERCURY(PASCAL.multiply(3_386.389), "inHg", "in.hg", "in hg", "in-hg"),
    INCHES_OF_WATER(PASCAL.multiply(249.08891), "inH2O", "in h2o", "in.h2o"),
    GRAMS_PER_SECOND(GRAM.divide(SECOND), "g/s", "g/sec", "gps", "gm/s"),
    KILOGRAMS_PER_HOUR(KILOGRAM.divide(HOUR), "kg/h", "kg/hr"),
    POUNDS_PER_MINUTE(USCustomary.POUND.divide(MINUTE), "lb/min", "lbs/min"),
    METRES(METRE, "m", "metre", "meter", "metres", "meters"),
    KILOMETRES(KILO(METRE), "km", "kilometre", "kilometer"),
    MILES(USCustomary.MILE, "mi", "mile", "miles"),
    MILLISECONDS(MILLI(SECOND), "ms", "msec", "millis", "milliseconds"),
    SECONDS(SECOND, "s", "sec", "secs", "second", "seconds"),
    MINUTES(MINUTE, "min", "minutes"),
    HOURS(HOUR, "h", "hr", "hours"),
    VOLTS(VOLT, "V", "volt", "volts"),
    MILLIVOLTS(MILLI(VOLT), "mV"),
    COUNT(AbstractUnit.ONE, "count"),
    /** on/off, true/false, yes/no, 1/0. */
    SWITCH(AbstractUnit.ONE, "bool", "boolean", "on"),
    /** Hexadecimal data bytes. */
    BYTES(AbstractUnit.ONE, "hex", "bytes");

    private final Unit<?> unit;
    private final List<String> spellings;

    SourceUnit(Unit<?> unit, String... spellings) {
        this.unit = unit;
        this.spellings = List.of(spellings);
    }

    /** How it is printed. */
    Part part() {
        return Part.verbatim(spelling());
    }

    public String spelling() {
        return spellings.get(0);
    }

    /** The unit that a header spells so; case and doubled encodings do not matter. */
    static Optional<SourceUnit> spelled(String text) {
        String plain = HeaderText.clean(text).toLowerCase(Locale.ROOT);
        return Arrays.stream(values()).filter(unit -> unit.isSpelled(plain)).findFirst();
    }

    boolean isSpelled(String plain) {
        for (String spelling : spellings) {
            if (spelling.equalsIgnoreCase(plain)) {
                return true;
            }
        }
        return false;
    }

    /** The units in which this signal can be written. */
    static List<SourceUnit> of(Signal signal) {
        return Arrays.stream(values()).filter(unit -> unit.fits(signal)).toList();
    }

    /** The unit in which the signal is kept. */
    static SourceUnit canonical(Signal signal) {
        return spelled(signal.unit()).orElseThrow(() -> new IllegalStateException(signal + ": " + signal.unit()));
    }

    /** The unit in which logs write the signal where they do not say. */
    static SourceUnit usual(Signal signal) {
        return signal == Signal.MIL ? SWITCH : canonical(signal);
    }

    /** Whether values in this unit can be values of the signal. */
    public boolean fits(Signal signal) {
        SourceUnit target = canonical(signal);
        return (isBare() || target.isBare()) ? this == target : unit.isCompatible(target.unit);
    }

    private boolean isBare() {
        return this == COUNT || this == SWITCH || this == BYTES;
    }

    /**
     * From this unit to the signal's own.
     *
     * @throws IllegalArgumentException where the unit does not fit the signal
     */
    Conversion to(Signal signal) {
        if (!fits(signal)) {
            throw new IllegalArgumentException(
                    "%s: found unit %s, expected a unit like %s".formatted(signal.words(), spelling(), signal.unit()));
        }
        try {
            UnitConverter converter = unit.getConverterToAny(canonical(signal).unit);
            double zero = converter.convert(0.0);
            return converter.isIdentity()
                    ? new Conversion(1, 0)
                    : new Conversion((converter.convert(1_000.0) - zero) / 1_000, zero);
        } catch (IncommensurableException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    /** All our units are proportional up to a zero point: kept as two numbers, because a log converts millions of values. */
    record Conversion(double factor, double zero) {

        double apply(double value) {
            return value * factor + zero;
        }
    }
}
