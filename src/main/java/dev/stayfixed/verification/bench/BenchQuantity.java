package dev.stayfixed.verification.bench;

import dev.stayfixed.reason.Kind;
import java.util.OptionalDouble;

/**
 * What is commonly measured at the bench, in its unit. A typical band is common practice: service information overrides it. A
 * resistance has none, it is from service information alone.
 */
public enum BenchQuantity implements Kind {
    /** From memory: a battery at rest is not below it, a charging system not above it. */
    SUPPLY_VOLTAGE("V", 11.5, 14.8),
    /** Common practice, no source. Not below zero, because leads held the wrong way round prove nothing. */
    GROUND_DROP("V", 0, 0.1),
    /** From memory: a regulated supply of 5 V. */
    REFERENCE_VOLTAGE("V", 4.9, 5.1),
    SIGNAL_VOLTAGE("V"),
    /** Common practice, no source, of a mechanical contact that is closed and carries its load. */
    CONTACT_DROP("V", 0, 0.2),
    /** Common practice, no source. */
    DROP_UNDER_LOAD("V", 0, 0.2),
    PART_RESISTANCE("Ω"),
    PRIMARY_RESISTANCE("Ω"),
    RESISTANCE_TO_GROUND("Ω");

    private final String unit;
    private final OptionalDouble typicalMin;
    private final OptionalDouble typicalMax;

    BenchQuantity(String unit) {
        this.unit = unit;
        this.typicalMin = OptionalDouble.empty();
        this.typicalMax = OptionalDouble.empty();
    }

    BenchQuantity(String unit, double typicalMin, double typicalMax) {
        this.unit = unit;
        this.typicalMin = OptionalDouble.of(typicalMin);
        this.typicalMax = OptionalDouble.of(typicalMax);
    }

    public String unit() {
        return unit;
    }

    /** In {@link #unit}, inclusive; likewise the maximum. Empty where practice has no typical band. */
    public OptionalDouble typicalMin() {
        return typicalMin;
    }

    public OptionalDouble typicalMax() {
        return typicalMax;
    }
}
