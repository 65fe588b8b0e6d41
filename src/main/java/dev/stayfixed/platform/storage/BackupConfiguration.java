package dev.stayfixed.platform.storage;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.Clock;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.sql.DataSource;
import org.springframework.boot.autoconfigure.condition.ConditionalOnBooleanProperty;
import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Who makes the copies. */
@Configuration(proxyBeanMethods = false)
class BackupConfiguration {

    private static final Pattern POSTGRESQL = Pattern.compile("jdbc:postgresql://([^/:?]*)(?::(\\d+))?/([^?]*).*");

    @Bean
    Backups backups(DataSource dataSource, Durably durably, JdbcClient jdbc, StorageSettings settings, Clock clock) {
        if (Product.of(dataSource) == Product.POSTGRESQL) {
            return NoBackups.ofServer(pgDump(dataSource));
        }
        return Product.fileOf(jdbc)
                .<Backups>map(file ->
                        new CopiedBackups(file, settings, to -> copy(durably.connections(dataSource), to), clock))
                .orElseGet(NoBackups::inMemory);
    }

    /** @throws IllegalStateException where the database is one of which no copies are made */
    @Bean
    @ConditionalOnProperty("stayfixed.backup.every")
    @ConditionalOnBooleanProperty(name = "stayfixed.background", matchIfMissing = true)
    ScheduledBackups scheduledBackups(Backups backups, StorageSettings settings, Clock clock) {
        if (backups instanceof CopiedBackups copied && settings.backup().every() != null) {
            return new ScheduledBackups(
                    copied, settings.backup().every(), settings.backup().keep(), clock);
        }
        throw new IllegalStateException("stayfixed.backup.every: found "
                + settings.backup().every() + ", expected it only with an H2 file; take it out. " + backups);
    }

    /** The turn of the writer is held from the opening of the connection to its closing. */
    private static void copy(DataSource connections, Path file) throws SQLException {
        try (Connection connection = connections.getConnection();
                PreparedStatement sync = connection.prepareStatement("checkpoint sync");
                PreparedStatement backup = connection.prepareStatement("backup to ?")) {
            sync.execute();
            backup.setString(1, file.toString());
            backup.execute();
        }
    }

    private static String pgDump(DataSource dataSource) {
        try (Connection connection = dataSource.getConnection()) {
            Matcher url = POSTGRESQL.matcher(connection.getMetaData().getURL());
            String place = url.matches()
                    ? "--host=%s --port=%s --dbname=%s"
                            .formatted(url.group(1), url.group(2) == null ? "5432" : url.group(2), url.group(3))
                    : "--dbname=...";
            return "pg_dump --format=custom --file=stayfixed.dump " + place + " --username="
                    + connection.getMetaData().getUserName();
        } catch (SQLException e) {
            throw new IllegalStateException("the database does not answer: " + e.getMessage(), e);
        }
    }
}
