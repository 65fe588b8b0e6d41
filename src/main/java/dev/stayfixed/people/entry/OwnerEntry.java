package dev.stayfixed.people.entry;

import jakarta.validation.constraints.Email;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;

/**
 * The first owner of a service; pages only.
 *
 * @param code of the log of the start; blank at the machine of the service
 */
public record OwnerEntry(
        String code,

        @NotBlank @Size(max = 100) String name,

        @NotBlank @Email @Size(max = 254) String mail,

        @NotBlank @Size(min = NewPassword.SHORTEST, max = NewPassword.LONGEST)
        String password) {}
