package dev.stayfixed.platform.http;

import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.Part;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;

/** A multipart/form-data request; the container keeps its long parts in files. */
final class RequestWithParts extends ReadRequest {

    RequestWithParts(HttpServletRequest request) {
        super(request);
    }

    /** The boundary between the parts is another one each time. */
    @Override
    String mediaType() {
        return "multipart/form-data";
    }

    @Override
    void digest(MessageDigest digest) throws IOException {
        try {
            for (Part part : getParts()) {
                String head = part.getName() + '\0' + part.getContentType() + '\0' + part.getSize() + '\0';
                digest.update(head.getBytes(StandardCharsets.UTF_8));
                try (InputStream in = part.getInputStream()) {
                    digest(in, digest);
                }
            }
        } catch (ServletException e) {
            throw new IOException(e);
        }
    }
}
