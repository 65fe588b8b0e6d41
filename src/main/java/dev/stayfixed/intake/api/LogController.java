package dev.stayfixed.intake.api;

import dev.stayfixed.archive.DriveSubmission;
import dev.stayfixed.archive.RecordedSignals;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.intake.Drive;
import dev.stayfixed.intake.Intake;
import dev.stayfixed.intake.LogMappings;
import dev.stayfixed.intake.LogProposal;
import dev.stayfixed.intake.Logs;
import dev.stayfixed.intake.Received;
import dev.stayfixed.judging.api.ConditionsAnswer;
import dev.stayfixed.platform.IfMatch;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.web.api.Link;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/** Drives that were recorded as logs of signals. */
@Tag(name = "Logs", description = "Recorded drives: CSV, plain, gzip or zip")
@RestController
@RequestMapping(Link.BASE)
class LogController {

    private static final int MOST_POINTS = 20_000;

    private final Logs logs;
    private final LogMappings mappings;
    private final Intake intake;
    private final RecordedSignals signals;

    LogController(Logs logs, LogMappings mappings, Intake intake, RecordedSignals signals) {
        this.logs = logs;
        this.mappings = mappings;
        this.intake = intake;
        this.signals = signals;
    }

    @Operation(
            summary = "Send a drive as a log; as a form it may come with JSON beside it",
            requestBody =
                    @io.swagger.v3.oas.annotations.parameters.RequestBody(
                            required = true,
                            content = {
                                @Content(mediaType = LogRequest.CSV, schema = @Schema(type = "string")),
                                @Content(
                                        mediaType = LogRequest.GZIP,
                                        schema = @Schema(type = "string", format = "binary")),
                                @Content(
                                        mediaType = LogRequest.ZIP,
                                        schema = @Schema(type = "string", format = "binary")),
                                @Content(
                                        mediaType = MediaType.MULTIPART_FORM_DATA_VALUE,
                                        schema = @Schema(implementation = LogForm.class))
                            }))
    @ApiResponse(responseCode = "201", description = "Created; Location names it", useReturnTypeSchema = true)
    @PostMapping(
            path = "/vehicles/{vehicleId}/drives",
            consumes = {
                LogRequest.CSV,
                LogRequest.GZIP,
                LogRequest.X_GZIP,
                LogRequest.ZIP,
                LogRequest.X_ZIP,
                MediaType.MULTIPART_FORM_DATA_VALUE
            })
    ResponseEntity<DriveAnswer> receiveLog(@PathVariable UUID vehicleId, HttpServletRequest request)
            throws IOException, ServletException {
        LogRequest sent = LogRequest.of(request);
        return DriveAnswer.received(logs.receive(vehicleId, sent.log(), sent.said()));
    }

    @Operation(summary = "Correct a drive by a log")
    @PutMapping(
            path = "/drives/{id}",
            consumes = {
                LogRequest.CSV,
                LogRequest.GZIP,
                LogRequest.X_GZIP,
                LogRequest.ZIP,
                LogRequest.X_ZIP,
                MediaType.MULTIPART_FORM_DATA_VALUE
            })
    ResponseEntity<DriveAnswer> correctByLog(
            @PathVariable UUID id,
            @RequestHeader(name = "If-Match", required = false) @Nullable String ifMatch,
            HttpServletRequest request)
            throws IOException, ServletException {
        LogRequest sent = LogRequest.of(request);
        Received received = logs.correct(id, IfMatch.of(ifMatch), sent.log(), sent.said());
        return ResponseEntity.ok()
                .eTag(IfMatch.tag(received.drive().revision()))
                .body(DriveAnswer.of(received));
    }

    @Operation(summary = "How a log would be read, without storing it")
    @PostMapping(
            path = "/logs/proposals",
            consumes = {
                LogRequest.CSV,
                LogRequest.GZIP,
                LogRequest.X_GZIP,
                LogRequest.ZIP,
                LogRequest.X_ZIP,
                MediaType.MULTIPART_FORM_DATA_VALUE
            })
    LogProposal propose(HttpServletRequest request) throws IOException, ServletException {
        return mappings.propose(LogRequest.of(request).log());
    }

    @Operation(summary = "The signals of a recorded drive for a picture: lowest and highest of each stretch of time")
    @GetMapping("/drives/{id}/signals")
    SignalsAnswer signals(
            @PathVariable UUID id,
            @RequestParam(defaultValue = "2000") Integer points,
            @RequestParam(name = "signals", required = false) @Nullable List<Signal> wanted) {
        if (points < 2 || points > MOST_POINTS) {
            throw new Refused(
                    ProblemType.INVALID_PARAMETER, "points: found " + points + ", expected 2 to " + MOST_POINTS);
        }
        return SignalsAnswer.of(signals.series(id, wanted == null ? Set.of() : Set.copyOf(wanted), points));
    }

    @Operation(
            summary = "What a recorded drive made of the conditions of each fault, with the times at which they held")
    @GetMapping("/drives/{id}/conditions")
    ConditionsAnswer.OfDrive conditions(@PathVariable UUID id) {
        Drive drive = intake.get(id);
        return new ConditionsAnswer.OfDrive(
                drive.id(),
                drive.log().map(log -> log.firstRow()).orElse(null),
                drive.conditions().stream().map(ConditionsAnswer.Report::of).toList());
    }

    /** The parts of a form. */
    record LogForm(
            @Schema(type = "string", format = "binary") String file,
            @Nullable DriveSubmission drive) {}
}
