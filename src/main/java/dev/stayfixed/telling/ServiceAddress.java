package dev.stayfixed.telling;

import java.net.URI;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;

/** Under which address others reach this service: for what leaves it without a request that could tell. */
@Component
public class ServiceAddress {

    private final String base;

    ServiceAddress(@Value("${stayfixed.public-url:}") String publicUrl, @Value("${server.port:8080}") int port) {
        String stated = publicUrl.strip().replaceAll("/+$", "");
        this.base = stated.isEmpty() ? "http://localhost:" + port : stated;
    }

    /**
     * The address of something in it.
     *
     * @param path beginning with a slash
     */
    public URI of(String path) {
        return URI.create(base + path);
    }
}
