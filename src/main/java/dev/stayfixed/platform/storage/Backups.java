package dev.stayfixed.platform.storage;

import java.time.Instant;

/** Copies of the whole database, made while the service runs. */
public interface Backups {

    /**
     * A copy that is whole and on the disk.
     *
     * @param name of its file in the backup folder; beside it lies its digest, under the same name with .sha256
     * @param bytes its size
     * @param sha256 of the file, in 64 hexadecimal digits
     * @param takenAt everything that was answered before is in it
     */
    record Backup(String name, long bytes, String sha256, Instant takenAt) {}

    /** Who wants one: what a person asked for is never deleted by the service. */
    enum By {
        REQUEST,
        SCHEDULE
    }

    /**
     * Makes one, while writes wait; where that fails, no part of it is left.
     *
     * @throws dev.stayfixed.platform.problem.Refused when the disk is too full, or the database or the folder does not allow it
     */
    Backup take(By by);
}
