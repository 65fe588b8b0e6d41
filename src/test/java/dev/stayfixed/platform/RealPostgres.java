package dev.stayfixed.platform;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.annotation.Bean;
import org.testcontainers.DockerClientFactory;
import org.testcontainers.postgresql.PostgreSQLContainer;

/**
 * PostgreSQL in a container where a container engine answers, else the same server from its Maven package. The server is one for all
 * tests and ends with their process; every context of the service has a database of its own.
 */
@TestConfiguration(proxyBeanMethods = false)
public class RealPostgres {

    private static final Logger LOG = LoggerFactory.getLogger(RealPostgres.class);
    private static final Duration START = Duration.ofMinutes(3);

    private static final AtomicInteger DATABASES = new AtomicInteger();
    private static @Nullable UnaryOperator<String> server;

    @Bean
    JdbcConnectionDetails realPostgres() throws IOException, SQLException {
        return emptyDatabase();
    }

    /** One in which there is nothing yet. */
    public static JdbcConnectionDetails emptyDatabase() throws IOException, SQLException {
        UnaryOperator<String> running = server();
        String database = "stayfixed_" + DATABASES.incrementAndGet();
        try (Connection connection = DriverManager.getConnection(running.apply("postgres"), "postgres", "postgres");
                Statement statement = connection.createStatement()) {
            statement.execute("create database " + database);
        }
        return new H2InFile.Connection(running.apply(database), "postgres", "postgres");
    }

    /** From the name of a database to its address. */
    private static synchronized UnaryOperator<String> server() throws IOException {
        UnaryOperator<String> running = server;
        if (running == null) {
            running = isContainerEngineThere() ? container() : embedded();
            server = running;
        }
        return running;
    }

    private static boolean isContainerEngineThere() {
        try {
            return DockerClientFactory.instance().isDockerAvailable();
        } catch (RuntimeException e) {
            return false;
        }
    }

    private static UnaryOperator<String> container() {
        PostgreSQLContainer container = new PostgreSQLContainer("postgres:18-alpine")
                .withUsername("postgres")
                .withPassword("postgres")
                .withStartupTimeout(START);
        container.start();
        LOG.info("PostgreSQL for the tests: container {}", container.getDockerImageName());
        String address = "jdbc:postgresql://" + container.getHost() + ":"
                + container.getMappedPort(PostgreSQLContainer.POSTGRESQL_PORT) + "/";
        return address::concat;
    }

    private static UnaryOperator<String> embedded() throws IOException {
        EmbeddedPostgres embedded = EmbeddedPostgres.builder()
                .setServerConfig("synchronous_commit", "on")
                .setPGStartupWait(START)
                .start();
        LOG.info(
                "PostgreSQL for the tests: embedded server on port {}, as no container engine answers",
                embedded.getPort());
        return database -> embedded.getJdbcUrl("postgres", database);
    }
}
