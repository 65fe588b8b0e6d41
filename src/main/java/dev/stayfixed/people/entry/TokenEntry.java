package dev.stayfixed.people.entry;

import dev.stayfixed.people.Scope;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;

/**
 * A token that is to be made; pages only.
 *
 * @param days until it runs out
 */
public record TokenEntry(
        @NotBlank @Size(max = 100) String name,

        @NotNull Scope scope,

        @NotNull @Min(1) @Max(366) Integer days) {}
