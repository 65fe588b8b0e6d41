package dev.stayfixed.platform.storage;

import dev.stayfixed.platform.PrivateFiles;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.context.ApplicationContextInitializer;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.core.env.Environment;

/**
 * With {@code --stayfixed.restore=FILE} the service begins from a backup: before anything opens the database, its file is unpacked to
 * where the settings expect it. Only where there is none yet, and only a backup that is what its digest says.
 */
final class Restore implements ApplicationContextInitializer<ConfigurableApplicationContext> {

    private static final Logger LOG = LoggerFactory.getLogger(Restore.class);

    private static final Pattern DIGEST = Pattern.compile("([0-9a-fA-F]{64})\\s.*", Pattern.DOTALL);

    @Override
    public void initialize(ConfigurableApplicationContext context) {
        Environment settings = context.getEnvironment();
        String backup = settings.getProperty("stayfixed.restore", "");
        if (!backup.isBlank()) {
            run(Path.of(backup.strip()), settings.getProperty("spring.datasource.url", ""));
        }
    }

    /** @throws NotDone when nothing was restored */
    static void run(Path backup, String url) {
        Path database = fileOf(url);
        if (Files.exists(database)) {
            throw new NotDone(
                    "stayfixed.restore: found a database at " + database.toAbsolutePath() + ", expected none",
                    "If it is the one that was restored, start without stayfixed.restore. Otherwise stop what uses it and move it out of"
                            + " the way, or restore to another place: --spring.datasource.url=jdbc:h2:file:./data/restored;..., with"
                            + " the rest as in application.properties.");
        }
        try {
            check(backup);
            unpack(backup, database);
        } catch (IOException e) {
            throw new NotDone(
                    "stayfixed.restore: " + backup + " could not be restored to " + database.toAbsolutePath() + ": "
                            + e,
                    "Nothing is there that was not there before. Make the files readable, and free some space if that is what is missing.",
                    e);
        }
        LOG.info("restored {} to {}", backup, database.toAbsolutePath());
    }

    private static Path fileOf(String url) {
        return H2File.of(url)
                .map(H2File::path)
                .orElseThrow(
                        () -> new NotDone(
                                "stayfixed.restore: found the database " + url + ", expected an H2 file",
                                "A backup is an H2 file. Start without the profile postgresql; what pg_dump wrote is restored by pg_restore."));
    }

    private static void check(Path backup) throws IOException {
        if (!Files.isRegularFile(backup)) {
            throw new NotDone(
                    "stayfixed.restore: found no file at " + backup.toAbsolutePath() + ", expected a backup",
                    "Name a file of the backup folder (stayfixed.backup.folder), such as data/backups/stayfixed-....zip.");
        }
        Path beside = BackupFolder.digestOf(backup);
        if (!Files.isRegularFile(beside)) {
            throw new NotDone(
                    "stayfixed.restore: found no " + beside.getFileName() + " beside " + backup
                            + ", expected the digest of the backup",
                    "Copy it from where the backup came from. If it is lost and you trust the file: sha256sum FILE > FILE.sha256.");
        }
        Matcher digest = DIGEST.matcher(Files.readString(beside, StandardCharsets.ISO_8859_1));
        String expected = digest.matches() ? digest.group(1).toLowerCase(Locale.ROOT) : "no SHA-256";
        String found = BackupFolder.digest(backup);
        if (!found.equals(expected)) {
            throw new NotDone(
                    "stayfixed.restore: " + backup + " has the SHA-256 " + found + ", expected " + expected + ", as "
                            + beside.getFileName() + " beside it says",
                    "The file is damaged or another one. Copy it again from where it came from, or take an older backup.");
        }
    }

    /** The name of the database is given when all of it is on the disk. */
    private static void unpack(Path backup, Path database) throws IOException {
        Path folder = PrivateFiles.folderOf(database);
        Path begun = Files.createTempFile(folder, database.getFileName().toString(), ".restoring");
        try (ZipInputStream zip = new ZipInputStream(Files.newInputStream(backup))) {
            ZipEntry entry = zip.getNextEntry();
            if (entry == null || !entry.getName().endsWith(H2File.ENDING)) {
                throw new NotDone(
                        "stayfixed.restore: found " + (entry == null ? "no zip archive" : entry.getName() + " in it")
                                + " at " + backup + ", expected a backup with one file *" + H2File.ENDING,
                        "Name a file that POST /api/v1/backups has made.");
            }
            // Not Files.copy: in the place of the private file it would make another one.
            try (OutputStream out = Files.newOutputStream(begun)) {
                zip.transferTo(out);
            }
            BackupFolder.sync(begun);
            Files.move(begun, database);
        } finally {
            Files.deleteIfExists(begun);
        }
    }
}
