package dev.stayfixed.customer;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.HexFormat;

/** 144 random bits in 24 characters of base64url; kept only as SHA-256, which is enough for a secret that cannot be guessed. */
final class Token {

    private static final SecureRandom RANDOM = new SecureRandom();
    private static final int BYTES = 18;
    private static final String FORM = "[A-Za-z0-9_-]{24}";

    private Token() {}

    static String make() {
        byte[] bytes = new byte[BYTES];
        RANDOM.nextBytes(bytes);
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    }

    static boolean hasForm(String text) {
        return text.matches(FORM);
    }

    static String hash(String token) {
        try {
            MessageDigest sha = MessageDigest.getInstance("SHA-256");
            return HexFormat.of().formatHex(sha.digest(token.getBytes(StandardCharsets.US_ASCII)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java runtime has SHA-256", e);
        }
    }
}
