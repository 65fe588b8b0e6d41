package dev.stayfixed.platform.storage;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The disks that hold these folders. */
record Disks(List<Path> folders) implements FreeSpace {

    private static final Logger LOG = LoggerFactory.getLogger(Disks.class);

    @Override
    public long bytes() {
        return folders.stream().mapToLong(Disks::usable).min().orElse(Long.MAX_VALUE);
    }

    /** A disk that cannot be asked is not taken for full. */
    private static long usable(Path folder) {
        try {
            return Files.getFileStore(folder).getUsableSpace();
        } catch (IOException e) {
            LOG.warn("how much space is left at {} is not known", folder, e);
            return Long.MAX_VALUE;
        }
    }
}
