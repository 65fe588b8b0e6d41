package dev.stayfixed.telling.entry;

import dev.stayfixed.platform.Given;
import dev.stayfixed.telling.EventKind;
import dev.stayfixed.telling.JobNotices;
import io.swagger.v3.oas.annotations.media.Schema;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.Size;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;

/**
 * A job's settings; what is missing follows the shop.
 *
 * @param driverLanguage in which the driver is written to: "de"
 * @param driverStopped the driver stopped the mails by the link in one of them; only read
 */
@Schema(name = "JobSettings")
public record JobNoticesEntry(
        @Nullable String technicianEmail,
        @Nullable String driverEmail,

        @Nullable @Size(max = 35, message = "a language, for example en")
        String driverLanguage,

        @Nullable List<EventKind> technicianKinds,
        @Nullable List<EventKind> driverKinds,

        @Nullable @Min(value = 1, message = "1 to 365 days") @Max(value = 365, message = "1 to 365 days")
        Integer silentDays,

        @Nullable Boolean driverStopped) {

    public static JobNoticesEntry of(JobNotices n) {
        return new JobNoticesEntry(
                n.technicianEmail().orElse(null),
                n.driverEmail().orElse(null),
                n.driverLanguage().orElse(null),
                n.technicianKinds().map(List::copyOf).orElse(null),
                n.driverKinds().map(List::copyOf).orElse(null),
                n.silentDays().isPresent() ? n.silentDays().getAsInt() : null,
                n.driverStopped());
    }

    public JobNotices notices() {
        return new JobNotices(
                0,
                MailAddressField.optional("technicianEmail", technicianEmail),
                MailAddressField.optional("driverEmail", driverEmail),
                Given.optional(driverLanguage),
                Optional.ofNullable(technicianKinds)
                        .map(k -> Choice.only("technicianKinds", k, EventKind.forTechnician())),
                Optional.ofNullable(driverKinds).map(k -> Choice.only("driverKinds", k, EventKind.forDriver())),
                silentDays == null ? OptionalInt.empty() : OptionalInt.of(silentDays),
                false);
    }
}
