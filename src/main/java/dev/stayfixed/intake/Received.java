package dev.stayfixed.intake;

import java.util.List;

/**
 * What became of a submission.
 *
 * @param isNew false where the very same drive was stored before, and nothing changed
 * @param effects one for each fault of the vehicle on which the drive has a say
 */
public record Received(Drive drive, boolean isNew, List<Effect> effects) {}
