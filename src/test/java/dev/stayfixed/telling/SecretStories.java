package dev.stayfixed.telling;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.web.Answer;
import dev.stayfixed.web.Shop;
import jakarta.mail.internet.MimeMessage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Who reads the database finds no secret that was handed out, and a service that has lost its key says so. */
abstract class SecretStories extends Told {

    @Autowired
    JdbcConnectionDetails database;

    @Autowired
    JdbcClient jdbc;

    private final String tag = UUID.randomUUID().toString().substring(0, 8);
    private final String driver = "secret." + tag + "@home.example";

    @Test
    void noSecretThatWasHandedOutIsInTheDatabase() throws Exception {
        Map<String, String> secrets = new LinkedHashMap<>();
        Receiver receiver = receiver();
        Answer endpoint = keyed(
                API + "/webhooks",
                "{\"url\":\"%s\",\"kinds\":[\"CONFIRMED_FIXED\",\"FAILED_ONCE\"]}".formatted(receiver.url()));
        secrets.put("the first secret of a webhook", endpoint.at("/secret"));
        Answer rotated = keyed(API + "/webhooks/" + endpoint.id() + "/rotate-secret", "{}");
        secrets.put("its second secret", rotated.at("/secret"));
        secrets.put(
                "the link of the calendar",
                lastPart(keyed(API + "/calendar-link", "").at("/url")));
        Answer vehicle = shop.vehicle("1999 roadster " + tag);
        Answer job = repaired(vehicle);
        secrets.put(
                "a driver's link",
                lastPart(keyed(API + "/jobs/" + job.id() + "/driver-link", "").at("/url")));
        tellByMail(job, "tech." + tag + "@shop.example", driver);
        confirm(vehicle);
        keyed(API + "/jobs/" + job.id() + "/report", "");
        secrets.put(
                "the link of a report",
                lastPart(keyed(API + "/jobs/" + job.id() + "/report-link", "").at("/url")));
        bell.ring();
        bell.ring();
        String stop = only(post.to(driver)).getHeader("List-Unsubscribe")[0];
        secrets.put("the link that stops mails", lastPart(stop.substring(0, stop.length() - 1)));
        assertThat(receiver.requests()).isNotEmpty();

        assertThat(secrets.values()).allSatisfy(secret -> assertThat(secret).hasSizeGreaterThanOrEqualTo(24));
        List<String> found = new ArrayList<>();
        List<String> looked = texts((place, text) -> secrets.forEach((name, secret) -> {
            if (text.contains(secret)) {
                found.add(name + " in " + place);
            }
        }));
        assertThat(looked).contains("webhook_endpoint.secret", "idempotency_key.body", "delivery.payload");
        assertThat(found).isEmpty();
        assertThat(inFile(secrets)).as("in the file of the database").isEmpty();

        assertThat(client.get("/mail-stop/" + secrets.get("the link that stops mails"))
                        .status())
                .isEqualTo(200);
        assertThat(client.get("/calendar/" + secrets.get("the link of the calendar") + ".ics")
                        .status())
                .isEqualTo(200);
    }

    @Test
    void aServiceThatHasLostItsKeySaysWhatToDoAndLosesNothingElse() throws Exception {
        Receiver receiver = receiver();
        Answer endpoint = endpoint(receiver);
        Answer vehicle = shop.vehicle("1998 roadster " + tag);
        Answer job = repaired(vehicle);
        tellByMail(job, "tech." + tag + "@shop.example", driver);
        // What another key has sealed cannot be told from what was changed; both are not opened.
        jdbc.sql("update webhook_endpoint set secret = replace(secret, 'sealed:1:', 'sealed:1:0')")
                .update();
        shop.drive(vehicle, "2026-06-03T08:00:00Z", Shop.RAN_CLEAN).is(201);
        shop.drive(vehicle, "2026-06-04T08:00:00Z", Shop.RAN_CLEAN).is(201);
        jdbc.sql("update mail_recipient set sealed_token = replace(sealed_token, 'sealed:1:', 'sealed:1:0')")
                .update();
        bell.ring();
        Answer delivery = delivery(endpoint);
        assertThat(delivery.body())
                .contains("the secret of this endpoint was sealed with another key than the service has now");
        assertThat(delivery.at("/delivery/state")).isEqualTo("PENDING");
        assertThat(receiver.requests()).isEmpty();
        String stop = only(post.to(driver)).getHeader("List-Unsubscribe")[0];
        client.get("/mail-stop/" + lastPart(stop.substring(0, stop.length() - 1)))
                .is(200);

        client.post(API + "/webhooks/" + endpoint.id() + "/rotate-secret", "{}").is(200);
        clock.forward(Duration.ofHours(1));
        bell.ring();
        assertThat(receiver.requests()).isNotEmpty();
    }

    private Answer keyed(String path, String json) {
        String key = UUID.randomUUID().toString();
        Answer first = client.post(path, json, "Idempotency-Key", key);
        assertThat(first.status()).as(first.body()).isBetween(200, 201);
        assertThat(client.post(path, json, "Idempotency-Key", key).body())
                .as("the same request once more")
                .isEqualTo(first.body());
        return first;
    }

    private static MimeMessage only(List<MimeMessage> messages) {
        assertThat(messages).hasSize(1);
        return messages.get(0);
    }

    private static String lastPart(String url) {
        return url.replaceAll(".*/", "").replace(".ics", "");
    }

    private interface Found {
        void text(String place, String text);
    }

    /** Every column of every table, read as text. */
    private List<String> texts(Found found) throws SQLException {
        List<String> looked = new ArrayList<>();
        try (Connection connection = DriverManager.getConnection(
                        database.getJdbcUrl(), database.getUsername(), database.getPassword());
                Statement list = connection.createStatement();
                ResultSet tables = list.executeQuery("select table_name from information_schema.tables"
                        + " where table_schema = current_schema and table_type = 'BASE TABLE'")) {
            while (tables.next()) {
                String table = tables.getString(1);
                try (Statement select = connection.createStatement();
                        ResultSet rows = select.executeQuery("select * from \"" + table + "\"")) {
                    for (int i = 1; i <= rows.getMetaData().getColumnCount(); i++) {
                        looked.add((table + "." + rows.getMetaData().getColumnName(i)).toLowerCase(Locale.ROOT));
                    }
                    while (rows.next()) {
                        for (int i = 1; i <= rows.getMetaData().getColumnCount(); i++) {
                            found.text(table + "." + rows.getMetaData().getColumnName(i), text(rows, i));
                        }
                    }
                }
            }
        }
        return looked;
    }

    private static String text(ResultSet rows, int column) throws SQLException {
        String type = rows.getMetaData().getColumnTypeName(column).toLowerCase(Locale.ROOT);
        if (type.contains("binary") || type.equals("bytea")) {
            byte[] bytes = rows.getBytes(column);
            return bytes == null ? "" : new String(bytes, StandardCharsets.ISO_8859_1);
        }
        return String.valueOf(rows.getString(column));
    }

    /** Also between the rows, where H2 keeps what was there before. */
    private List<String> inFile(Map<String, String> secrets) throws IOException {
        if (!database.getJdbcUrl().startsWith("jdbc:h2:file:")) {
            return List.of();
        }
        Path file = Path.of(database.getJdbcUrl().replaceAll("jdbc:h2:file:([^;]+);.*", "$1.mv.db"));
        String bytes = Files.readString(file, StandardCharsets.ISO_8859_1);
        return secrets.entrySet().stream()
                .filter(secret -> bytes.contains(secret.getValue()))
                .map(Map.Entry::getKey)
                .toList();
    }
}
