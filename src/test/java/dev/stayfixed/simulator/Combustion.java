package dev.stayfixed.simulator;

/** Byte B bit 3 of SAE J1979 service $01 PID $01. */
public enum Combustion {
    SPARK,
    COMPRESSION
}
