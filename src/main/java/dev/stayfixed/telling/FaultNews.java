package dev.stayfixed.telling;

import dev.stayfixed.judging.FaultVerdict;
import java.util.Optional;

/**
 * Something about one fault that is worth telling.
 *
 * @param reason why, in a sentence of ours and in the units of the shop
 * @param said what a person gave as the reason, in that one's own words; nobody rewrites them
 * @param driveId the drive that brought it, where one did
 * @param occasion the same finding from the same cause has the same; it is told once
 */
record FaultNews(
        EventKind kind,
        FaultVerdict verdict,
        String reason,
        Optional<String> said,
        Optional<String> driveId,
        String occasion) {}
