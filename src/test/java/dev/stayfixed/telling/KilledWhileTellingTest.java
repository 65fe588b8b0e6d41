package dev.stayfixed.telling;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.platform.OwnProcess;
import dev.stayfixed.web.Answer;
import dev.stayfixed.web.Client;
import dev.stayfixed.web.Shop;
import java.io.IOException;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Set;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The service in a process of its own on H2, killed with SIGKILL while it sends: after the next start everything has been told. */
@Timeout(900)
class KilledWhileTellingTest {

    private static final int JOBS = 40;

    /** Those that can be between their sending and its note when the process dies: the notes of so many are written together. */
    private static final int IN_FLIGHT = 32;

    @Test
    void nothingIsLostAndOnlyWhatWasInFlightIsRepeated(@TempDir Path folder) throws Exception {
        CountDownLatch some = new CountDownLatch(3);
        CountDownLatch all = new CountDownLatch(JOBS);
        Set<String> seen = new HashSet<>();
        try (Receiver receiver = new Receiver()) {
            receiver.answering(out -> {
                some.countDown();
                synchronized (seen) {
                    for (Receiver.Request request : receiver.requests()) {
                        if (seen.add(request.id())) {
                            all.countDown();
                        }
                    }
                }
                Receiver.status(200).answer(out);
            });
            Set<String> jobs;
            try (OwnProcess first = start(folder)) {
                jobs = confirmSome(new Client(first.port()), receiver);
                assertThat(some.await(120, TimeUnit.SECONDS)).isTrue();
                assertThat(first.kill()).as("killed by signal 9").isEqualTo(137);
            }
            try (OwnProcess second = start(folder)) {
                assertThat(second.port()).isPositive();
                assertThat(all.await(120, TimeUnit.SECONDS))
                        .as("told about all")
                        .isTrue();
            }
            Set<String> told = new HashSet<>();
            receiver.requests().forEach(r -> told.add(r.json().at("/data/jobId").asString()));
            assertThat(told).isEqualTo(jobs);
            assertThat(receiver.requests()).hasSizeLessThanOrEqualTo(JOBS + IN_FLIGHT);
        }
    }

    private static Set<String> confirmSome(Client client, Receiver receiver) {
        Shop shop = new Shop(client);
        client.post("/api/v1/webhooks", "{\"url\":\"%s\"}".formatted(receiver.url()))
                .is(201);
        Set<String> jobs = new HashSet<>();
        for (int i = 0; i < JOBS; i++) {
            Answer vehicle = shop.vehicle("killed while telling " + i);
            Answer job = shop.job(vehicle, "{\"code\":\"P0420\",\"trips\":\"ONE\"}");
            shop.repair(job, "2020-01-01T00:00:00Z");
            shop.drive(vehicle, "2020-01-02T08:00:00Z", Shop.RAN_CLEAN).is(201);
            jobs.add(job.id());
        }
        return jobs;
    }

    private static OwnProcess start(Path folder) throws IOException {
        return new OwnProcess(
                OwnProcess.url(folder), "--stayfixed.webhooks.private-targets=true", "--stayfixed.heartbeat=2s");
    }
}
