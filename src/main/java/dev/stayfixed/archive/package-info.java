/**
 * Submissions, drives and logs: stored as they came, and read again. Open {@link dev.stayfixed.archive.Archive} first. May depend on
 * {@code recording}, {@code platform} and the pure packages; owns the tables {@code submission}, {@code submission_part},
 * {@code drive}, {@code drive_left_out}, {@code drive_condition} and {@code drive_picture}.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.archive;
