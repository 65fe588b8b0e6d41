package dev.stayfixed.platform.storage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.stayfixed.platform.OtherInstance;
import dev.stayfixed.platform.OwnProcess;
import dev.stayfixed.platform.RealPostgres;
import dev.stayfixed.web.Answer;
import dev.stayfixed.web.Client;
import dev.stayfixed.web.Shop;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;

/** A service on an H2 file, filled with the demo, goes on on a PostgreSQL. */
@Timeout(600)
class MovedTest {

    /** So many tables, at least, are filled. */
    private static final int FILLED = 31;

    @Test
    void everyRowIsMovedAndEveryAnswerIsTheSame(@TempDir Path folder) throws Exception {
        String h2 = OwnProcess.url(folder);
        Map<String, String> before = new TreeMap<>();
        try (OwnProcess service =
                new OwnProcess(h2, "--spring.profiles.active=demo", "--stayfixed.webhooks.private-targets=true")) {
            Client client = new Client(service.port());
            beyondTheDemo(client);
            note(client, before);
            refused(h2, RealPostgres.emptyDatabase(), "cannot be opened", "Stop the service that uses the file");
        }
        Path file = folder.resolve("stayfixed.mv.db");
        String digest = BackupFolder.digest(file);
        JdbcConnectionDetails postgres = RealPostgres.emptyDatabase();
        try (OtherInstance service = new OtherInstance(postgres, "stayfixed.move-from=" + h2)) {
            Client client = new Client(service.port());
            assertThat(before).hasSizeGreaterThan(10);
            before.forEach((path, body) ->
                    assertThat(client.get(path).is(200).body()).as(path).isEqualTo(body));
            Map<String, Long> moved = rows(connect(postgres));
            assertThat(moved).isEqualTo(rows(DriverManager.getConnection(h2 + ";ACCESS_MODE_DATA=r", "stayfixed", "")));
            assertThat(moved.values()).filteredOn(rows -> rows > 0).hasSizeGreaterThanOrEqualTo(FILLED);
            assertThat(moved)
                    .extractingByKeys(
                            "delivery", "issued_report", "webhook_endpoint", "drive_left_out", "idempotency_key")
                    .allSatisfy(rows -> assertThat(rows).isPositive());

            Shop shop = new Shop(client);
            Answer vehicle = shop.vehicle("taken in after the move");
            Answer job = shop.job(vehicle);
            shop.repair(job, "2020-01-01T00:00:00Z");
            shop.drive(vehicle, "2020-01-02T08:00:00Z", Shop.RAN_AND_FAILED).is(201);
        }
        assertThat(BackupFolder.digest(file)).isEqualTo(digest);
        refused(h2, postgres, "found rows in the PostgreSQL, in [", "Move into a new database");
    }

    /** Rows in further tables: a PDF, an address that is told of what comes, a link, an answer that is kept, drives left out. */
    private static void beyondTheDemo(Client client) {
        client.post("/api/v1/webhooks", "{\"url\":\"http://127.0.0.1:9/nobody\"}")
                .is(201);
        client.post("/api/v1/calendar-link", "").is(200);
        Shop shop = new Shop(client);
        Answer vehicle = shop.vehicle("blue van, Größe \uD83D\uDE97 and 'quotes'");
        Answer job = shop.job(vehicle);
        shop.repair(job, "2020-01-01T00:00:00Z");
        client.post("/api/v1/jobs/" + job.id() + "/driver-link", "").is(201);
        Answer wrong =
                shop.drive(vehicle, "2020-01-02T08:00:00Z", Shop.RAN_AND_FAILED).is(201);
        client.put("/api/v1/drives/" + wrong.id() + "/left-out", "{\"reason\":\"another car\"}");
        client.post(
                        "/api/v1/vehicles/" + vehicle.id() + "/drives",
                        Shop.body("2020-01-03T08:00:00Z", Shop.RAN_CLEAN),
                        "Idempotency-Key",
                        "once")
                .is(201);
        client.post("/api/v1/jobs/" + job.id() + "/report", "").is(201);
        client.post("/api/v1/jobs/" + job.id() + "/report-link", "");
    }

    private static void note(Client client, Map<String, String> before) {
        Answer jobs = client.get("/api/v1/jobs?limit=200").is(200);
        jobs.json().at("/items").forEach(job -> {
            String path = "/api/v1/jobs/" + job.at("/id").asString();
            before.put(path, client.get(path).is(200).body());
            before.put(
                    path + "/verdicts", client.get(path + "/verdicts").is(200).body());
        });
    }

    /** How many rows each table holds, as the database itself lists them. */
    private static Map<String, Long> rows(Connection connection) throws SQLException {
        Map<String, Long> rows = new TreeMap<>();
        try (connection;
                Statement list = connection.createStatement();
                ResultSet tables = list.executeQuery(
                        "select table_name from information_schema.tables where table_schema ="
                                + " current_schema and table_type = 'BASE TABLE' and table_name <> 'flyway_schema_history'")) {
            while (tables.next()) {
                String table = tables.getString(1);
                try (Statement count = connection.createStatement();
                        ResultSet found = count.executeQuery("select count(*) from \"" + table + "\"")) {
                    found.next();
                    rows.put(table.toLowerCase(Locale.ROOT), found.getLong(1));
                }
            }
        }
        return rows;
    }

    private static Connection connect(JdbcConnectionDetails database) throws SQLException {
        return DriverManager.getConnection(database.getJdbcUrl(), database.getUsername(), database.getPassword());
    }

    private static void refused(String from, JdbcConnectionDetails to, String found, String remedy) {
        assertThatThrownBy(() -> new OtherInstance(to, "stayfixed.move-from=" + from).close())
                .satisfies(failed -> {
                    NotDone why = notDone(failed);
                    assertThat(why).hasMessageContaining(found);
                    assertThat(why.remedy()).contains(remedy);
                });
    }

    private static NotDone notDone(Throwable failure) {
        return Stream.iterate(failure, Objects::nonNull, Throwable::getCause)
                .filter(NotDone.class::isInstance)
                .map(NotDone.class::cast)
                .findFirst()
                .orElseThrow(() -> new AssertionError("another failure", failure));
    }
}
