package dev.stayfixed.telling.delivery;

import static org.assertj.core.api.Assertions.assertThat;

import com.github.kagkarlsson.scheduler.Scheduler;
import com.github.kagkarlsson.scheduler.SchedulerName;
import dev.stayfixed.English;
import dev.stayfixed.platform.CurrentShop;
import dev.stayfixed.platform.TellingOnPostgres;
import dev.stayfixed.platform.storage.Durably;
import dev.stayfixed.telling.Announcer;
import dev.stayfixed.telling.Event;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import javax.sql.DataSource;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.Timeout;
import org.springframework.beans.factory.annotation.Autowired;

/** Two schedulers on one PostgreSQL: each message goes out once, and each stream in its order. */
@TellingOnPostgres
@Timeout(120)
class RacingInstancesTest {

    private static final int STREAMS = 20;
    private static final int EACH = 5;

    @Autowired
    DataSource dataSource;

    @Autowired
    Durably durably;

    @Autowired
    StoredDeliveries deliveries;

    @Autowired
    Alarms alarms;

    @Autowired
    DeliveryRecord recording;

    @Autowired
    Outbox outbox;

    @Autowired
    Announcer announcer;

    @Autowired
    Clock clock;

    @RepeatedTest(5)
    void nothingIsSentTwiceAndNothingOutOfOrder() throws Exception {
        Map<String, List<UUID>> sent = new ConcurrentHashMap<>();
        CountDownLatch all = new CountDownLatch(STREAMS * EACH);
        Channel channel = new Channel() {
            @Override
            public String name() {
                return "race";
            }

            @Override
            public Answer send(Delivery d) {
                sent.computeIfAbsent(d.stream(), s -> new CopyOnWriteArrayList<>())
                        .add(d.id());
                all.countDown();
                return new Answer.Accepted("taken", Optional.empty());
            }
        };
        Map<String, List<UUID>> added = new HashMap<>();
        Event event = announcer.test(English.reason("a race"));
        List<UUID> targets =
                Stream.generate(UUID::randomUUID).limit(STREAMS / 2).toList();
        for (int i = 0; i < STREAMS * EACH; i++) {
            String stream = "race:" + i % STREAMS;
            UUID id = outbox.add(new Delivery.Draft(
                    "race", targets.get(i % STREAMS / 2), stream, event.id(), Optional.empty(), "TEST", "{}", false));
            added.computeIfAbsent(stream, s -> new ArrayList<>()).add(id);
        }
        // The schedulers' clock goes on from where the test's clock stands, whatever the date on this machine is.
        Clock ticking = Clock.offset(
                Clock.systemUTC(), Duration.between(Clock.systemUTC().instant(), clock.instant()));
        List<Scheduler> instances = List.of(instance("one", channel, ticking), instance("two", channel, ticking));
        instances.forEach(Scheduler::start);
        try {
            assertThat(all.await(90, TimeUnit.SECONDS)).isTrue();
        } finally {
            instances.forEach(Scheduler::stop);
        }
        assertThat(sent).isEqualTo(added);
        added.values().stream().flatMap(List::stream).forEach(id -> {
            Delivery delivery = durably.read(() -> deliveries.find(id)).orElseThrow();
            assertThat(delivery.state()).isEqualTo(Delivery.State.DELIVERED);
            assertThat(delivery.attempts()).isOne();
        });
    }

    private Scheduler instance(String name, Channel channel, Clock ticking) {
        DeliveryTask task =
                new DeliveryTask(deliveries, alarms, recording, durably, new CurrentShop(), clock, List.of(channel));
        return Scheduler.create(durably.connections(dataSource), List.of(task.task()))
                .clock(ticking::instant)
                .schedulerName(new SchedulerName.Fixed(name))
                .threads(4)
                .pollingInterval(Duration.ofMillis(50))
                .build();
    }
}
