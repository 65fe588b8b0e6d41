package dev.stayfixed.platform.http;

import dev.stayfixed.platform.Sha256;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;

/**
 * The name that a client gives to a request, and a fingerprint of what it asks for.
 *
 * @param name 1 to 255 printable ASCII characters, without quotes around it
 * @param fingerprint SHA-256 of method, address, media type and body, in hex
 */
record IdempotencyKey(String name, String fingerprint) {

    static final String HEADER = "Idempotency-Key";

    static IdempotencyKey of(ReadRequest request) throws IOException {
        String header = request.getHeader(HEADER).strip();
        String name = header.length() >= 2 && header.startsWith("\"") && header.endsWith("\"")
                ? header.substring(1, header.length() - 1)
                : header;
        if (!name.matches("[\\x20-\\x7E]{1,255}") || name.isBlank()) {
            throw new Refused(
                    ProblemType.INVALID_PARAMETER,
                    "Idempotency-Key: found " + name.length()
                            + " characters, expected 1 to 255 printable ASCII characters");
        }
        return new IdempotencyKey(name, fingerprint(request));
    }

    private static String fingerprint(ReadRequest request) throws IOException {
        MessageDigest digest = Sha256.begin();
        for (String part : new String[] {
            request.getMethod(), request.getRequestURI(), request.getQueryString(), request.mediaType()
        }) {
            digest.update(String.valueOf(part).getBytes(StandardCharsets.UTF_8));
            digest.update((byte) 0);
        }
        request.digest(digest);
        return Sha256.hex(digest, new byte[0]);
    }
}
