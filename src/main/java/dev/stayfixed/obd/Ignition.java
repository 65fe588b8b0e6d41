package dev.stayfixed.obd;

/** Bit 3 of readiness byte B: which set of monitors bytes C and D describe. Source: SAE J1979 service $01 PID $01. */
public enum Ignition {
    SPARK,
    COMPRESSION
}
