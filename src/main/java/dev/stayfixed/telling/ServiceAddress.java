package dev.stayfixed.telling;

import dev.stayfixed.platform.http.PublicUrl;
import java.net.URI;
import org.springframework.core.env.Environment;
import org.springframework.stereotype.Component;

/** Under which address others reach this service: for what leaves it without a request that could tell. */
@Component
public class ServiceAddress {

    private final String base;

    ServiceAddress(PublicUrl publicUrl, Environment environment) {
        this.base = publicUrl
                .stated()
                .orElseGet(() -> "http://localhost:" + environment.getProperty("server.port", "8080"));
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
