package dev.stayfixed.platform.storage;

import dev.stayfixed.platform.PrivateFiles;
import dev.stayfixed.platform.Sha256;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import java.io.IOException;
import java.io.InputStream;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * The backups of one database, readable for its owner only, because they hold everything. A copy gets its name when it is whole and on
 * the disk, and after its digest; so whatever has a name can be restored.
 *
 * @param database the name of its file, with which those of its backups begin
 */
record BackupFolder(Path path, String database) {

    private static final DateTimeFormatter MOMENT =
            DateTimeFormatter.ofPattern("uuuuMMdd'T'HHmmss.SSS'Z'").withZone(ZoneOffset.UTC);

    private static final String DIGEST = ".sha256";
    private static final String BEGUN = ".part";
    private static final String SCHEDULED = "-scheduled-([0-9T.]+Z)\\.zip";

    /** The folder is made where it is missing. */
    static BackupFolder at(Path path, String database) {
        try {
            return new BackupFolder(PrivateFiles.folder(path), database);
        } catch (IOException e) {
            throw unusable(path.toAbsolutePath().normalize(), e);
        }
    }

    /** Where the digest of a backup lies: one line, as sha256sum writes and checks it. */
    static Path digestOf(Path backup) {
        return backup.resolveSibling(backup.getFileName() + DIGEST);
    }

    /** SHA-256 of a file of any size. */
    static String digest(Path file) throws IOException {
        MessageDigest digest = Sha256.begin();
        try (InputStream in = Files.newInputStream(file)) {
            byte[] piece = new byte[1 << 16];
            for (int n = in.read(piece); n >= 0; n = in.read(piece)) {
                digest.update(piece, 0, n);
            }
        }
        return Sha256.hex(digest, new byte[0]);
    }

    /** Forces a file or, where the operating system knows that, the names in a folder to the disk. */
    static void sync(Path file) throws IOException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ)) {
            channel.force(true);
        }
    }

    private static Refused unusable(Path path, IOException why) {
        return new Refused(
                ProblemType.NO_BACKUP,
                "the backup folder " + path + ": found " + why
                        + ", expected a folder that the service may write to; make it one, or"
                        + " name another as stayfixed.backup.folder",
                why);
    }

    /**
     * An empty file for a copy that begins.
     *
     * @throws FileAlreadyExistsException when another one has this moment
     */
    Path begin(Backups.By by, Instant moment) throws FileAlreadyExistsException {
        String kind = by == Backups.By.SCHEDULE ? "-scheduled-" : "-";
        Path whole = path.resolve(database + kind + MOMENT.format(moment) + ".zip");
        if (Files.exists(whole)) {
            throw new FileAlreadyExistsException(whole.toString());
        }
        try {
            return PrivateFiles.file(path.resolve(whole.getFileName() + BEGUN));
        } catch (FileAlreadyExistsException another) {
            throw another;
        } catch (IOException e) {
            throw unusable(path, e);
        }
    }

    /** Gives a copy its name, once it is on the disk. */
    Backups.Backup finish(Path begun, Instant moment) throws IOException {
        String name = begun.getFileName().toString().replace(BEGUN, "");
        Path whole = path.resolve(name);
        Path digest = PrivateFiles.file(digestOf(begun));
        try {
            String sha256 = digest(begun);
            Files.writeString(digest, sha256 + "  " + name + "\n", StandardCharsets.US_ASCII);
            sync(digest);
            sync(begun);
            Files.move(digest, digestOf(whole), StandardCopyOption.ATOMIC_MOVE);
            Files.move(begun, whole, StandardCopyOption.ATOMIC_MOVE);
            syncNames();
            return new Backups.Backup(name, Files.size(whole), sha256, moment);
        } finally {
            Files.deleteIfExists(digest);
        }
    }

    private void syncNames() throws IOException {
        if (path.getFileSystem().supportedFileAttributeViews().contains("posix")) {
            sync(path);
        }
    }

    /** When the last one was made that nobody asked for. */
    Optional<Instant> lastScheduled() throws IOException {
        return scheduled().stream().findFirst().map(this::moment);
    }

    /** Leaves as many of those that nobody asked for, the newest. */
    void keepScheduled(int most) throws IOException {
        for (Path old : scheduled().stream().skip(most).toList()) {
            Files.delete(old);
            Files.deleteIfExists(digestOf(old));
        }
    }

    /** Deletes what was begun before a moment and is not finished: the service was killed meanwhile. */
    void tidy(Instant before) throws IOException {
        for (Path begun : matching("-(?:scheduled-)?[0-9T.]+Z\\.zip\\.part(?:\\.sha256)?")) {
            if (Files.getLastModifiedTime(begun).toInstant().isBefore(before)) {
                Files.deleteIfExists(begun);
            }
        }
    }

    private List<Path> scheduled() throws IOException {
        return matching(SCHEDULED);
    }

    /** The newest first. */
    private List<Path> matching(String rest) throws IOException {
        Pattern names = Pattern.compile(Pattern.quote(database) + rest);
        try (Stream<Path> files = Files.list(path)) {
            return files.filter(
                            file -> names.matcher(file.getFileName().toString()).matches())
                    .sorted(Comparator.comparing(
                                    (Path file) -> file.getFileName().toString())
                            .reversed())
                    .toList();
        }
    }

    private Instant moment(Path scheduled) {
        Matcher name = Pattern.compile(Pattern.quote(database) + SCHEDULED)
                .matcher(scheduled.getFileName().toString());
        if (!name.matches()) {
            throw new IllegalStateException("no scheduled backup: " + scheduled);
        }
        return MOMENT.parse(name.group(1), Instant::from);
    }
}
