package dev.stayfixed.platform.http;

import jakarta.servlet.ServletInputStream;
import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;

/** A request whose body is too long to be kept in memory: it lies in a file of its own. */
final class RequestWithFile extends ReadRequest {

    private final Path file;

    RequestWithFile(HttpServletRequest request, Path file) {
        super(request);
        this.file = file;
    }

    @Override
    void digest(MessageDigest digest) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            digest(in, digest);
        }
    }

    @Override
    public ServletInputStream getInputStream() throws IOException {
        return new ReplayedBody(Files.newInputStream(file));
    }
}
