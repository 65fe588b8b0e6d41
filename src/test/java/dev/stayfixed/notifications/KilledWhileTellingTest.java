package dev.stayfixed.notifications;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.StayfixedApplication;
import dev.stayfixed.web.Answer;
import dev.stayfixed.web.Client;
import dev.stayfixed.web.Shop;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Set;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The service in a process of its own on H2, killed with SIGKILL while it sends: after the next start everything has been told. */
@Timeout(240)
class KilledWhileTellingTest {

    private static final int JOBS = 12;

    /** Those that can be between their sending and its note when the process dies: one for each thread of the scheduler. */
    private static final int IN_FLIGHT = 4;

    private static final Pattern READY = Pattern.compile("Stayfixed is ready: open http://localhost:(\\d+)/");

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
            Process first = start(folder);
            Set<String> jobs = new HashSet<>();
            try {
                jobs.addAll(confirmSome(new Client(port(first)), receiver));
                assertThat(some.await(60, TimeUnit.SECONDS)).isTrue();
            } finally {
                first.destroyForcibly().waitFor();
            }
            assertThat(first.exitValue()).as("killed by signal 9").isEqualTo(137);
            Process second = start(folder);
            try {
                assertThat(port(second)).isPositive();
                assertThat(all.await(120, TimeUnit.SECONDS))
                        .as("told about all")
                        .isTrue();
            } finally {
                second.destroyForcibly().waitFor();
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

    private static Process start(Path folder) throws IOException {
        return new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx512m",
                        "-cp",
                        System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")),
                        StayfixedApplication.class.getName(),
                        "--server.port=0",
                        "--stayfixed.webhooks.private-targets=true",
                        "--stayfixed.heartbeat=1s",
                        "--spring.datasource.url=jdbc:h2:file:" + folder.resolve("stayfixed")
                                + ";WRITE_DELAY=0;DB_CLOSE_ON_EXIT=FALSE;MODE=PostgreSQL")
                .redirectErrorStream(true)
                .start();
    }

    /** Reads on in the background, so that the process never waits for its output to be read. */
    private static int port(Process service) throws IOException {
        StringBuilder output = new StringBuilder();
        BufferedReader reader = service.inputReader(StandardCharsets.UTF_8);
        for (String line = reader.readLine(); line != null; line = reader.readLine()) {
            output.append(line).append('\n');
            Matcher ready = READY.matcher(line);
            if (ready.find()) {
                Thread drain = new Thread(() -> reader.lines().forEach(output::append), "drain");
                drain.setDaemon(true);
                drain.start();
                return Integer.parseInt(ready.group(1));
            }
        }
        throw new IllegalStateException("the service did not start:\n" + output);
    }
}
