package dev.stayfixed.telling.delivery;

import com.github.kagkarlsson.scheduler.task.FailureHandler;
import com.github.kagkarlsson.scheduler.task.Task;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import dev.stayfixed.platform.CurrentShop;
import dev.stayfixed.platform.storage.Durably;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;

/**
 * What happens when the alarm of a receiver rings: all that is due for it is sent. The rows of the outbox decide whether there is
 * anything to do: an alarm that rings twice, too early or too late does no harm. One alarm is heard by one instance at a time.
 */
@Component
class DeliveryTask {

    private static final Logger LOG = LoggerFactory.getLogger(DeliveryTask.class);

    /** Messages that are sent before their notes are written, in one write: what a crash can repeat. */
    static final int TOGETHER = 32;

    /** Whose alarm has rung for so long lets others ring. */
    private static final Duration TURN = Duration.ofSeconds(10);

    private static final Duration TROUBLE = Duration.ofSeconds(10);

    private final StoredDeliveries deliveries;
    private final Alarms alarms;
    private final DeliveryRecord recording;
    private final Durably durably;
    private final CurrentShop shop;
    private final Clock clock;
    private final Map<String, Channel> channels;
    private final ExecutorService senders = Executors.newCachedThreadPool(work -> {
        Thread thread = new Thread(work, "sender");
        thread.setDaemon(true);
        return thread;
    });

    /** Sent, but the database did not take the notes: written down at the next alarm, so that nothing is sent twice. */
    private final Map<Addressee, List<DeliveryRecord.Tried>> unrecorded = new ConcurrentHashMap<>();

    DeliveryTask(
            StoredDeliveries deliveries,
            Alarms alarms,
            DeliveryRecord recording,
            Durably durably,
            CurrentShop shop,
            Clock clock,
            List<Channel> channels) {
        this.deliveries = deliveries;
        this.alarms = alarms;
        this.recording = recording;
        this.durably = durably;
        this.shop = shop;
        this.clock = clock;
        this.channels = channels.stream().collect(Collectors.toMap(Channel::name, Function.identity()));
    }

    Task<Void> task() {
        return Tasks.custom(Alarms.TASK, Void.class)
                .onFailure(new FailureHandler.OnFailureRetryLater<>(TROUBLE))
                .onDeadExecutionRevive()
                .execute((instance, context) -> {
                    Addressee to = Addressee.named(instance.getId());
                    Optional<Instant> quiet = ring(to);
                    return (done, operations) -> shop.in(
                            to.shop(),
                            () -> durably.write(() -> next(to, quiet)
                                    .ifPresentOrElse(at -> operations.reschedule(done, at), operations::remove)));
                });
    }

    /** Does what is due, for a while; until when the receiver is to be left in peace, if it is. */
    Optional<Instant> ring(Addressee to) {
        return shop.in(to.shop(), () -> ringInShop(to));
    }

    private Optional<Instant> ringInShop(Addressee to) {
        Instant end = clock.instant().plus(TURN);
        Optional<Instant> quiet = Optional.empty();
        record(to);
        while (clock.instant().isBefore(end) && !Thread.currentThread().isInterrupted()) {
            boolean byHandOnly = quiet.isPresent();
            List<Delivery> due = durably.read(() -> deliveries.due(to, byHandOnly, clock.instant(), TOGETHER));
            if (due.isEmpty()) {
                break;
            }
            List<DeliveryRecord.Tried> tried = new Sending(due, delivery -> send(to, delivery), clock).run(senders);
            unrecorded.put(to, tried);
            record(to);
            for (DeliveryRecord.Tried one : tried) {
                if (one.answer() instanceof Channel.Answer.NotNow pause) {
                    quiet = Optional.of(pause.until());
                }
            }
        }
        return quiet;
    }

    private void record(Addressee to) {
        List<DeliveryRecord.Tried> tried = unrecorded.get(to);
        if (tried != null) {
            recording.record(tried);
            unrecorded.remove(to);
        }
    }

    /** In a running write: when to ring again, empty where nothing waits any more. */
    private Optional<Instant> next(Addressee to, Optional<Instant> quiet) {
        Instant now = clock.instant();
        if (!alarms.nothingIsAdded(to)
                || !deliveries.due(to, quiet.isPresent(), now, 1).isEmpty()) {
            return Optional.of(now);
        }
        return Stream.concat(deliveries.firstAfter(to, now).stream(), quiet.stream())
                .min(Comparator.naturalOrder());
    }

    /** From threads of their own, too. */
    private Channel.Answer send(Addressee to, Delivery delivery) {
        return shop.in(to.shop(), () -> send(delivery));
    }

    private Channel.Answer send(Delivery delivery) {
        Channel channel = channels.get(delivery.channel());
        if (channel == null) {
            return later("this instance knows no channel " + delivery.channel());
        }
        try {
            return channel.send(delivery);
        } catch (RuntimeException e) {
            LOG.error("delivery {} could not be tried", delivery.id(), e);
            return later("the service made a mistake and wrote it to its log");
        }
    }

    private static Channel.Answer later(String detail) {
        return new Channel.Answer.TryLater(detail, Optional.empty(), Optional.empty());
    }
}
