package dev.stayfixed.telling.delivery;

import com.github.kagkarlsson.scheduler.task.CompletionHandler;
import com.github.kagkarlsson.scheduler.task.FailureHandler;
import com.github.kagkarlsson.scheduler.task.Task;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import dev.stayfixed.platform.storage.Durably;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;

/**
 * What happens when the alarm of a delivery rings. The rows of the outbox decide whether there is anything to do: an alarm that rings
 * twice, too early or too late does no harm. One alarm is heard by one instance at a time.
 */
@Component
class DeliveryTask {

    private static final Logger LOG = LoggerFactory.getLogger(DeliveryTask.class);
    private static final Duration BEHIND_ANOTHER = Duration.ofSeconds(1);
    private static final Duration TROUBLE = Duration.ofSeconds(10);

    private final StoredDeliveries deliveries;
    private final DeliveryRecord recording;
    private final Durably durably;
    private final Clock clock;
    private final Map<String, Channel> channels;

    /** Sent, but the database did not take the note: written down at the next alarm, so that nothing is sent twice. */
    private final Map<UUID, DeliveryRecord.Tried> unrecorded = new ConcurrentHashMap<>();

    DeliveryTask(
            StoredDeliveries deliveries,
            DeliveryRecord recording,
            Durably durably,
            Clock clock,
            List<Channel> channels) {
        this.deliveries = deliveries;
        this.recording = recording;
        this.durably = durably;
        this.clock = clock;
        this.channels = channels.stream().collect(Collectors.toMap(Channel::name, Function.identity()));
    }

    Task<Void> task() {
        return Tasks.custom(Alarms.TASK, Void.class)
                .onFailure(new FailureHandler.OnFailureRetryLater<>(TROUBLE))
                .onDeadExecutionRevive()
                .execute((instance, context) -> {
                    Optional<Instant> next = ring(UUID.fromString(instance.getId()));
                    return next.<CompletionHandler<Void>>map(
                                    at -> (done, operations) -> operations.reschedule(done, at))
                            .orElse(new CompletionHandler.OnCompleteRemove<>());
                });
    }

    /** Does what is due; when to ring again, empty for never. */
    Optional<Instant> ring(UUID id) {
        if (!unrecorded.containsKey(id)) {
            Optional<Delivery> found =
                    durably.read(() -> deliveries.find(id)).filter(d -> d.state() == Delivery.State.PENDING);
            if (found.isEmpty()) {
                return Optional.empty();
            }
            Optional<Instant> wait = durably.read(() -> notYet(found.get()));
            if (wait.isPresent()) {
                return wait;
            }
            unrecorded.put(id, attempt(found.get()));
        }
        Optional<Instant> next = recording.record(id, unrecorded.get(id));
        unrecorded.remove(id);
        return next;
    }

    private Optional<Instant> notYet(Delivery delivery) {
        Instant now = clock.instant();
        Optional<Delivery> ahead =
                deliveries.head(delivery.stream()).filter(head -> !head.id().equals(delivery.id()));
        if (ahead.isPresent()) {
            Instant theirs = ahead.get().nextAt();
            return Optional.of((theirs.isAfter(now) ? theirs : now).plus(BEHIND_ANOTHER));
        }
        return Optional.of(delivery.nextAt()).filter(due -> due.isAfter(now));
    }

    private DeliveryRecord.Tried attempt(Delivery delivery) {
        Instant at = clock.instant();
        Channel.Answer answer = send(delivery);
        return new DeliveryRecord.Tried(
                at, Duration.between(at, clock.instant()).toMillis(), answer);
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
            return later("the service made a mistake: " + e.getClass().getSimpleName());
        }
    }

    private static Channel.Answer later(String detail) {
        return new Channel.Answer.TryLater(detail, Optional.empty(), Optional.empty());
    }
}
