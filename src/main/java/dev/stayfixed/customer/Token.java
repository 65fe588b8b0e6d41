package dev.stayfixed.customer;

import dev.stayfixed.platform.Secret;
import dev.stayfixed.platform.Sha256;

/** 144 random bits in 24 characters of base64url; kept only as SHA-256, which is enough for a secret that cannot be guessed. */
final class Token {

    private static final int BYTES = 18;
    private static final String FORM = "[A-Za-z0-9_-]{24}";

    private Token() {}

    static String make() {
        return Secret.forAddress(BYTES);
    }

    static boolean hasForm(String text) {
        return text.matches(FORM);
    }

    static String hash(String token) {
        return Sha256.hex(token);
    }
}
