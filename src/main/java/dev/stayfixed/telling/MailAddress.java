package dev.stayfixed.telling;

import jakarta.mail.internet.AddressException;
import jakarta.mail.internet.InternetAddress;
import java.util.Optional;

/** One plain mail address, in ASCII, as RFC 5321 wants it: nothing that could name a second receiver or another header. */
public final class MailAddress {

    private static final String EXPECTED = "one mail address, such as name@example.org, of at most 254 characters";

    private MailAddress() {}

    /** What is expected instead; empty where it is an address. */
    public static Optional<String> flaw(String address) {
        if (address.length() > 254 || !address.matches("[!-~&&[^<>()\\[\\],;:\"\\\\]]+@[A-Za-z0-9.-]+")) {
            return Optional.of(EXPECTED);
        }
        try {
            new InternetAddress(address, true).validate();
            return Optional.empty();
        } catch (AddressException e) {
            return Optional.of(EXPECTED + " (" + e.getMessage() + ")");
        }
    }
}
