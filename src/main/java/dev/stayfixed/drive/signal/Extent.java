package dev.stayfixed.drive.signal;

/** The first, last, lowest and highest value of one signal in a drive, in its canonical unit, and how many rows gave one. */
public record Extent(double first, double last, double lowest, double highest, long count) {}
