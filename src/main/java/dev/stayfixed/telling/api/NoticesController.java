package dev.stayfixed.telling.api;

import dev.stayfixed.platform.IfMatch;
import dev.stayfixed.telling.JobNotices;
import dev.stayfixed.telling.Notices;
import dev.stayfixed.telling.ShopNotices;
import dev.stayfixed.telling.entry.JobNoticesEntry;
import dev.stayfixed.telling.entry.ShopNoticesEntry;
import dev.stayfixed.web.api.Link;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.validation.Valid;
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

    @Operation(summary = "The shop's settings")
    @GetMapping("/notification-settings")
    ResponseEntity<ShopNoticesEntry> ofShop() {
        return answer(notices.ofShop());
    }

    @Operation(summary = "Replace the shop's settings")
    @PutMapping("/notification-settings")
    ResponseEntity<ShopNoticesEntry> change(
            @RequestHeader(name = "If-Match", required = false) @Nullable String ifMatch,
            @Valid @RequestBody ShopNoticesEntry request) {
        return answer(notices.change(IfMatch.of(ifMatch), request.notices()));
    }

    @Operation(summary = "The settings of one job")
    @GetMapping("/jobs/{id}/notifications")
    ResponseEntity<JobNoticesEntry> ofJob(@PathVariable UUID id) {
        return answer(notices.ofJob(id));
    }

    @Operation(summary = "Replace the settings of one job")
    @PutMapping("/jobs/{id}/notifications")
    ResponseEntity<JobNoticesEntry> change(
            @PathVariable UUID id,
            @RequestHeader(name = "If-Match", required = false) @Nullable String ifMatch,
            @Valid @RequestBody JobNoticesEntry request) {
        return answer(notices.change(id, IfMatch.of(ifMatch), request.notices()));
    }

    private static ResponseEntity<ShopNoticesEntry> answer(ShopNotices notices) {
        return ResponseEntity.ok().eTag(IfMatch.tag(notices.version())).body(ShopNoticesEntry.of(notices));
    }

    private static ResponseEntity<JobNoticesEntry> answer(JobNotices notices) {
        return ResponseEntity.ok().eTag(IfMatch.tag(notices.version())).body(JobNoticesEntry.of(notices));
    }
}
