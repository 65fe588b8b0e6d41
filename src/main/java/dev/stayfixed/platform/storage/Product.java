package dev.stayfixed.platform.storage;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Optional;
import javax.sql.DataSource;
import org.springframework.jdbc.core.simple.JdbcClient;

/** The databases that this service runs on. */
enum Product {
    H2,
    POSTGRESQL;

    static Product of(DataSource dataSource) {
        try (Connection connection = dataSource.getConnection()) {
            String name = connection.getMetaData().getDatabaseProductName();
            return switch (name) {
                case "H2" -> H2;
                case "PostgreSQL" -> POSTGRESQL;
                default ->
                    throw new IllegalStateException("found the database " + name + ", expected H2 or PostgreSQL");
            };
        } catch (SQLException e) {
            throw new IllegalStateException("the database does not answer: " + e.getMessage(), e);
        }
    }

    /** The file of an H2; empty where it is kept in memory. */
    static Optional<Path> fileOf(JdbcClient h2) {
        return h2.sql("select database_path() where database_path() is not null")
                .query(String.class)
                .optional()
                .map(path -> Path.of(path + ".mv.db"));
    }
}
