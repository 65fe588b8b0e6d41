package dev.stayfixed.platform.storage;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.DriverManagerDataSource;

/** The disks that are watched: that of the database's file where it has one. */
class FreeSpaceTest {

    @TempDir
    Path folder;

    private long freeAt(String url) throws IOException {
        DataSource database = new DriverManagerDataSource(url);
        try (InstanceFolder instance = InstanceFolder.in(folder)) {
            return new StorageConfiguration()
                    .freeSpace(database, JdbcClient.create(database), instance)
                    .bytes();
        }
    }

    @Test
    void aDatabaseInAFileIsWatched() throws IOException {
        assertThat(freeAt("jdbc:h2:file:" + folder.resolve("shop"))).isPositive();
    }

    @ParameterizedTest
    @ValueSource(strings = {"jdbc:h2:mem:", "jdbc:h2:mem:named"})
    void aDatabaseInMemoryHasNoFile(String url) throws IOException {
        assertThat(freeAt(url)).isPositive();
    }
}
