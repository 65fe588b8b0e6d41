package dev.stayfixed.notifications;

import dev.stayfixed.intake.FaultVerdict;
import java.util.Optional;

/**
 * Something about one fault that is worth telling.
 *
 * @param reason why, in a sentence
 * @param driveId the drive that brought it, where one did
 * @param occasion the same finding from the same cause has the same; it is told once
 */
record Finding(EventKind kind, FaultVerdict verdict, String reason, Optional<String> driveId, String occasion) {}
