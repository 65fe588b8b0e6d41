package dev.stayfixed.platform.http;

import java.util.Optional;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * Under which address others reach the service, as its operator states it.
 *
 * @param publicUrl empty where nothing was stated
 */
@ConfigurationProperties("stayfixed")
public record PublicUrl(@DefaultValue("") String publicUrl) {

    /** Without a slash at the end. */
    public Optional<String> stated() {
        String base = publicUrl.strip().replaceAll("/+$", "");
        return base.isEmpty() ? Optional.empty() : Optional.of(base);
    }
}
