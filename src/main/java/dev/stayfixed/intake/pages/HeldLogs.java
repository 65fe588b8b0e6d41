package dev.stayfixed.intake.pages;

import dev.stayfixed.platform.PrivateFiles;
import dev.stayfixed.platform.storage.InstanceFolder;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Clock;
import java.time.Duration;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.springframework.stereotype.Component;
import org.springframework.web.multipart.MultipartFile;

/**
 * Logs that came in with a form and wait for a person to say how they are read: a browser does not keep a chosen file from one page to
 * the next. They are held on the disk of this instance for an hour; where one is gone, the person chooses the file again.
 */
@Component
class HeldLogs {

    private static final Duration HELD_FOR = Duration.ofHours(1);
    private static final int MOST = 20;

    private final Path folder;
    private final Clock clock;

    HeldLogs(InstanceFolder instance, Clock clock) throws IOException {
        this.folder = instance.folder("held");
        this.clock = clock;
    }

    /** Keeps a log, and says under which name. */
    String hold(MultipartFile file) throws IOException {
        forgetOld();
        String name = UUID.randomUUID().toString();
        Path held = PrivateFiles.file(folder.resolve(name));
        try (InputStream in = file.getInputStream();
                OutputStream out = Files.newOutputStream(held)) {
            in.transferTo(out);
        }
        Files.setLastModifiedTime(held, FileTime.from(clock.instant()));
        return name;
    }

    Optional<Path> find(String name) {
        return Optional.of(name)
                .filter(n -> n.matches("[0-9a-f-]{36}"))
                .map(folder::resolve)
                .filter(Files::exists);
    }

    void forget(String name) {
        find(name).ifPresent(HeldLogs::delete);
    }

    private void forgetOld() {
        FileTime oldest = FileTime.from(clock.instant().minus(HELD_FOR));
        List<Path> latestFirst = byAge();
        for (int i = 0; i < latestFirst.size(); i++) {
            if (i >= MOST - 1 || age(latestFirst.get(i)).compareTo(oldest) < 0) {
                delete(latestFirst.get(i));
            }
        }
    }

    private List<Path> byAge() {
        try (Stream<Path> files = Files.list(folder)) {
            return files.sorted(Comparator.comparing(HeldLogs::age).reversed()).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static FileTime age(Path file) {
        try {
            return Files.getLastModifiedTime(file);
        } catch (IOException goneMeanwhile) {
            return FileTime.fromMillis(0);
        }
    }

    private static void delete(Path file) {
        try {
            Files.deleteIfExists(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
