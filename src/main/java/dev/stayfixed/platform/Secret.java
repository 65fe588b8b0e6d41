package dev.stayfixed.platform;

import java.security.SecureRandom;
import java.util.Base64;

/** What nobody can guess. */
public final class Secret {

    private static final SecureRandom RANDOM = new SecureRandom();

    private Secret() {}

    public static byte[] bytes(int count) {
        byte[] bytes = new byte[count];
        RANDOM.nextBytes(bytes);
        return bytes;
    }

    /** So many random bytes as text that may stand in an address: base64url without padding. */
    public static String forAddress(int bytes) {
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes(bytes));
    }
}
