package dev.stayfixed.web;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.platform.OnPostgres;
import dev.stayfixed.platform.OtherInstance;
import dev.stayfixed.platform.Wire;
import java.io.IOException;
import java.net.URI;
import java.util.UUID;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.Timeout;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;

/** The service while its PostgreSQL cannot be reached, or is connected and says nothing. */
@OnPostgres
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@Timeout(60)
class DatabaseAwayTest {

    private static final String V = "/api/v1/vehicles";

    @Autowired
    JdbcConnectionDetails database;

    private Wire wire;
    private OtherInstance service;
    private Client client;

    /** With shorter patience than in production, so that the test is quick. */
    @BeforeAll
    void startBehindTheWire() throws IOException {
        URI address = URI.create(database.getJdbcUrl().substring("jdbc:".length()));
        wire = new Wire(address.getPort());
        String url = "jdbc:postgresql://127.0.0.1:" + wire.port() + address.getPath();
        service = new OtherInstance(
                url,
                database,
                "spring.datasource.hikari.connection-timeout=500",
                "spring.datasource.hikari.validation-timeout=250",
                "spring.datasource.hikari.data-source-properties.socketTimeout=1");
        client = new Client(service.port());
    }

    @AfterAll
    void end() throws IOException {
        service.close();
        wire.close();
    }

    @Test
    void unreachable() throws Exception {
        wire.cut();
        isAwayAndComesBack();
    }

    @Test
    void silent() {
        wire.silence();
        isAwayAndComesBack();
    }

    private void isAwayAndComesBack() {
        String key = UUID.randomUUID().toString();
        String body = "{\"description\":\"while it was away " + key + "\"}";
        try {
            isAway(client.get(V));
            isAway(client.post(V, body));
            isAway(client.post(V, body, "Idempotency-Key", key));
            Answer page = client.get("/", "Accept", "text/html").is(503);
            assertThat(page.header("Retry-After")).isEqualTo("5");
            assertThat(page.body()).contains("The database does not answer");
        } finally {
            wire.mend();
        }
        Answer taken = untilBack(body, key).is(201);
        assertThat(client.post(V, body, "Idempotency-Key", key).is(201).id()).isEqualTo(taken.id());
        assertThat(client.get(V + "?q=" + key).is(200).json().at("/items")).hasSize(1);
        client.get("/", "Accept", "text/html").is(200);
    }

    /** As a client does that was asked to come back. */
    private Answer untilBack(String body, String key) {
        Answer answer = client.post(V, body, "Idempotency-Key", key);
        while (answer.status() == 503) {
            answer = client.post(V, body, "Idempotency-Key", key);
        }
        return answer;
    }

    private static void isAway(Answer answer) {
        assertThat(answer.isProblem(503, "database-away").header("Retry-After")).isEqualTo("5");
    }
}
