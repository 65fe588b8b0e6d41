package dev.stayfixed.learning;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.learning.Lesson.Topic;
import dev.stayfixed.web.Answer;
import dev.stayfixed.web.Client;
import dev.stayfixed.web.Shop;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.core.io.ClassPathResource;
import org.springframework.jdbc.core.simple.JdbcClient;

/** The sums that the shop learns from are those of all attempts, whatever was taken back, counted again or folded meanwhile. */
abstract class LessonStories {

    private static final Comparator<Lesson> LEADING = Comparator.comparing((Lesson lesson) -> -lesson.back())
            .thenComparing(lesson -> -lesson.repairs())
            .thenComparing(Lesson::name);

    @LocalServerPort
    int port;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    StoredLessons stored;

    private Client client;
    private Shop shop;

    @BeforeEach
    void connect() {
        client = new Client(port);
        shop = new Shop(client);
    }

    @Test
    void theSumsAreThoseThatTheMigrationFinds() throws IOException {
        Answer proven = repaired("Proven", "Catalyst  replaced\n");
        drive(proven, 1, Shop.RAN_CLEAN);
        Answer second = drive(proven, 2, Shop.RAN_CLEAN);
        drive(proven, 40, Shop.RAN_AND_FAILED);
        areWhatTheMigrationFinds();
        stored.fold();
        areWhatTheMigrationFinds();
        client.put("/api/v1/drives/" + second.id() + "/left-out", "{\"reason\":\"another car\"}")
                .is(200);
        Answer recurred = repaired("Recurred", "\uD83D\uDE97 catalyst replaced");
        drive(recurred, 1, Shop.RAN_AND_FAILED);
        drive(recurred, 2, Shop.RAN_AND_CONFIRMED);
        Answer held = repaired("Held", "catalyst replaced " + "and much more ".repeat(40));
        drive(held, 1, Shop.RAN_CLEAN);
        drive(held, 2, Shop.RAN_CLEAN);
        drive(held, 300, Shop.RAN_CLEAN);
        shop.job(held);
        areWhatTheMigrationFinds();
        stored.fold();
        areWhatTheMigrationFinds();
        assertThat(jdbc.sql("select count(*) from lesson where folded = false")
                        .query(Integer.class)
                        .single())
                .isZero();
    }

    private void areWhatTheMigrationFinds() throws IOException {
        List<String> migration = Arrays.stream(new ClassPathResource("db-migrations/V13__lessons.sql")
                        .getContentAsString(StandardCharsets.UTF_8)
                        .split(";"))
                .map(String::strip)
                .toList();
        String attempts = "select * from attempt_outcome order by repair_id, fault_id";
        List<Map<String, Object>> kept = jdbc.sql(attempts).query().listOfRows();
        migration.stream()
                .map(statement -> statement.substring(Math.max(0, statement.indexOf("update attempt_outcome"))))
                .filter(statement -> statement.startsWith("update"))
                .forEach(statement -> jdbc.sql(statement).update());
        assertThat(jdbc.sql(attempts).query().listOfRows()).isEqualTo(kept);
        List<Lesson> expected = migration.stream()
                .filter(statement -> statement.startsWith("insert into lesson"))
                .flatMap(insert -> jdbc
                        .sql(insert.substring(insert.indexOf("select")))
                        .query((row, number) -> new Lesson(
                                Topic.valueOf(row.getString(2)),
                                row.getString(3),
                                row.getInt(5),
                                row.getInt(6),
                                row.getInt(7)))
                        .list()
                        .stream())
                .toList();
        assertThat(stored.of(EnumSet.allOf(Topic.class))).containsExactlyInAnyOrderElementsOf(expected);
        for (Topic topic : List.of(Topic.CODE, Topic.REPAIR)) {
            List<Lesson> all = expected.stream()
                    .filter(lesson -> lesson.topic() == topic)
                    .sorted(LEADING)
                    .toList();
            StoredLessons.Leading leading = stored.leading(topic, 2);
            assertThat(leading.lessons()).isEqualTo(all.subList(0, Math.min(2, all.size())));
            assertThat(leading.left()).isEqualTo(Math.max(0, all.size() - 2));
        }
    }

    private Answer repaired(String name, String done) {
        Answer vehicle = shop.vehicle(name);
        Answer job = client.post(
                        "/api/v1/jobs",
                        "{\"vehicleId\":\"%s\",\"openedAt\":\"2025-06-01T08:00:00Z\",\"faults\":[{\"code\":\"P0420\"}]}"
                                .formatted(vehicle.id()))
                .is(201);
        client.post(
                        "/api/v1/jobs/" + job.id() + "/repairs",
                        "{\"performedAt\":\"2025-06-01T09:00:00Z\",\"description\":\"%s\",\"codesCleared\":true}"
                                .formatted(done.replace("\n", "\\n")))
                .is(201);
        return vehicle;
    }

    private Answer drive(Answer vehicle, int day, String scan) {
        return shop.drive(
                        vehicle,
                        Instant.parse("2025-06-01T10:07:13.123456789Z")
                                .plus(Duration.ofDays(day))
                                .toString(),
                        scan)
                .is(201);
    }
}
