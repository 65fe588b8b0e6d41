package dev.stayfixed.verification.bench;

import java.util.OptionalDouble;

/**
 * What the meter showed.
 *
 * @param number in the unit of the measurement; empty where it showed "open" or "over limit", which lies outside every band
 * @param words as a person reads it, without the unit
 */
public record BenchReading(OptionalDouble number, String words) {}
