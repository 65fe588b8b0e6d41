package dev.stayfixed.judging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.stayfixed.platform.OnH2;
import dev.stayfixed.web.Answer;
import dev.stayfixed.web.Client;
import dev.stayfixed.web.Shop;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.DefaultApplicationArguments;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.jdbc.core.simple.JdbcClient;

@OnH2
class ReconciliationTest {

    @LocalServerPort
    int port;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    Reconciliation reconciliation;

    @Test
    void itBeginsWithTheService() {
        assertThatThrownBy(() -> reconciliation.run(new DefaultApplicationArguments()))
                .as("started once already")
                .isInstanceOf(IllegalThreadStateException.class);
    }

    @Test
    void whatIsDerivedIsMadeAgainFromTheSubmissions() {
        Client client = new Client(port);
        Shop shop = new Shop(client);
        Answer vehicle = shop.vehicle("after a crash");
        Answer job = shop.job(vehicle);
        shop.repair(job, "2026-06-01T10:00:00Z");
        Answer drive =
                shop.drive(vehicle, "2026-06-02T08:00:00Z", Shop.DID_NOT_RUN).is(201);
        shop.correct(drive, "2026-06-02T09:00:00Z", Shop.RAN_CLEAN).is(200);
        assertThat(shop.standing(job)).isEqualTo("1 of 2 clean trips");
        Answer before = client.get("/api/v1/drives/" + drive.id());

        UUID driveId = UUID.fromString(drive.id());
        assertThat(jdbc.sql("delete from drive where id = ?").param(driveId).update())
                .isOne();
        jdbc.sql("update fault set standing_words = 'nonsense', standing_state = 'RECURRED'")
                .update();
        client.get("/api/v1/drives/" + drive.id()).isProblem(404, "not-found");

        reconciliation.run();

        assertThat(shop.standing(job)).isEqualTo("1 of 2 clean trips");
        Answer after = client.get("/api/v1/drives/" + drive.id());
        assertThat(after.body()).isEqualTo(before.body());
        assertThat(after.etag()).isEqualTo("\"2\"");
    }
}
