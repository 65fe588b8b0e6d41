package dev.stayfixed.telling.delivery;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.stayfixed.English;
import dev.stayfixed.platform.CurrentShop;
import dev.stayfixed.platform.TellingOnH2;
import dev.stayfixed.platform.storage.Durably;
import dev.stayfixed.telling.Announcer;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationEventPublisher;

/** The database fails between the sending and its note: the message is not sent again, the note is written later. */
@TellingOnH2
class UnrecordedTest {

    @Autowired
    StoredDeliveries deliveries;

    @Autowired
    Alarms alarms;

    @Autowired
    Durably durably;

    @Autowired
    Outbox outbox;

    @Autowired
    Announcer announcer;

    @Autowired
    ApplicationEventPublisher events;

    @Autowired
    Clock clock;

    @Test
    void whatWasSentIsNotSentAgain() {
        AtomicBoolean down = new AtomicBoolean();
        AtomicInteger sent = new AtomicInteger();
        Durably failing = new Durably() {
            @Override
            public <T> T write(Supplier<T> work) {
                if (down.get()) {
                    throw new IllegalStateException("the database is down");
                }
                return durably.write(work);
            }

            @Override
            public void hold(String name) {
                durably.hold(name);
            }

            @Override
            public void share(String name) {
                durably.share(name);
            }

            @Override
            public boolean holdIfFree(String name) {
                return durably.holdIfFree(name);
            }

            @Override
            public <T> T read(Supplier<T> work) {
                return durably.read(work);
            }

            @Override
            public <T> T readThrough(String door, Supplier<T> work) {
                return durably.readThrough(door, work);
            }
        };
        Channel channel = new Channel() {
            @Override
            public String name() {
                return "outage";
            }

            @Override
            public Answer send(Delivery d) {
                sent.incrementAndGet();
                down.set(true);
                return new Answer.Accepted("taken", Optional.empty());
            }
        };
        DeliveryRecord recording = new DeliveryRecord(deliveries, failing, events, clock);
        DeliveryTask task =
                new DeliveryTask(deliveries, alarms, recording, durably, new CurrentShop(), clock, List.of(channel));
        UUID target = UUID.randomUUID();
        Addressee to = new Addressee(CurrentShop.DEFAULT, "outage", target);
        UUID id = outbox.add(new Delivery.Draft(
                "outage",
                target,
                "outage",
                announcer.test(English.reason("outage")).id(),
                Optional.empty(),
                "TEST",
                "{}",
                false));

        assertThatThrownBy(() -> task.ring(to)).hasMessage("the database is down");
        assertThatThrownBy(() -> task.ring(to)).hasMessage("the database is down");
        down.set(false);
        assertThat(task.ring(to)).isEmpty();
        assertThat(sent).hasValue(1);
        assertThat(outbox.get("outage", target, id).state()).isEqualTo(Delivery.State.DELIVERED);
    }
}
