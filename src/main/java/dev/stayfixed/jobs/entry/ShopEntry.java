package dev.stayfixed.jobs.entry;

import dev.stayfixed.jobs.ShopSettings;
import dev.stayfixed.platform.problem.Mistake;
import dev.stayfixed.platform.problem.Refused;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.DateTimeException;
import java.time.ZoneId;

/**
 * How a shop writes things; pages only.
 *
 * @param zone the name of a time zone, such as Europe/Berlin
 */
public record ShopEntry(
        @NotBlank @Size(max = ShopSettings.LONGEST_NAME) String name,

        @NotBlank String zone,

        @NotNull ShopSettings.Units units,

        @NotNull @Min(1) @Max(ShopSettings.MOST_STALL_DAYS) Integer stallDays) {

    public ShopSettings settings() {
        try {
            return new ShopSettings(name.strip(), ZoneId.of(zone.strip()), units, stallDays);
        } catch (DateTimeException e) {
            throw Refused.content(
                    new Mistake("zone", zone, "the name of a time zone, such as Europe/Berlin or America/Chicago"));
        }
    }
}
