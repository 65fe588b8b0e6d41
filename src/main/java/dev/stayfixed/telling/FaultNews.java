package dev.stayfixed.telling;

import dev.stayfixed.judging.FaultVerdict;
import dev.stayfixed.reason.Reason;
import java.util.Optional;

/**
 * Something about one fault that is worth telling.
 *
 * @param driveId the drive that brought it, where one did
 * @param occasion the same finding from the same cause has the same; it is told once
 */
record FaultNews(EventKind kind, FaultVerdict verdict, Reason reason, Optional<String> driveId, String occasion) {}
