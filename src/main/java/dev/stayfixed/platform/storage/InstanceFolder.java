package dev.stayfixed.platform.storage;

import dev.stayfixed.platform.PrivateFiles;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;
import org.springframework.util.FileSystemUtils;

/**
 * The files of this instance that end with it: bodies that come in, and logs that wait for a person. They lie in one private folder. Its
 * lock is held as long as the instance lives, so that the next start knows what a killed one has left, and removes it.
 */
@Component
public class InstanceFolder implements AutoCloseable {

    private static final Logger LOG = LoggerFactory.getLogger(InstanceFolder.class);

    private static final String PREFIX = "stayfixed-run-";
    private static final String LOCK = "lock";

    /** Those of this process: a lock is the process's, and whoever opens and closes its file once more gives it up. */
    private static final Set<Path> HERE = ConcurrentHashMap.newKeySet();

    private final Path path;
    private final FileChannel lock;

    InstanceFolder(InstanceSettings settings) throws IOException {
        Path absolute = settings.temporary().toAbsolutePath();
        Files.createDirectories(absolute);
        this.path = Files.createTempDirectory(absolute, PREFIX);
        HERE.add(path);
        this.lock = FileChannel.open(PrivateFiles.file(path.resolve(LOCK)), StandardOpenOption.WRITE);
        FileLock held = lock.lock();
        if (!held.isValid()) {
            throw new IOException(path + " could not be locked");
        }
        leftIn(absolute).forEach(this::removeIfLeft);
    }

    /** One below a folder that may be there already. */
    public static InstanceFolder in(Path parent) throws IOException {
        return new InstanceFolder(new InstanceSettings(parent));
    }

    private static List<Path> leftIn(Path parent) throws IOException {
        try (Stream<Path> folders = Files.list(parent)) {
            return folders.filter(folder -> folder.getFileName().toString().startsWith(PREFIX))
                    .filter(folder -> !HERE.contains(folder))
                    .toList();
        }
    }

    /** One that is just being made has no lock yet, and is left alone. */
    private void removeIfLeft(Path folder) {
        try {
            if (!PrivateFiles.isPrivate(folder, path)) {
                return;
            }
            try (FileChannel channel = FileChannel.open(folder.resolve(LOCK), StandardOpenOption.WRITE)) {
                FileLock free = channel.tryLock();
                if (free != null && FileSystemUtils.deleteRecursively(folder)) {
                    LOG.info("removed {}, which an instance left that was killed", folder);
                }
            }
        } catch (NoSuchFileException justBeingMade) {
            LOG.debug("{} is in use", folder);
        } catch (IOException e) {
            LOG.warn("{} could not be removed; delete it, if no instance of the service uses it", folder, e);
        }
    }

    public Path path() {
        return path;
    }

    /** A new file, which whoever asked for it deletes. */
    public Path file() throws IOException {
        return Files.createTempFile(path, "body", null);
    }

    /** A new folder in it. */
    public Path folder(String name) throws IOException {
        return PrivateFiles.folder(path.resolve(name));
    }

    @Override
    public void close() throws IOException {
        try (lock) {
            FileSystemUtils.deleteRecursively(path);
        } finally {
            HERE.remove(path);
        }
    }
}
