package dev.stayfixed.verification.bench;

import dev.stayfixed.reason.Kind;

/** What the meter showed. */
public sealed interface BenchReading {

    /** A number, in the unit of the measurement. */
    record Figure(double value) implements BenchReading {}

    /** No number; lies outside every band. */
    enum NoNumber implements BenchReading, Kind {
        /** No connection. */
        OPEN,
        /** More than the meter's range. */
        OVER_LIMIT
    }
}
