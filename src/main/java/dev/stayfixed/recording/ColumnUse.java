package dev.stayfixed.recording;

/**
 * What came of one column that was read.
 *
 * @param values taken
 * @param blanks cells without a value
 * @param unreadable cells with something that is no value
 * @param implausible values that no working car shows; not used
 */
public record ColumnUse(ColumnMapping mapping, long values, long blanks, long unreadable, long implausible) {}
