package dev.stayfixed.platform.storage;

/** How much the disks of this service can still take. */
@FunctionalInterface
public interface FreeSpace {

    /** Bytes on the fullest of the disks that are known: that of an H2 file, and that of temporary files. */
    long bytes();
}
