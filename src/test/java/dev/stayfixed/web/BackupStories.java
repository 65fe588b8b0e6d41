package dev.stayfixed.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.util.FileSystemUtils;

/** A copy of the running service, where it makes one, and what it says where it does not. */
abstract class BackupStories extends OverHttp {

    private static final String BACKUPS = "/api/v1/backups";
    private static final Path FOLDER = Path.of("target", "backups");

    @Autowired
    JdbcConnectionDetails database;

    @Test
    void anH2FileIsCopiedAndAPostgresqlNamesItsCommand() throws IOException {
        FileSystemUtils.deleteRecursively(FOLDER);
        if (database.getJdbcUrl().startsWith("jdbc:h2:")) {
            String key = UUID.randomUUID().toString();
            Answer backup = client.post(BACKUPS, "{}", "Idempotency-Key", key).is(201);
            assertThat(FOLDER.resolve(backup.at("/name")))
                    .hasSize(backup.json().at("/bytes").asLong());
            assertThat(FOLDER.resolve(backup.at("/name") + ".sha256"))
                    .hasContent(backup.at("/sha256") + "  " + backup.at("/name"));
            assertThat(client.post(BACKUPS, "{}", "Idempotency-Key", key)
                            .is(201)
                            .at("/name"))
                    .isEqualTo(backup.at("/name"));
            assertThat(FOLDER).isDirectoryNotContaining("glob:**.part");
        } else {
            assertThat(client.post(BACKUPS, "{}").isProblem(409, "no-backup").at("/detail"))
                    .contains("pg_dump --format=custom --file=stayfixed.dump --host=", "--username=");
        }
    }

    @Test
    void aFolderThatIsNoneIsSaid() throws IOException {
        FileSystemUtils.deleteRecursively(FOLDER);
        Files.createDirectories(FOLDER.toAbsolutePath().getParent());
        Files.writeString(FOLDER, "a file stands in the way");
        try {
            client.post(BACKUPS, "{}").isProblem(409, "no-backup");
        } finally {
            Files.delete(FOLDER);
        }
    }

    @Test
    void aPageOfAnotherSiteCannotAskForOne() {
        client.postText(BACKUPS, "{}").isProblem(415, "unsupported-media-type");
        client.post(BACKUPS, "{\"to\":\"/etc\"}").isProblem(422, "invalid-content");
    }
}
