package dev.stayfixed.archive;

import dev.stayfixed.obd.Vin;
import dev.stayfixed.recording.LogMapping;
import java.util.Optional;

/**
 * The log of a submission, read and not yet stored.
 *
 * @param vin that a column of the log states
 */
public record LogSubmission(
        UploadedLog bytes, String mediaType, LogMapping mapping, Optional<Vin> vin, JudgedLog judged) {}
