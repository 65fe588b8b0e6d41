package dev.stayfixed.telling;

import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/**
 * Who is told about one job. What is empty follows the shop.
 *
 * @param version grows by one with every change
 * @param driverStopped the driver used the link that stops the mails
 */
public record JobNotices(
        int version,
        Optional<String> technicianEmail,
        Optional<String> driverEmail,
        Optional<Set<EventKind>> technicianKinds,
        Optional<Set<EventKind>> driverKinds,
        OptionalInt silentDays,
        boolean driverStopped) {

    static JobNotices untouched() {
        return new JobNotices(
                1, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), OptionalInt.empty(), false);
    }
}
