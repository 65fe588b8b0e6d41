package dev.stayfixed.platform.storage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.stayfixed.platform.OwnProcess;
import dev.stayfixed.web.Answer;
import dev.stayfixed.web.Client;
import dev.stayfixed.web.Shop;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A service that is backed up while it takes drives in, killed, and begun again from the backup at another place. */
@Timeout(600)
class RestoredTest {

    private static final int WRITERS = 4;

    private final Set<String> answered = ConcurrentHashMap.newKeySet();
    private final CountDownLatch enough = new CountDownLatch(20);

    @Test
    void everythingAnsweredBeforeTheBackupIsThere(@TempDir Path folder) throws Exception {
        Path backups = folder.resolve("backups");
        Map<String, String> before = new TreeMap<>();
        Set<String> promised;
        Answer backup;
        try (OwnProcess service =
                new OwnProcess(OwnProcess.url(folder.resolve("lost")), "--stayfixed.backup.folder=" + backups)) {
            Client client = new Client(service.port());
            Shop shop = new Shop(client);
            for (String end : List.of(Shop.RAN_CLEAN, Shop.DID_NOT_RUN, Shop.RAN_AND_FAILED)) {
                Answer vehicle = shop.vehicle("stands still meanwhile");
                Answer job = shop.job(vehicle);
                shop.repair(job, "2020-01-01T00:00:00Z");
                shop.drive(vehicle, "2020-01-02T08:00:00Z", Shop.RAN_CLEAN).is(201);
                shop.drive(vehicle, "2020-01-03T08:00:00Z", end).is(201);
                note(client, "/api/v1/jobs/" + job.id(), before);
                note(client, "/api/v1/jobs/" + job.id() + "/verdicts", before);
                note(client, "/api/v1/vehicles/" + vehicle.id() + "/drives", before);
            }
            List<Thread> writers = writers(client, shop);
            assertThat(enough.await(240, TimeUnit.SECONDS)).isTrue();
            promised = Set.copyOf(answered);
            backup = client.post("/api/v1/backups", "{}").is(201);
            assertThat(service.kill()).as("killed by signal 9").isEqualTo(137);
            for (Thread writer : writers) {
                writer.join();
            }
        }
        Path file = backups.resolve(backup.at("/name"));
        assertThat(Files.size(file)).isEqualTo(backup.json().at("/bytes").asLong());
        assertThat(BackupFolder.digest(file)).isEqualTo(backup.at("/sha256"));
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
                .isEqualTo("rw-------");
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(backups)))
                .isEqualTo("rwx------");

        String elsewhere = OwnProcess.url(folder.resolve("elsewhere"));
        try (OwnProcess service = new OwnProcess(elsewhere, "--stayfixed.restore=" + file)) {
            Client client = new Client(service.port());
            before.forEach((path, body) -> assertThat(client.get(path).is(200).json())
                    .as(path)
                    .isEqualTo(new Answer(200, backup.headers(), body).json()));
            assertThat(promised)
                    .hasSizeGreaterThanOrEqualTo(20)
                    .allSatisfy(drive -> client.get("/api/v1/drives/" + drive).is(200));
            new Shop(client).vehicle("taken in after the restore");
        }
        assertThatThrownBy(() -> new OwnProcess(elsewhere, "--stayfixed.restore=" + file).close())
                .hasMessageContaining("APPLICATION FAILED TO START")
                .hasMessageContaining("stayfixed.restore: found a database at ")
                .hasMessageContaining("start without stayfixed.restore");
    }

    private static void note(Client client, String path, Map<String, String> before) {
        before.put(path, client.get(path).is(200).body());
    }

    private List<Thread> writers(Client client, Shop shop) {
        List<Thread> writers = new ArrayList<>();
        for (int i = 0; i < WRITERS; i++) {
            Answer vehicle = shop.vehicle("drives meanwhile " + i);
            shop.repair(shop.job(vehicle), "2020-01-01T00:00:00Z");
            writers.add(new Thread(() -> sendUntilItDies(client, vehicle)));
        }
        writers.forEach(Thread::start);
        return writers;
    }

    private void sendUntilItDies(Client client, Answer vehicle) {
        Instant start = Instant.parse("2020-01-02T00:00:00Z");
        try {
            for (int i = 0; ; i++) {
                String body = Shop.body(start.plusSeconds(i * 3600L).toString(), Shop.RAN_CLEAN);
                Answer answer = client.post("/api/v1/vehicles/" + vehicle.id() + "/drives", body);
                if (answer.status() == 201) {
                    answered.add(answer.id());
                    enough.countDown();
                }
            }
        } catch (IllegalStateException died) {
            assertThat(died).hasMessageContaining("was not answered");
        }
    }

    @Test
    void whatIsNoBackupIsNotRestored(@TempDir Path folder) throws IOException {
        String url = OwnProcess.url(folder);
        Path file = folder.resolve("backup.zip");
        refused(file, url, "found no file at ");
        Files.writeString(file, "no archive");
        refused(file, url, "found no backup.zip.sha256 beside ");
        Path digest = Files.writeString(folder.resolve("backup.zip.sha256"), "of nothing");
        refused(file, url, "expected no SHA-256");
        Files.writeString(digest, "0".repeat(64) + "  backup.zip\n");
        refused(file, url, "expected 0000");
        Files.writeString(digest, BackupFolder.digest(file) + "  backup.zip\n");
        refused(file, url, "found no zip archive at ");
        refused(file, "jdbc:postgresql://localhost/stayfixed", "expected an H2 file");
        refused(file, "jdbc:h2:mem:x", "expected an H2 file");
        try (var files = Files.list(folder)) {
            assertThat(files).containsExactlyInAnyOrder(file, digest);
        }
    }

    private static void refused(Path file, String url, String words) {
        assertThatThrownBy(() -> Restore.run(file, url))
                .isInstanceOfSatisfying(
                        NotDone.class, refused -> assertThat(refused.remedy()).isNotBlank())
                .hasMessageContaining(words);
    }
}
