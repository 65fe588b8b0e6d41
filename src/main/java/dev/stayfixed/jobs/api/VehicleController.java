package dev.stayfixed.jobs.api;

import dev.stayfixed.jobs.Vehicle;
import dev.stayfixed.jobs.Vehicles;
import dev.stayfixed.jobs.entry.VehicleEntry;
import dev.stayfixed.platform.IfMatch;
import dev.stayfixed.platform.Page;
import dev.stayfixed.web.api.Link;
import dev.stayfixed.web.api.PageAnswer;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.validation.Valid;
import java.net.URI;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

@Tag(name = "Vehicles")
@RestController
@RequestMapping(Link.BASE + "/vehicles")
class VehicleController {

    private final Vehicles vehicles;

    VehicleController(Vehicles vehicles) {
        this.vehicles = vehicles;
    }

    @Operation(summary = "Register a vehicle")
    @ApiResponse(responseCode = "201", description = "Created; Location names it", useReturnTypeSchema = true)
    @PostMapping
    ResponseEntity<VehicleAnswer> register(@Valid @RequestBody VehicleEntry request) {
        Vehicle vehicle = vehicles.register(request.details());
        return ResponseEntity.created(
                        URI.create(Link.to("vehicles", vehicle.id()).href()))
                .eTag(IfMatch.tag(vehicle.version()))
                .body(VehicleAnswer.of(vehicle));
    }

    @Operation(summary = "Find vehicles by a part of description, plate or VIN")
    @GetMapping
    PageAnswer<VehicleAnswer> search(
            @RequestParam(required = false) @Nullable String q,
            @RequestParam(required = false) @Nullable Integer limit,
            @RequestParam(required = false) @Nullable String cursor) {
        return PageAnswer.of(vehicles.search(q, Page.Request.of(limit, cursor)), VehicleAnswer::of);
    }

    @Operation(summary = "One vehicle")
    @GetMapping("/{id}")
    ResponseEntity<VehicleAnswer> get(@PathVariable UUID id) {
        return answer(vehicles.get(id));
    }

    @Operation(summary = "Change what is said of a vehicle")
    @PutMapping("/{id}")
    ResponseEntity<VehicleAnswer> revise(
            @PathVariable UUID id,
            @RequestHeader(name = "If-Match", required = false) @Nullable String ifMatch,
            @Valid @RequestBody VehicleEntry request) {
        return answer(vehicles.revise(id, IfMatch.of(ifMatch), request.details()));
    }

    private static ResponseEntity<VehicleAnswer> answer(Vehicle vehicle) {
        return ResponseEntity.ok().eTag(IfMatch.tag(vehicle.version())).body(VehicleAnswer.of(vehicle));
    }
}
