package dev.stayfixed.customer.pages;

import dev.stayfixed.customer.DriverLink;
import dev.stayfixed.customer.DriverLinks;
import dev.stayfixed.customer.LinkAddress;
import dev.stayfixed.web.api.ReasonAnswer;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.net.URI;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.servlet.support.ServletUriComponentsBuilder;

@Tag(name = "Driver's link", description = "The page on which the driver of a job logs drives, without an account")
@RestController
@RequestMapping("/api/v1/jobs/{id}/driver-link")
class DriverLinkController {

    private final DriverLinks links;
    private final LinkAddress address;

    DriverLinkController(DriverLinks links, LinkAddress address) {
        this.links = links;
        this.address = address;
    }

    /**
     * A link that was just made.
     *
     * @param url of the driver's page; it is told this once and cannot be looked up later
     * @param sheet the printable sheet with the code of this link
     * @param warning what is wrong with the address, if anything
     */
    record LinkAnswer(
            UUID jobId,
            String url,
            String sheet,
            Instant issuedAt,
            Instant expiresAt,
            @Nullable String warning) {}

    @Operation(
            summary = "Make a link to the driver's page",
            description =
                    "Earlier links of the job go on working, also after it is closed, so that the driver can say that the lamp came"
                            + " back. All of them end with DELETE.")
    @PostMapping
    ResponseEntity<LinkAnswer> make(@PathVariable UUID id) {
        DriverLink link = links.issue(id);
        String url = address.of(
                link.token(),
                ServletUriComponentsBuilder.fromCurrentContextPath().build().toUriString());
        return ResponseEntity.created(URI.create(url))
                .body(new LinkAnswer(
                        id,
                        url,
                        "/jobs/" + id + "/sheet?link=" + link.token(),
                        link.issuedAt(),
                        link.expiresAt(),
                        address.warning(url).map(ReasonAnswer::text).orElse(null)));
    }

    /**
     * What renewing did.
     *
     * @param links how many there are that were not ended
     */
    record Renewed(int links) {}

    @Operation(
            summary = "Let all links of a job work for their whole lifetime from now on",
            description = "Also those that have run out; one that was ended with DELETE stays so.")
    @PostMapping("/renewal")
    Renewed renew(@PathVariable UUID id) {
        return new Renewed(links.renew(id));
    }

    @Operation(summary = "End all links of a job")
    @DeleteMapping
    @ResponseStatus(HttpStatus.NO_CONTENT)
    void end(@PathVariable UUID id) {
        links.revoke(id);
    }
}
