package dev.stayfixed.people.entry;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;

/** A password that was chosen; pages only. Its length is all that is asked of it (NIST SP 800-63B section 3.1.1.2, from memory). */
public record NewPassword(
        @NotBlank @Size(min = SHORTEST, max = LONGEST) String password) {

    public static final int SHORTEST = 12;
    public static final int LONGEST = 200;
}
