package dev.stayfixed.people.entry;

import dev.stayfixed.people.Role;
import jakarta.validation.constraints.Email;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;

/** Somebody who is to become a member of a shop; pages only. */
public record InvitationEntry(
        @NotBlank @Size(max = 100) String name,

        @NotBlank @Email @Size(max = 254) String mail,

        @NotNull Role role) {}
