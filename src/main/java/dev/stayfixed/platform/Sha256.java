package dev.stayfixed.platform;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** SHA-256, in 64 hexadecimal digits. */
public final class Sha256 {

    private Sha256() {}

    public static String hex(byte[] content) {
        return hex(begin(), content);
    }

    /** Of the text in UTF-8. */
    public static String hex(String text) {
        return hex(text.getBytes(StandardCharsets.UTF_8));
    }

    /** Of what the digest has been given so far, and this. */
    public static String hex(MessageDigest digest, byte[] last) {
        return HexFormat.of().formatHex(digest.digest(last));
    }

    /** For content that comes in pieces. */
    public static MessageDigest begin() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java runtime has SHA-256", e);
        }
    }
}
