package dev.stayfixed.platform;

/** The secret of a link: 144 random bits in 24 characters of base64url; kept only as SHA-256, which is enough for a secret that cannot be guessed. */
public final class LinkToken {

    private static final int BYTES = 18;
    private static final String FORM = "[A-Za-z0-9_-]{24}";

    private LinkToken() {}

    public static String make() {
        return Secret.forAddress(BYTES);
    }

    public static boolean hasForm(String text) {
        return text.matches(FORM);
    }

    public static String hash(String token) {
        return Sha256.hex(token);
    }
}
