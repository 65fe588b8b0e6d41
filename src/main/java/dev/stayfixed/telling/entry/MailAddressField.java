package dev.stayfixed.telling.entry;

import dev.stayfixed.platform.Given;
import dev.stayfixed.platform.problem.Mistake;
import dev.stayfixed.platform.problem.Refused;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Reads a mail address, by the rule of {@link dev.stayfixed.telling.MailAddress}. */
public final class MailAddressField {

    private MailAddressField() {}

    /** The address; where it is none, a refusal that names its path. */
    public static Optional<String> optional(String path, @Nullable String text) {
        Optional<String> address = Given.optional(text);
        address.flatMap(dev.stayfixed.telling.MailAddress::flaw).ifPresent(expected -> {
            throw Refused.content(new Mistake(path, address.get(), expected));
        });
        return address;
    }
}
