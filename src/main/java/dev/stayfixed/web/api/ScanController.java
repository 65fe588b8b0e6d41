package dev.stayfixed.web.api;

import dev.stayfixed.obd.Scan;
import dev.stayfixed.platform.PlainText;
import dev.stayfixed.platform.problem.Mistake;
import dev.stayfixed.platform.problem.Refused;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import org.jspecify.annotations.Nullable;
import org.springframework.http.MediaType;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

@Tag(name = "Scans", description = "Try a scan without storing it")
@RestController
@RequestMapping(Link.BASE + "/scans")
class ScanController {

    /** A scan in JSON. */
    record ScanRequest(
            @NotBlank(message = "the answers of the control units, one message a line")
            @Size(max = 1_000_000, message = "at most 1000000 characters")
            String text) {}

    @Operation(summary = "Read a scan: what was understood, line by line")
    @PostMapping(consumes = MediaType.APPLICATION_JSON_VALUE)
    ScanAnswer read(@Valid @RequestBody ScanRequest request) {
        return ScanAnswer.of(Scan.read(request.text()));
    }

    @Operation(summary = "Read a scan sent as plain text")
    @PostMapping(consumes = MediaType.TEXT_PLAIN_VALUE)
    ScanAnswer read(@RequestBody(required = false) @Nullable String text) {
        if (text == null || text.isBlank()) {
            throw Refused.content(new Mistake("", null, "the answers of the control units, one message a line"));
        }
        PlainText.flaw(text).ifPresent(flaw -> {
            throw Refused.content(new Mistake("", flaw, "text without control characters"));
        });
        return ScanAnswer.of(Scan.read(text));
    }
}
