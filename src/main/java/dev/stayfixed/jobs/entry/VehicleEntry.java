package dev.stayfixed.jobs.entry;

import dev.stayfixed.jobs.Vehicle;
import dev.stayfixed.obd.Ignition;
import dev.stayfixed.obd.Vin;
import dev.stayfixed.platform.Given;
import io.swagger.v3.oas.annotations.media.Schema;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;

/**
 * A vehicle as the shop describes it.
 *
 * @param ignition SPARK if missing
 */
@Schema(name = "VehicleRequest")
public record VehicleEntry(
        @Nullable @Size(max = 40, message = "17 characters, or nothing")
        String vin,

        @Nullable @Size(max = 20, message = "at most {max} characters")
        String plate,

        @NotBlank(message = "what the vehicle is, in a few words")
        @Size(max = 200, message = "at most {max} characters")
        String description,

        @Nullable
        @Min(value = 1900, message = "a year from 1900 to 2100")
        @Max(value = 2100, message = "a year from 1900 to 2100")
        Integer modelYear,

        @Nullable Ignition ignition) {

    public Vehicle.Details details() {
        return new Vehicle.Details(
                Given.optional(vin).map(text -> Given.parse("vin", text, Vin::parse)),
                Given.optional(plate),
                description.strip(),
                modelYear == null ? OptionalInt.empty() : OptionalInt.of(modelYear),
                ignition == null ? Ignition.SPARK : ignition);
    }
}
