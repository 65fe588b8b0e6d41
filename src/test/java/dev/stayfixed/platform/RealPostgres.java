package dev.stayfixed.platform;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.annotation.Bean;
import org.testcontainers.DockerClientFactory;
import org.testcontainers.postgresql.PostgreSQLContainer;

/** PostgreSQL in a container where a container engine answers, else the same server from its Maven package. */
@TestConfiguration(proxyBeanMethods = false)
public class RealPostgres {

    private static final Logger LOG = LoggerFactory.getLogger(RealPostgres.class);

    @Bean
    JdbcConnectionDetails realPostgres() throws IOException {
        return isContainerEngineThere() ? container() : embedded();
    }

    private static boolean isContainerEngineThere() {
        try {
            return DockerClientFactory.instance().isDockerAvailable();
        } catch (RuntimeException e) {
            return false;
        }
    }

    private static JdbcConnectionDetails container() {
        PostgreSQLContainer container = new PostgreSQLContainer("postgres:18-alpine");
        container.start();
        LOG.info("PostgreSQL for the tests: container {}", container.getDockerImageName());
        return new H2InFile.Connection(container.getJdbcUrl(), container.getUsername(), container.getPassword());
    }

    private static JdbcConnectionDetails embedded() throws IOException {
        EmbeddedPostgres server = EmbeddedPostgres.builder()
                .setServerConfig("synchronous_commit", "on")
                .start();
        LOG.info(
                "PostgreSQL for the tests: embedded server on port {}, as no container engine answers",
                server.getPort());
        return new H2InFile.Connection(server.getJdbcUrl("postgres", "postgres"), "postgres", "postgres");
    }
}
