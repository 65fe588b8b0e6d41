package dev.stayfixed.archive;

import java.util.Optional;

/**
 * A submission that was read and not yet stored.
 *
 * @param digest the same for the same content
 * @param log empty where none was sent
 */
public record Submitted(Original original, DriveSubmission said, String digest, Optional<LogSubmission> log) {}
