package dev.stayfixed.recording;

/**
 * How much a log may ask of the machine.
 *
 * @param bytes of the log when it is unpacked
 * @param ratio unpacked to packed; a log of slow signals packs to a fiftieth, hardly further
 * @param columns in one row
 * @param cellLength characters
 * @param zipEntries files and folders in a zip file
 */
public record LogLimits(long bytes, int ratio, int columns, int cellLength, int zipEntries) {

    /** 1 GiB unpacked, 300 to 1, 500 columns, 4096 characters a cell, 50 zip entries. */
    public static final LogLimits USUAL = new LogLimits(1L << 30, 300, 500, 4096, 50);
}
