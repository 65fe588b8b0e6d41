package dev.stayfixed.platform.storage;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.platform.OtherInstance;
import dev.stayfixed.platform.OwnProcess;
import dev.stayfixed.platform.RealPostgres;
import dev.stayfixed.web.Answer;
import dev.stayfixed.web.Client;
import java.nio.file.Path;
import java.util.Map;
import java.util.UUID;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.DriverManagerDataSource;

/** What was stored in the clear is sealed or hashed by the next start, and goes on working. */
@Timeout(240)
class SecretsOfBeforeTest {

    /** The last script of the service that kept secrets in the clear. */
    private static final String BEFORE = "38";

    private static final String STOP_LINK = "https://shop.example/mail-stop/stop-token-of-before-0123456789";
    private static final String SECRET = "whsec_c2VjcmV0LW9mLWJlZm9yZS0wMTIz";
    private static final String PREVIOUS = "whsec_cHJldmlvdXMtb2YtYmVmb3JlLTAx";

    private final UUID endpoint = UUID.randomUUID();

    @Test
    void onH2(@TempDir Path folder) {
        String url = OwnProcess.url(folder);
        sealedByTheNextStart(url, "stayfixed", "", Product.H2, folder);
    }

    @Test
    void onPostgres(@TempDir Path folder) throws Exception {
        JdbcConnectionDetails postgres = RealPostgres.emptyDatabase();
        sealedByTheNextStart(
                postgres.getJdbcUrl(),
                String.valueOf(postgres.getUsername()),
                String.valueOf(postgres.getPassword()),
                Product.POSTGRESQL,
                folder);
    }

    private void sealedByTheNextStart(String url, String user, String password, Product product, Path folder) {
        DriverManagerDataSource database = new DriverManagerDataSource(url, user, password);
        Flyway.configure()
                .dataSource(database)
                .locations("classpath:db-migrations")
                .placeholders(StorageConfiguration.words(product))
                .target(BEFORE)
                .load()
                .migrate();
        JdbcClient jdbc = JdbcClient.create(database);
        rowsOfBefore(jdbc);
        Path keyFile = folder.resolve("secret.key");
        try (OtherInstance service = new OtherInstance(url, user, password, "stayfixed.secret-key-file=" + keyFile)) {
            Client client = new Client(service.port());
            client.get("/mail-stop/stop-token-of-before-0123456789").is(200);
            client.get("/calendar/calendar-token-of-before-01234567.ics").is(200);
            Answer webhook = client.get("/api/v1/webhooks/" + endpoint).is(200);
            assertThat(webhook.body()).doesNotContain("whsec_");
        }
        Map<String, Object> row = jdbc.sql("select secret, previous_secret from webhook_endpoint")
                .query()
                .singleRow();
        Seal seal = new Seal(new SealSettings(null, keyFile));
        String place = "webhook_endpoint " + endpoint;
        assertThat(seal.open(String.valueOf(row.get("secret")), place)).contains(SECRET);
        assertThat(seal.open(String.valueOf(row.get("previous_secret")), place)).contains(PREVIOUS);
        assertThat(seal.open(String.valueOf(row.get("secret")), "webhook_endpoint " + UUID.randomUUID()))
                .as("in another row it is of no use")
                .isEmpty();
        assertThat(jdbc.sql("select payload from delivery").query(String.class).single())
                .doesNotContain("stop-token")
                .contains("\"text\":\"All is well.\\nTo stop these mails:\\n\"", "https://shop.example/mail-stop/\"");
        String body =
                jdbc.sql("select body from idempotency_key").query(String.class).single();
        assertThat(seal.open(body, "idempotency_key of-before"))
                .contains("/api/v1/jobs/1\n{\"secret\":\"shown once\"}");
        assertThat(Seal.isSealed(body)).isTrue();
        assertThat(new Seal(new SealSettings(null, folder.resolve("another.key")))
                        .open(body, "idempotency_key of-before"))
                .as("without the key")
                .isEmpty();
    }

    private void rowsOfBefore(JdbcClient jdbc) {
        UUID shop = jdbc.sql("select id from shop").query(UUID.class).single();
        UUID event = UUID.randomUUID();
        UUID recipient = UUID.randomUUID();
        jdbc.sql(
                        "insert into webhook_endpoint (id, shop_id, version, url, kinds, active, created_at, secret, previous_secret,"
                                + " previous_secret_until, failures_in_a_row)"
                                + " values (?, ?, 1, 'https://shop.example/hook', '', true, current_timestamp, ?, ?, current_timestamp, 0)")
                .params(endpoint, shop, SECRET, PREVIOUS)
                .update();
        jdbc.sql("insert into calendar_link (shop_id, token, made_at) values (?, 'calendar-token-of-before-01234567',"
                        + " current_timestamp)")
                .param(shop)
                .update();
        jdbc.sql("insert into mail_recipient (id, shop_id, address, token)"
                        + " values (?, ?, 'driver@home.example', 'stop-token-of-before-0123456789')")
                .params(recipient, shop)
                .update();
        jdbc.sql("insert into event (id, shop_id, kind, occurred_at, summary, content, occasion, in_inbox)"
                        + " values (?, ?, 'TEST', current_timestamp, 'a test', '{}', 'before', false)")
                .params(event, shop)
                .update();
        jdbc.sql(
                        "insert into delivery (id, shop_id, channel, target, stream, event_id, kind, payload, state, by_hand, attempts,"
                                + " created_at, next_at) values (?, ?, 'mail', ?, 'm', ?, 'TEST', ?, 'DELIVERED', false, 1,"
                                + " current_timestamp, current_timestamp)")
                .params(
                        UUID.randomUUID(),
                        shop,
                        recipient.toString(),
                        event,
                        "{\"subject\":\"Your car\",\"text\":\"All is well.\\nTo stop these mails:\\n" + STOP_LINK
                                + "\\n\",\"stop\":\"" + STOP_LINK + "\"}")
                .update();
        jdbc.sql(
                        "insert into idempotency_key (shop_id, name, fingerprint, created_at, status, content_type, location, body)"
                                + " values (?, 'of-before', 'f', current_timestamp, 201, 'application/json', '/api/v1/jobs/1', ?)")
                .params(shop, "{\"secret\":\"shown once\"}")
                .update();
    }
}
