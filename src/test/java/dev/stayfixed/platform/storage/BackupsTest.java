package dev.stayfixed.platform.storage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.stayfixed.platform.MovingClock;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.util.unit.DataSize;

class BackupsTest {

    @TempDir
    Path folder;

    private Path database;

    @BeforeEach
    void aDatabase() throws IOException {
        database = Files.writeString(folder.resolve("stayfixed.mv.db"), "rows");
    }

    private CopiedBackups backups(MovingClock clock, DataSize keepFree, CopiedBackups.Copy copy) {
        StorageSettings.Backup settings = new StorageSettings.Backup(folder.resolve("backups"), null, 2);
        return new CopiedBackups(database, new StorageSettings(keepFree, null, settings), copy, clock);
    }

    private List<String> files() throws IOException {
        try (Stream<Path> files = Files.list(folder.resolve("backups"))) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void aDiskThatGetsFullLeavesNoHalfFile() throws IOException {
        CopiedBackups backups = backups(new MovingClock(), DataSize.ofBytes(0), file -> {
            Files.writeString(file, "ro");
            throw new IOException("No space left on device");
        });
        refused(backups, ProblemType.STORAGE_FULL, "in the middle of the copy");
        assertThat(files()).isEmpty();
    }

    @Test
    void aDiskThatIsTooFullIsNotBegun() throws IOException {
        CopiedBackups backups = backups(new MovingClock(), DataSize.ofTerabytes(1_000_000), file -> {
            throw new IllegalStateException("begun");
        });
        refused(backups, ProblemType.STORAGE_FULL, "MB that stay free");
        assertThat(files()).isEmpty();
    }

    @Test
    void aFolderThatIsNoneIsNamed() throws IOException {
        Files.writeString(folder.resolve("backups"), "a file");
        CopiedBackups backups = backups(new MovingClock(), DataSize.ofBytes(0), file -> {});
        refused(backups, ProblemType.NO_BACKUP, "stayfixed.backup.folder");
    }

    @Test
    void theNewestOfThoseThatNobodyAskedForAreKept() throws IOException {
        MovingClock clock = new MovingClock();
        CopiedBackups backups = backups(clock, DataSize.ofBytes(0), file -> Files.writeString(file, "copy"));
        backups.take(Backups.By.REQUEST);
        try (var scheduled = new ScheduledBackups(backups, Duration.ofHours(24), 2, clock)) {
            for (int day = 0; day < 4; day++) {
                assertThat(scheduled.takeIfDue()).isTrue();
                assertThat(scheduled.takeIfDue()).isFalse();
                clock.forward(Duration.ofHours(24));
            }
        }
        assertThat(files())
                .containsExactly(
                        "stayfixed-20260630T120000.000Z.zip",
                        "stayfixed-20260630T120000.000Z.zip.sha256",
                        "stayfixed-scheduled-20260702T120000.000Z.zip",
                        "stayfixed-scheduled-20260702T120000.000Z.zip.sha256",
                        "stayfixed-scheduled-20260703T120000.000Z.zip",
                        "stayfixed-scheduled-20260703T120000.000Z.zip.sha256");
    }

    private static void refused(Backups backups, ProblemType type, String words) {
        assertThatThrownBy(() -> backups.take(Backups.By.REQUEST))
                .isInstanceOfSatisfying(
                        Refused.class, refused -> assertThat(refused.type()).isEqualTo(type))
                .hasMessageContaining(words);
    }
}
