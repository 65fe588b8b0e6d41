package dev.stayfixed.platform;

import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.DriverManagerDataSource;

/** The database as the user of the settings sees it, past the fences between shops. */
public final class AllRows {

    private AllRows() {}

    public static JdbcClient of(JdbcConnectionDetails database) {
        return JdbcClient.create(new DriverManagerDataSource(
                database.getJdbcUrl(), String.valueOf(database.getUsername()), String.valueOf(database.getPassword())));
    }
}
