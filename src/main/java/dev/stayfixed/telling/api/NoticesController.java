package dev.stayfixed.telling.api;

import dev.stayfixed.platform.Given;
import dev.stayfixed.platform.IfMatch;
import dev.stayfixed.platform.problem.Mistake;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.telling.EventKind;
import dev.stayfixed.telling.JobNotices;
import dev.stayfixed.telling.Notices;
import dev.stayfixed.telling.ShopNotices;
import dev.stayfixed.web.api.Link;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

@Tag(name = "Notices", description = "Who is told of what, by shop and by job")
@RestController
@RequestMapping(Link.BASE)
class NoticesController {

    private final Notices notices;

    NoticesController(Notices notices) {
        this.notices = notices;
    }

    /**
     * A shop's settings.
     *
     * @param signature stands under every mail to a driver
     * @param silentDays days without a drive after which an open job is reminded of
     * @param comebackDays a repaired fault that is back within so many days is a comeback,
     * @param comebackDistance unless more than so many km are known to have been driven; no limit, if missing
     */
    record ShopSettings(
            @Nullable String technicianEmail,

            @NotNull(message = "a list of kinds, which may be empty")
            List<EventKind> technicianKinds,

            @NotNull(message = "a list of kinds, which may be empty")
            List<EventKind> driverKinds,

            @Nullable @Size(max = 500, message = "at most 500 characters")
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

        static ShopSettings of(ShopNotices n) {
            return new ShopSettings(
                    n.technicianEmail().orElse(null),
                    List.copyOf(n.technicianKinds()),
                    List.copyOf(n.driverKinds()),
                    n.signature().orElse(null),
                    n.silentDays(),
                    n.comebackDays(),
                    Given.orNull(n.comebackDistance()));
        }

        ShopNotices notices() {
            return new ShopNotices(
                    0,
                    MailAddressField.optional("technicianEmail", technicianEmail),
                    only("technicianKinds", technicianKinds, EventKind.forTechnician()),
                    only("driverKinds", driverKinds, EventKind.forDriver()),
                    Given.optional(signature),
                    silentDays,
                    comebackDays,
                    Given.optional(comebackDistance));
        }
    }

    /**
     * A job's settings; what is missing follows the shop.
     *
     * @param driverStopped the driver stopped the mails by the link in one of them; only read
     */
    record JobSettings(
            @Nullable String technicianEmail,
            @Nullable String driverEmail,
            @Nullable List<EventKind> technicianKinds,
            @Nullable List<EventKind> driverKinds,

            @Nullable @Min(value = 1, message = "1 to 365 days") @Max(value = 365, message = "1 to 365 days")
            Integer silentDays,

            @Nullable Boolean driverStopped) {

        static JobSettings of(JobNotices n) {
            return new JobSettings(
                    n.technicianEmail().orElse(null),
                    n.driverEmail().orElse(null),
                    n.technicianKinds().map(List::copyOf).orElse(null),
                    n.driverKinds().map(List::copyOf).orElse(null),
                    n.silentDays().isPresent() ? n.silentDays().getAsInt() : null,
                    n.driverStopped());
        }

        JobNotices notices() {
            return new JobNotices(
                    0,
                    MailAddressField.optional("technicianEmail", technicianEmail),
                    MailAddressField.optional("driverEmail", driverEmail),
                    Optional.ofNullable(technicianKinds)
                            .map(k -> only("technicianKinds", k, EventKind.forTechnician())),
                    Optional.ofNullable(driverKinds).map(k -> only("driverKinds", k, EventKind.forDriver())),
                    silentDays == null ? OptionalInt.empty() : OptionalInt.of(silentDays),
                    false);
        }
    }

    /** A list as a set, of these kinds only. */
    static Set<EventKind> only(String path, List<EventKind> wanted, Set<EventKind> possible) {
        for (int i = 0; i < wanted.size(); i++) {
            if (!possible.contains(wanted.get(i))) {
                throw Refused.content(new Mistake(path + "[" + i + "]", wanted.get(i), "one of " + possible));
            }
        }
        return new TreeSet<>(wanted);
    }

    @Operation(summary = "The shop's settings")
    @GetMapping("/notification-settings")
    ResponseEntity<ShopSettings> ofShop() {
        return answer(notices.ofShop());
    }

    @Operation(summary = "Replace the shop's settings")
    @PutMapping("/notification-settings")
    ResponseEntity<ShopSettings> change(
            @RequestHeader(name = "If-Match", required = false) @Nullable String ifMatch,
            @Valid @RequestBody ShopSettings request) {
        return answer(notices.change(IfMatch.of(ifMatch), request.notices()));
    }

    @Operation(summary = "The settings of one job")
    @GetMapping("/jobs/{id}/notifications")
    ResponseEntity<JobSettings> ofJob(@PathVariable UUID id) {
        return answer(notices.ofJob(id));
    }

    @Operation(summary = "Replace the settings of one job")
    @PutMapping("/jobs/{id}/notifications")
    ResponseEntity<JobSettings> change(
            @PathVariable UUID id,
            @RequestHeader(name = "If-Match", required = false) @Nullable String ifMatch,
            @Valid @RequestBody JobSettings request) {
        return answer(notices.change(id, IfMatch.of(ifMatch), request.notices()));
    }

    private static ResponseEntity<ShopSettings> answer(ShopNotices notices) {
        return ResponseEntity.ok().eTag(IfMatch.tag(notices.version())).body(ShopSettings.of(notices));
    }

    private static ResponseEntity<JobSettings> answer(JobNotices notices) {
        return ResponseEntity.ok().eTag(IfMatch.tag(notices.version())).body(JobSettings.of(notices));
    }
}
