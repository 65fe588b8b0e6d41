package dev.stayfixed.platform.storage;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.context.properties.ConfigurationProperties;

/**
 * The key that stays outside the database.
 *
 * @param secretKey 32 random bytes in base 64, for instances that share a database
 * @param secretKeyFile where it is kept, and made at the first start, if it is not given
 */
@ConfigurationProperties("stayfixed")
record SealSettings(@Nullable String secretKey, Path secretKeyFile) {

    @Override
    public String toString() {
        return "the key in " + (secretKey == null || secretKey.isBlank() ? secretKeyFile : "stayfixed.secret-key");
    }
}
