package dev.stayfixed.telling;

import dev.stayfixed.jobs.Shops;
import dev.stayfixed.platform.MailServer;
import dev.stayfixed.platform.MovingClock;
import dev.stayfixed.telling.delivery.Bell;
import dev.stayfixed.web.Answer;
import dev.stayfixed.web.Client;
import dev.stayfixed.web.Shop;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;

/** What every test of telling has at hand. */
abstract class Told {

    static final String API = "/api/v1";

    @LocalServerPort
    int port;

    @Autowired
    Bell bell;

    @Autowired
    MovingClock clock;

    @Autowired
    MailServer.Post post;

    @Autowired
    Shops shops;

    Client client;
    Shop shop;
    private final List<Receiver> receivers = new ArrayList<>();

    @BeforeEach
    void connect() {
        client = new Client(port);
        shop = new Shop(client);
    }

    @AfterEach
    void leaveNothingPending() throws IOException {
        for (Receiver receiver : receivers) {
            receiver.close();
        }
        client.get(API + "/webhooks")
                .json()
                .at("/items")
                .forEach(e -> client.send(
                                "DELETE", API + "/webhooks/" + e.at("/id").asString(), "", new byte[0], "If-Match", "*")
                        .is(204));
    }

    Receiver receiver() throws IOException {
        Receiver receiver = new Receiver();
        receivers.add(receiver);
        return receiver;
    }

    /** For what drives bring; time that a test lets pass makes other jobs silent. */
    Answer endpoint(Receiver receiver) {
        String kinds = "[\"CONFIRMED_FIXED\",\"FAILED_ONCE\",\"RECURRED\",\"CAME_BACK\"]";
        return client.post(API + "/webhooks", "{\"url\":\"%s\",\"kinds\":%s}".formatted(receiver.url(), kinds))
                .is(201);
    }

    /** A job with a repair, on a vehicle. */
    Answer repaired(Answer vehicle) {
        Answer job = shop.job(vehicle);
        shop.repair(job, "2026-06-01T10:00:00Z");
        return job;
    }

    void confirm(Answer vehicle) {
        shop.drive(vehicle, "2026-06-03T08:00:00Z", Shop.RAN_CLEAN).is(201);
        shop.drive(vehicle, "2026-06-04T08:00:00Z", Shop.RAN_CLEAN).is(201);
    }

    void tellByMail(Answer job, String technician, String driver) {
        client.put(
                        API + "/jobs/" + job.id() + "/notifications",
                        "{\"technicianEmail\":\"%s\",\"driverEmail\":\"%s\"}".formatted(technician, driver),
                        "If-Match",
                        "*")
                .is(200);
    }

    Answer delivery(Answer endpoint) {
        String path = API + "/webhooks/" + endpoint.id() + "/deliveries";
        return client.get(path + "/" + client.get(path).at("/items/0/id")).is(200);
    }

    List<String> inboxOf(Answer job) {
        List<String> kinds = new ArrayList<>();
        client.get(API + "/inbox?limit=200").json().at("/items").forEach(item -> {
            if (item.at("/jobId").asString("").equals(job.id())) {
                kinds.add(0, item.at("/kind").asString());
            }
        });
        return kinds;
    }
}
