package dev.stayfixed.platform.storage;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.platform.OwnProcess;
import dev.stayfixed.platform.PrivateFiles;
import dev.stayfixed.web.Answer;
import dev.stayfixed.web.Client;
import dev.stayfixed.web.Shop;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** What the service writes to a real file system is nobody else's, also while it is written, and ends with the service where it should. */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "the rights of files are those of POSIX")
@Timeout(300)
class PrivateOnDiskTest {

    private static final String WIDE_FOLDER = "rwxr-xr-x";

    @Test
    void everythingThatAServiceWritesIsPrivateAndAKilledOneLeavesNoBodies(@TempDir Path folder) throws Exception {
        Path data = Files.createDirectory(folder.resolve("data"));
        Path old = Files.writeString(data.resolve("stayfixed.mv.db"), "");
        Files.setPosixFilePermissions(old, PosixFilePermissions.fromString("rw-r--r--"));
        Files.setPosixFilePermissions(data, PosixFilePermissions.fromString(WIDE_FOLDER));
        Path temporary = folder.resolve("temporary");
        String[] settings = {
            "--stayfixed.temporary=" + temporary, "--stayfixed.backup.folder=" + data.resolve("backups")
        };
        Path left;
        try (OwnProcess service = new OwnProcess(OwnProcess.url(data), settings)) {
            Client client = new Client(service.port());
            Answer vehicle = new Shop(client).vehicle("on a private disk");
            client.post("/api/v1/backups", "{}").is(201);
            try (Socket half = beginLog(service.port(), vehicle.id())) {
                left = bodyIn(temporary);
                assertThat(half.isConnected()).isTrue();
                assertThat(widerThanOurs(data)).isEmpty();
                assertThat(rights(left)).isEqualTo("rw-------");
                assertThat(rights(requireNonNull(left.getParent()))).isEqualTo("rwx------");
                assertThat(widerThanOurs(requireNonNull(left.getParent())))
                        .as("what Tomcat makes lies below a folder that nobody else enters")
                        .allSatisfy(path -> assertThat(path.startsWith(
                                        left.resolveSibling("tomcat").resolve("work")))
                                .isTrue());
                service.kill();
            }
        }
        assertThat(left).exists();
        try (OwnProcess service = new OwnProcess(OwnProcess.url(data), settings)) {
            assertThat(left.getParent()).doesNotExist();
            assertThat(list(temporary)).hasSize(1);
            assertThat(service.port()).isPositive();
        }
    }

    /** A log of which only the beginning comes. */
    private static Socket beginLog(int port, String vehicle) throws IOException {
        Socket socket = new Socket(InetAddress.getLoopbackAddress(), port);
        OutputStream out = socket.getOutputStream();
        out.write(("POST /api/v1/vehicles/" + vehicle + "/drives HTTP/1.1\r\nHost: localhost:" + port
                        + "\r\nContent-Type: text/csv\r\nContent-Length: 1000000\r\n\r\n" + "time,rpm\n".repeat(20_000))
                .getBytes(StandardCharsets.US_ASCII));
        out.flush();
        return socket;
    }

    private static Path bodyIn(Path temporary) throws IOException {
        long end = System.nanoTime() + Duration.ofMinutes(1).toNanos();
        while (System.nanoTime() - end < 0) {
            for (Path run : list(temporary)) {
                for (Path file : list(run)) {
                    if (file.getFileName().toString().startsWith("body") && Files.size(file) > 0) {
                        return file;
                    }
                }
            }
            Thread.onSpinWait();
        }
        throw new AssertionError("no body came to lie in " + temporary);
    }

    private static List<Path> widerThanOurs(Path root) throws IOException {
        try (Stream<Path> paths = Files.walk(root)) {
            return paths.filter(path -> !rights(path).endsWith("------")).toList();
        }
    }

    private static String rights(Path path) {
        try {
            return PosixFilePermissions.toString(Files.getPosixFilePermissions(path));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<Path> list(Path folder) throws IOException {
        List<Path> list = new ArrayList<>();
        try (Stream<Path> files = Files.list(folder)) {
            files.forEach(list::add);
        }
        return list;
    }

    @Test
    void aFolderThatHoldsWhatIsNotOursIsLeftAsItIs(@TempDir Path parent) throws IOException {
        Path shared = Files.createDirectory(parent.resolve("shared"));
        Files.setPosixFilePermissions(shared, PosixFilePermissions.fromString(WIDE_FOLDER));
        Path foreign = Files.writeString(shared.resolve("index.html"), "read by others");
        PrivateFiles.folder(shared);
        assertThat(rights(shared)).isEqualTo(WIDE_FOLDER);
        Files.delete(foreign);
        Files.setPosixFilePermissions(shared, PosixFilePermissions.fromString("rwxrwxrwx"));
        PrivateFiles.folder(shared);
        assertThat(rights(shared)).as("others write to it").isEqualTo("rwxrwxrwx");
        Files.setPosixFilePermissions(shared, PosixFilePermissions.fromString(WIDE_FOLDER));
        PrivateFiles.folder(shared);
        assertThat(rights(shared)).isEqualTo("rwx------");
        assertThat(rights(requireNonNull(
                        PrivateFiles.folder(parent.resolve("a/b")).getParent())))
                .isEqualTo("rwx------");
    }

    @Test
    void anInstanceRemovesItsFolderAndLeavesThoseOfOthersThatRun(@TempDir Path parent) throws IOException {
        InstanceFolder first = InstanceFolder.in(parent);
        Path body = first.file();
        Path foreign = Files.createDirectory(parent.resolve("stayfixed-run-without-a-lock"));
        try (InstanceFolder second = InstanceFolder.in(parent)) {
            assertThat(body).exists();
            assertThat(second.path()).isNotEqualTo(first.path());
        }
        first.close();
        assertThat(list(parent)).containsExactly(foreign);
    }
}
