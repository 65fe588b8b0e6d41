package dev.stayfixed.platform.storage;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.StayfixedApplication;
import dev.stayfixed.web.Answer;
import dev.stayfixed.web.Client;
import dev.stayfixed.web.Shop;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The service in a process of its own, killed with SIGKILL while it takes drives in: what was acknowledged is still there. */
@Timeout(180)
class KilledUnderLoadTest {

    private static final int WRITERS = 6;
    private static final int ACKNOWLEDGED_BEFORE_KILL = 60;
    private static final Pattern READY = Pattern.compile("Stayfixed is ready: open http://localhost:(\\d+)/");

    private final Set<String> acknowledged = ConcurrentHashMap.newKeySet();
    private final CountDownLatch enough = new CountDownLatch(ACKNOWLEDGED_BEFORE_KILL);

    @Test
    void noAcknowledgedDriveIsLost(@TempDir Path folder) throws Exception {
        String url =
                "jdbc:h2:file:" + folder.resolve("stayfixed") + ";WRITE_DELAY=0;DB_CLOSE_ON_EXIT=FALSE;MODE=PostgreSQL";
        Process service = start(url);
        try {
            Client client = new Client(port(service));
            Shop shop = new Shop(client);
            List<Thread> writers = new ArrayList<>();
            for (int i = 0; i < WRITERS; i++) {
                Answer vehicle = shop.vehicle("killed under load " + i);
                shop.repair(shop.job(vehicle), "2020-01-01T00:00:00Z");
                writers.add(new Thread(() -> sendUntilItDies(client, vehicle)));
            }
            writers.forEach(Thread::start);
            assertThat(enough.await(120, TimeUnit.SECONDS)).isTrue();
            service.destroyForcibly().waitFor();
            for (Thread writer : writers) {
                writer.join();
            }
        } finally {
            service.destroyForcibly().waitFor();
        }
        assertThat(service.exitValue()).as("killed by signal 9").isEqualTo(137);
        assertThat(stored(url))
                .hasSizeGreaterThanOrEqualTo(ACKNOWLEDGED_BEFORE_KILL)
                .containsAll(acknowledged);
    }

    private static Process start(String url) throws IOException {
        return new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx512m",
                        "-cp",
                        System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")),
                        StayfixedApplication.class.getName(),
                        "--server.port=0",
                        "--spring.datasource.url=" + url)
                .redirectErrorStream(true)
                .start();
    }

    private static int port(Process service) throws IOException {
        StringBuilder output = new StringBuilder();
        BufferedReader reader = service.inputReader(StandardCharsets.UTF_8);
        for (String line = reader.readLine(); line != null; line = reader.readLine()) {
            output.append(line).append('\n');
            Matcher ready = READY.matcher(line);
            if (ready.find()) {
                return Integer.parseInt(ready.group(1));
            }
        }
        throw new IllegalStateException("the service did not start:\n" + output);
    }

    private void sendUntilItDies(Client client, Answer vehicle) {
        Instant start = Instant.parse("2020-01-02T00:00:00Z");
        try {
            for (int i = 0; ; i++) {
                String body = Shop.body(start.plusSeconds(i * 3600L).toString(), Shop.RAN_CLEAN);
                Answer answer = client.post("/api/v1/vehicles/" + vehicle.id() + "/drives", body);
                if (answer.status() == 201) {
                    acknowledged.add(answer.id());
                    enough.countDown();
                }
            }
        } catch (IllegalStateException died) {
            assertThat(died).hasMessageContaining("was not answered");
        }
    }

    /** Every drive whose submission and row are both there; one without the other is half a transaction. */
    private static Set<String> stored(String url) throws SQLException {
        Set<String> stored = new HashSet<>();
        String query =
                "select s.drive_id, d.id, length(s.original) from submission s left join drive d on d.id = s.drive_id";
        try (Connection connection = DriverManager.getConnection(url, "stayfixed", "");
                ResultSet rows = connection.createStatement().executeQuery(query)) {
            while (rows.next()) {
                assertThat(rows.getString(1)).isNotNull().isEqualTo(rows.getString(2));
                assertThat(rows.getLong(3)).isPositive();
                stored.add(rows.getString(1));
            }
        }
        return stored;
    }
}
