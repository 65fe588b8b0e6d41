package dev.stayfixed.platform.storage;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.platform.OwnProcess;
import dev.stayfixed.web.Answer;
import dev.stayfixed.web.Client;
import dev.stayfixed.web.Shop;
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
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The service in a process of its own, killed with SIGKILL while it takes drives in: what was acknowledged is still there. */
@Timeout(900)
class KilledUnderLoadTest {

    private static final int WRITERS = 6;
    private static final int ACKNOWLEDGED_BEFORE_KILL = 60;

    private final Set<String> acknowledged = ConcurrentHashMap.newKeySet();
    private final CountDownLatch enough = new CountDownLatch(ACKNOWLEDGED_BEFORE_KILL);

    @Test
    void noAcknowledgedDriveIsLost(@TempDir Path folder) throws Exception {
        String url = OwnProcess.url(folder);
        try (OwnProcess service = new OwnProcess(url)) {
            Client client = new Client(service.port());
            Shop shop = new Shop(client);
            List<Thread> writers = new ArrayList<>();
            for (int i = 0; i < WRITERS; i++) {
                Answer vehicle = shop.vehicle("killed under load " + i);
                shop.repair(shop.job(vehicle), "2020-01-01T00:00:00Z");
                writers.add(new Thread(() -> sendUntilItDies(client, vehicle)));
            }
            writers.forEach(Thread::start);
            assertThat(enough.await(240, TimeUnit.SECONDS)).isTrue();
            assertThat(service.kill()).as("killed by signal 9").isEqualTo(137);
            for (Thread writer : writers) {
                writer.join();
            }
        }
        assertThat(stored(url))
                .hasSizeGreaterThanOrEqualTo(ACKNOWLEDGED_BEFORE_KILL)
                .containsAll(acknowledged);
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
