package dev.stayfixed.telling;

import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/**
 * Who is told about one job. What is empty follows the shop.
 *
 * @param version grows by one with every change
 * @param driverLanguage in which the driver is written to, as {@link dev.stayfixed.platform.Languages} names it
 * @param driverStopped the driver used the link that stops the mails
 */
public record JobNotices(
        int version,
        Optional<String> technicianEmail,
        Optional<String> driverEmail,
        Optional<String> driverLanguage,
        Optional<Set<EventKind>> technicianKinds,
        Optional<Set<EventKind>> driverKinds,
        OptionalInt silentDays,
        boolean driverStopped) {

    static JobNotices untouched() {
        return new JobNotices(
                1,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                OptionalInt.empty(),
                false);
    }

    /** One version later where that is another one. */
    JobNotices inLanguage(Optional<String> language) {
        return language.equals(driverLanguage)
                ? this
                : new JobNotices(
                        version + 1,
                        technicianEmail,
                        driverEmail,
                        language,
                        technicianKinds,
                        driverKinds,
                        silentDays,
                        driverStopped);
    }
}
