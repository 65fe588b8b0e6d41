package dev.stayfixed.intake.api;

import dev.stayfixed.intake.LogMappings;
import dev.stayfixed.intake.SavedMapping;
import dev.stayfixed.intake.entry.LogMappingEntry;
import dev.stayfixed.platform.IfMatch;
import dev.stayfixed.web.api.Link;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.validation.Valid;
import java.net.URI;
import java.util.List;
import java.util.UUID;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

@Tag(name = "Log mappings", description = "How logs with headers of their own are read, confirmed once")
@RestController
@RequestMapping(Link.BASE + "/log-mappings")
class LogMappingController {

    private final LogMappings mappings;

    LogMappingController(LogMappings mappings) {
        this.mappings = mappings;
    }

    @Operation(summary = "Save a confirmed mapping; logs with these headers are read by it from now on")
    @ApiResponse(responseCode = "201", description = "Created; Location names it", useReturnTypeSchema = true)
    @PostMapping
    ResponseEntity<SavedMapping> save(@Valid @RequestBody LogMappingEntry request) {
        SavedMapping saved = mappings.save(request.name(), request.headers(), request.mapping(), request.vehicleId());
        return ResponseEntity.created(
                        URI.create(Link.to("log-mappings", saved.id()).href()))
                .eTag(IfMatch.tag(1))
                .body(saved);
    }

    @Operation(summary = "All saved mappings by name")
    @GetMapping
    List<SavedMapping> all() {
        return mappings.all();
    }

    @Operation(summary = "One mapping")
    @GetMapping("/{id}")
    ResponseEntity<SavedMapping> get(@PathVariable UUID id) {
        return ResponseEntity.ok().eTag(IfMatch.tag(1)).body(mappings.get(id));
    }

    @Operation(summary = "Forget a mapping; drives that were read by it stay as they are")
    @ApiResponse(responseCode = "204", description = "Forgotten")
    @DeleteMapping("/{id}")
    @ResponseStatus(HttpStatus.NO_CONTENT)
    void delete(@PathVariable UUID id) {
        mappings.delete(id);
    }
}
