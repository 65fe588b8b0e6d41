package dev.stayfixed.platform;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFileAttributes;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.nio.file.attribute.UserPrincipal;
import java.util.Objects;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Files (0600) and folders (0700) of the account that runs the service, on systems that know such rights. They are made so, and not
 * narrowed after somebody else may have opened them; what is there already with wider rights is narrowed.
 */
public final class PrivateFiles {

    private static final Logger LOG = LoggerFactory.getLogger(PrivateFiles.class);

    private static final Set<PosixFilePermission> FILE = PosixFilePermissions.fromString("rw-------");
    private static final Set<PosixFilePermission> FOLDER = PosixFilePermissions.fromString("rwx------");

    private static final Set<PosixFilePermission> WRITTEN_BY_OTHERS =
            Set.of(PosixFilePermission.GROUP_WRITE, PosixFilePermission.OTHERS_WRITE);

    /** What the service itself puts into its folders. */
    private static final Pattern OURS = Pattern.compile(".*\\.(mv\\.db|trace\\.db|key|zip|part|sha256)|backups");

    private PrivateFiles() {}

    /** An empty file. */
    public static Path file(Path path) throws IOException {
        return Files.createFile(path, rights(path, FILE));
    }

    /** A file that is there already. */
    public static void narrow(Path file) throws IOException {
        if (knowsRights(file) && !FILE.containsAll(Files.getPosixFilePermissions(file))) {
            Files.setPosixFilePermissions(file, FILE);
        }
    }

    /**
     * A folder, with those above it that are missing. One that is there already is narrowed where that takes nothing from anybody else:
     * it is this account's, nobody else may write to it, and nothing lies in it but what the service puts there. Otherwise a warning
     * names it.
     */
    public static Path folder(Path path) throws IOException {
        Path absolute = path.toAbsolutePath().normalize();
        try {
            Files.createDirectories(absolute, rights(absolute, FOLDER));
        } catch (FileAlreadyExistsException link) {
            if (!Files.isDirectory(absolute)) {
                throw link;
            }
        }
        if (knowsRights(absolute)) {
            Path real = absolute.toRealPath();
            PosixFileAttributes found = Files.readAttributes(real, PosixFileAttributes.class);
            if (!FOLDER.containsAll(found.permissions())) {
                narrowFolder(real, found);
            }
        }
        return absolute;
    }

    /** The same, for the folder in which a file is to lie. */
    public static Path folderOf(Path file) throws IOException {
        return folder(Objects.requireNonNull(file.toAbsolutePath().getParent(), "a file lies in a folder"));
    }

    private static void narrowFolder(Path folder, PosixFileAttributes found) throws IOException {
        boolean written = found.permissions().stream().anyMatch(WRITTEN_BY_OTHERS::contains);
        if (!written && holdsOnlyOurs(folder) && found.owner().equals(account(folder))) {
            Files.setPosixFilePermissions(folder, FOLDER);
            LOG.info("the folder {} is now open to the account of the service only", folder);
        } else {
            LOG.warn(
                    "the folder {} has the rights {}, expected rwx------, because others may look into it. It is not the service's alone;"
                            + " give the service a folder of its own, or narrow this one: chmod 700 {}",
                    folder,
                    PosixFilePermissions.toString(found.permissions()),
                    folder);
        }
    }

    /** Whom a file belongs to that we make there; the account may have no name, as in a container. */
    private static UserPrincipal account(Path folder) throws IOException {
        Path probe = Files.createTempFile(folder, "stayfixed", ".part");
        try {
            return Files.getOwner(probe);
        } finally {
            Files.delete(probe);
        }
    }

    private static boolean holdsOnlyOurs(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.allMatch(
                    file -> OURS.matcher(file.getFileName().toString()).matches());
        }
    }

    /** Whether a folder belongs to the account that made another one, and nobody else could have filled it. */
    public static boolean isPrivate(Path folder, Path ours) throws IOException {
        if (!Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)) {
            return false;
        }
        if (!knowsRights(folder)) {
            return true;
        }
        PosixFileAttributes found = Files.readAttributes(folder, PosixFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
        return found.owner().equals(Files.getOwner(ours)) && FOLDER.containsAll(found.permissions());
    }

    private static FileAttribute<?>[] rights(Path place, Set<PosixFilePermission> rights) {
        return knowsRights(place)
                ? new FileAttribute<?>[] {PosixFilePermissions.asFileAttribute(rights)}
                : new FileAttribute<?>[0];
    }

    private static boolean knowsRights(Path place) {
        return place.getFileSystem().supportedFileAttributeViews().contains("posix");
    }
}
