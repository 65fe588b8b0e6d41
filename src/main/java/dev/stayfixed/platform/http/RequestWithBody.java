package dev.stayfixed.platform.http;

import jakarta.servlet.ServletInputStream;
import jakarta.servlet.http.HttpServletRequest;
import java.io.BufferedReader;
import java.io.ByteArrayInputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;

/** A request with a short body of text. */
final class RequestWithBody extends ReadRequest {

    private final byte[] body;

    RequestWithBody(HttpServletRequest request, byte[] body) {
        super(request);
        this.body = body;
    }

    @Override
    void digest(MessageDigest digest) {
        digest.update(body);
    }

    @Override
    public ServletInputStream getInputStream() {
        return new ReplayedBody(new ByteArrayInputStream(body));
    }

    @Override
    public BufferedReader getReader() {
        return new BufferedReader(new InputStreamReader(new ByteArrayInputStream(body), StandardCharsets.UTF_8));
    }
}
