package dev.stayfixed.intake.api;

import dev.stayfixed.archive.DriveSubmission;
import dev.stayfixed.archive.LeftOutReason;
import dev.stayfixed.archive.Original;
import dev.stayfixed.archive.SentLog;
import dev.stayfixed.intake.Drive;
import dev.stayfixed.intake.Intake;
import dev.stayfixed.intake.Received;
import dev.stayfixed.platform.IfMatch;
import dev.stayfixed.platform.Page;
import dev.stayfixed.web.api.Link;
import dev.stayfixed.web.api.PageAnswer;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.validation.Valid;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.core.io.ByteArrayResource;
import org.springframework.core.io.InputStreamResource;
import org.springframework.core.io.Resource;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/** Drives go to the intake as they came: what is stored is what was sent. */
@Tag(name = "Drives", description = "Drives belong to a vehicle and are judged for every fault of its jobs")
@RestController
@RequestMapping(Link.BASE)
class DriveController {

    private final Intake intake;

    DriveController(Intake intake) {
        this.intake = intake;
    }

    @Operation(
            summary = "Send a drive: a summary, scans, or both; text/plain is one scan taken in the drive",
            requestBody =
                    @io.swagger.v3.oas.annotations.parameters.RequestBody(
                            required = true,
                            content = {
                                @Content(
                                        mediaType = Original.JSON,
                                        schema = @Schema(implementation = DriveSubmission.class)),
                                @Content(mediaType = Original.PLAIN, schema = @Schema(type = "string"))
                            }))
    @ApiResponse(responseCode = "201", description = "Created; Location names it", useReturnTypeSchema = true)
    @ApiResponse(
            responseCode = "200",
            description = "The very same drive was stored before; nothing changed",
            useReturnTypeSchema = true)
    @PostMapping(
            path = "/vehicles/{vehicleId}/drives",
            consumes = {Original.JSON, Original.PLAIN})
    ResponseEntity<DriveAnswer> receive(
            @PathVariable UUID vehicleId,
            @Parameter(hidden = true) @RequestHeader(HttpHeaders.CONTENT_TYPE) MediaType contentType,
            @RequestBody(required = false) byte @Nullable [] body) {
        return DriveAnswer.received(intake.receive(vehicleId, original(contentType, body)));
    }

    @Operation(summary = "Drives of a vehicle, the latest first")
    @GetMapping("/vehicles/{vehicleId}/drives")
    PageAnswer<DriveAnswer> ofVehicle(
            @PathVariable UUID vehicleId,
            @RequestParam(required = false) @Nullable Integer limit,
            @RequestParam(required = false) @Nullable String cursor) {
        return PageAnswer.of(intake.ofVehicle(vehicleId, Page.Request.of(limit, cursor)), DriveAnswer::of);
    }

    @Operation(summary = "One drive")
    @GetMapping("/drives/{id}")
    ResponseEntity<DriveAnswer> get(@PathVariable UUID id) {
        Drive drive = intake.get(id);
        return ResponseEntity.ok().eTag(IfMatch.tag(drive.revision())).body(DriveAnswer.of(drive));
    }

    @Operation(
            summary = "Correct a drive: replaces what is judged, keeps the earlier original",
            requestBody =
                    @io.swagger.v3.oas.annotations.parameters.RequestBody(
                            required = true,
                            content = {
                                @Content(
                                        mediaType = Original.JSON,
                                        schema = @Schema(implementation = DriveSubmission.class)),
                                @Content(mediaType = Original.PLAIN, schema = @Schema(type = "string"))
                            }))
    @PutMapping(
            path = "/drives/{id}",
            consumes = {Original.JSON, Original.PLAIN})
    ResponseEntity<DriveAnswer> correct(
            @PathVariable UUID id,
            @RequestHeader(name = "If-Match", required = false) @Nullable String ifMatch,
            @Parameter(hidden = true) @RequestHeader(HttpHeaders.CONTENT_TYPE) MediaType contentType,
            @RequestBody(required = false) byte @Nullable [] body) {
        Received received = intake.correct(id, IfMatch.of(ifMatch), original(contentType, body));
        return ResponseEntity.ok()
                .eTag(IfMatch.tag(received.drive().revision()))
                .body(DriveAnswer.of(received));
    }

    @Operation(summary = "Leave a drive out of the count, with a reason; it stays stored, and the report names it")
    @PutMapping(path = "/drives/{id}/left-out", consumes = MediaType.APPLICATION_JSON_VALUE)
    DriveAnswer leaveOut(@PathVariable UUID id, @Valid @RequestBody LeftOutReason request) {
        return DriveAnswer.of(intake.leaveOut(id, request.reason().strip()));
    }

    @Operation(summary = "Take a drive in again that was left out")
    @DeleteMapping("/drives/{id}/left-out")
    DriveAnswer takeIn(@PathVariable UUID id) {
        return DriveAnswer.of(intake.takeIn(id));
    }

    @Operation(summary = "A submission exactly as it came; of a log with JSON beside it, part=drive is the JSON")
    @GetMapping("/drives/{id}/original")
    ResponseEntity<Resource> original(
            @PathVariable UUID id,
            @RequestParam(required = false) @Nullable Integer revision,
            @RequestParam(required = false) @Nullable String part) {
        OptionalInt wanted = revision == null ? OptionalInt.empty() : OptionalInt.of(revision);
        Optional<SentLog> log = "drive".equals(part) ? Optional.empty() : intake.log(id, wanted);
        return log.map(DriveController::original).orElseGet(() -> original(intake.original(id, wanted)));
    }

    private static ResponseEntity<Resource> original(SentLog log) {
        try {
            // a resource of a stream is read once, while the answer is written
            return ResponseEntity.ok()
                    .contentType(MediaType.parseMediaType(log.mediaType()))
                    .body(new InputStreamResource(log.bytes().getInputStream()));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static ResponseEntity<Resource> original(Original original) {
        MediaType type = MediaType.parseMediaType(original.contentType());
        return ResponseEntity.ok()
                .contentType(
                        original.contentType().equals(Original.PLAIN)
                                ? new MediaType(type, StandardCharsets.UTF_8)
                                : type)
                .body(new ByteArrayResource(original.text().getBytes(StandardCharsets.UTF_8)));
    }

    private static Original original(MediaType type, byte @Nullable [] body) {
        return new Original(
                type.getType() + "/" + type.getSubtype(), body == null ? "" : new String(body, StandardCharsets.UTF_8));
    }
}
