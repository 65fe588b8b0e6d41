package dev.stayfixed.drive.signal;

/** What a unit conversion may lose in binary: far below any sensor's resolution. */
final class Tolerance {

    static final double ROUNDING = 1e-9;

    private Tolerance() {}
}
