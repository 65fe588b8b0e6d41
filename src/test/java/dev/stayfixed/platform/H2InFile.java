package dev.stayfixed.platform;

import java.io.IOException;
import java.nio.file.Files;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.annotation.Bean;

/** An H2 file database in a folder of its own, with the settings of production. */
@TestConfiguration(proxyBeanMethods = false)
class H2InFile {

    static String url(String file) {
        return "jdbc:h2:file:" + file + ";WRITE_DELAY=0;DB_CLOSE_ON_EXIT=FALSE;MODE=PostgreSQL";
    }

    @Bean
    JdbcConnectionDetails h2InFile() throws IOException {
        String url =
                url(Files.createTempDirectory("stayfixed").resolve("stayfixed").toString());
        return new Connection(url, "stayfixed", "");
    }

    /** Where a database is. */
    record Connection(String url, String user, String secret) implements JdbcConnectionDetails {
        @Override
        public String getUsername() {
            return user;
        }

        @Override
        public String getPassword() {
            return secret;
        }

        @Override
        public String getJdbcUrl() {
            return url;
        }
    }
}
