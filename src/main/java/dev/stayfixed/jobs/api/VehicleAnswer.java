package dev.stayfixed.jobs.api;

import com.fasterxml.jackson.annotation.JsonProperty;
import dev.stayfixed.jobs.Vehicle;
import dev.stayfixed.obd.Ignition;
import dev.stayfixed.obd.Vin;
import dev.stayfixed.web.api.Link;
import dev.stayfixed.web.api.ReasonAnswer;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A vehicle.
 *
 * @param vinWarning the check digit does not agree; European numbers need none; {@code vinWarningFacts} says it for machines
 */
record VehicleAnswer(
        UUID id,
        @Nullable String vin,
        @Nullable String vinWarning,
        @Nullable ReasonAnswer vinWarningFacts,
        @Nullable String plate,
        String description,
        @Nullable Integer modelYear,
        Ignition ignition,
        @JsonProperty("_links") Map<String, Link> links) {

    static VehicleAnswer of(Vehicle vehicle) {
        Vehicle.Details details = vehicle.details();
        return new VehicleAnswer(
                vehicle.id(),
                details.vin().map(Vin::text).orElse(null),
                ReasonAnswer.text(details.vin().flatMap(Vin::warning)),
                ReasonAnswer.of(details.vin().flatMap(Vin::warning)),
                details.plate().orElse(null),
                details.description(),
                details.modelYear().isPresent() ? details.modelYear().getAsInt() : null,
                details.ignition(),
                Map.of(
                        "self", Link.to("vehicles", vehicle.id()),
                        "drives", Link.to("vehicles", vehicle.id(), "drives")));
    }
}
