package dev.stayfixed.telling.entry;

import dev.stayfixed.platform.Given;
import dev.stayfixed.telling.EventKind;
import dev.stayfixed.telling.ShopNotices;
import io.swagger.v3.oas.annotations.media.Schema;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A shop's settings.
 *
 * @param signature stands under every mail to a driver
 * @param silentDays days without a drive after which an open job is reminded of
 * @param comebackDays a repaired fault that is back within so many days is a comeback,
 * @param comebackDistance unless more than so many km are known to have been driven; no limit, if missing
 */
@Schema(name = "ShopSettings")
public record ShopNoticesEntry(
        @Nullable String technicianEmail,

        @NotNull(message = "a list of kinds, which may be empty")
        List<EventKind> technicianKinds,

        @NotNull(message = "a list of kinds, which may be empty")
        List<EventKind> driverKinds,

        @Nullable @Size(max = 500, message = "at most {max} characters")
        String signature,

        @NotNull(message = "days")
        @Min(value = 1, message = "1 to 365 days")
        @Max(value = 365, message = "1 to 365 days")
        Integer silentDays,

        @NotNull(message = "days")
        @Min(value = 1, message = "1 to 1095 days")
        @Max(value = 1095, message = "1 to 1095 days")
        Integer comebackDays,

        @Nullable
        @DecimalMin(value = "1", message = "1 to 100000 km")
        @DecimalMax(value = "100000", message = "1 to 100000 km")
        Double comebackDistance) {

    public static ShopNoticesEntry of(ShopNotices n) {
        return new ShopNoticesEntry(
                n.technicianEmail().orElse(null),
                List.copyOf(n.technicianKinds()),
                List.copyOf(n.driverKinds()),
                n.signature().orElse(null),
                n.silentDays(),
                n.comebackDays(),
                Given.orNull(n.comebackDistance()));
    }

    public ShopNotices notices() {
        return new ShopNotices(
                0,
                MailAddressField.optional("technicianEmail", technicianEmail),
                Choice.only("technicianKinds", technicianKinds, EventKind.forTechnician()),
                Choice.only("driverKinds", driverKinds, EventKind.forDriver()),
                Given.optional(signature),
                silentDays,
                comebackDays,
                Given.optional(comebackDistance));
    }
}
