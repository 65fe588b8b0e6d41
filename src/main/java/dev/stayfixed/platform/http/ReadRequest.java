package dev.stayfixed.platform.http;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletRequestWrapper;
import java.io.IOException;
import java.io.InputStream;
import java.security.MessageDigest;

/** A request whose body was already read, and can be read again as often as wanted. */
abstract class ReadRequest extends HttpServletRequestWrapper {

    ReadRequest(HttpServletRequest request) {
        super(request);
    }

    /** Adds all that the body says to a digest. */
    abstract void digest(MessageDigest digest) throws IOException;

    /** What the body is; the same for two requests that say the same. */
    String mediaType() {
        return String.valueOf(getContentType());
    }

    static void digest(InputStream in, MessageDigest digest) throws IOException {
        byte[] buffer = new byte[1 << 16];
        for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
            digest.update(buffer, 0, n);
        }
    }
}
