package dev.stayfixed.platform.storage;

import dev.stayfixed.platform.problem.FullDisk;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.jdbc.UncategorizedSQLException;

/** Backups of an H2 file, which no other program can read while the service runs. */
final class CopiedBackups implements Backups {

    private static final Logger LOG = LoggerFactory.getLogger(CopiedBackups.class);

    /** No copy is in work for so long. */
    private static final Duration LONG_AGO = Duration.ofDays(1);

    private final Path database;
    private final StorageSettings settings;
    private final Copy copy;
    private final Clock clock;

    /** Writes a copy of the database into an empty file. */
    @FunctionalInterface
    interface Copy {
        void into(Path file) throws SQLException, IOException;
    }

    /** @param database its file, which ends in .mv.db */
    CopiedBackups(Path database, StorageSettings settings, Copy copy, Clock clock) {
        this.database = database;
        this.settings = settings;
        this.copy = copy;
        this.clock = clock;
    }

    /** Makes the folder, where it is missing. */
    BackupFolder folder() {
        return BackupFolder.at(
                settings.backup().folder(), database.getFileName().toString().replace(".mv.db", ""));
    }

    @Override
    public Backup take(By by) {
        BackupFolder folder = folder();
        try {
            Instant moment = clock.instant();
            folder.tidy(moment.minus(LONG_AGO));
            needSpace(folder);
            Path begun = folder.begin(by, moment);
            try {
                copy.into(begun);
                Backup backup = folder.finish(begun, moment);
                LOG.info(
                        "backup {}: {} bytes, SHA-256 {}",
                        folder.path().resolve(backup.name()),
                        backup.bytes(),
                        backup.sha256());
                return backup;
            } finally {
                Files.deleteIfExists(begun);
            }
        } catch (FileAlreadyExistsException another) {
            throw new Refused(
                    ProblemType.BUSY, "another backup was begun in the same millisecond; repeat the request", another);
        } catch (IOException e) {
            throw FullDisk.isBehind(e) ? full(folder, e) : new UncheckedIOException(e);
        } catch (SQLException e) {
            throw FullDisk.isBehind(e)
                    ? full(folder, e)
                    : Outage.explained(new UncategorizedSQLException("backup", null, e));
        }
    }

    private void needSpace(BackupFolder folder) throws IOException {
        long free = Files.getFileStore(folder.path()).getUsableSpace();
        long size = Files.size(database);
        long keep = settings.keepFree().toBytes();
        if (free - size < keep) {
            throw new Refused(
                    ProblemType.STORAGE_FULL,
                    "the backup folder %s: found %d MB free on its disk, expected %d MB for the copy and %d MB that stay free; free"
                                    .formatted(folder.path(), free >> 20, (size >> 20) + 1, keep >> 20)
                            + " some space, or name a folder on another disk as stayfixed.backup.folder");
        }
    }

    private static Refused full(BackupFolder folder, Exception why) {
        return new Refused(
                ProblemType.STORAGE_FULL,
                "the backup folder " + folder.path()
                        + ": its disk took nothing more in the middle of the copy, of which nothing is"
                        + " left; free some space, or name a folder on another disk as stayfixed.backup.folder, and repeat the request",
                why);
    }
}
