package dev.stayfixed.telling.delivery;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.Callable;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Sends some messages to one receiver: each stream in its order, a few streams at once, and not for long. */
final class Sending {

    /** Streams that are sent at the same time. */
    static final int AT_ONCE = 4;

    /** After that no further message is begun, so that the notes of those that were sent do not wait. */
    static final Duration NOTE_AFTER = Duration.ofMillis(100);

    private final Queue<List<Delivery>> streams;
    private final Queue<DeliveryRecord.Tried> tried = new ConcurrentLinkedQueue<>();
    private final Function<Delivery, Channel.Answer> channel;
    private final Clock clock;
    private final Instant end;
    private volatile boolean goesOn = true;

    /**
     * Nothing is sent yet.
     *
     * @param due in the order of their streams
     * @param channel tries once, and throws nothing
     */
    Sending(Collection<Delivery> due, Function<Delivery, Channel.Answer> channel, Clock clock) {
        this.streams = new ConcurrentLinkedQueue<>(due.stream()
                .collect(Collectors.groupingBy(Delivery::stream, LinkedHashMap::new, Collectors.toList()))
                .values());
        this.channel = channel;
        this.clock = clock;
        this.end = clock.instant().plus(NOTE_AFTER);
    }

    /** Every try that was made; at least one. Interrupted, it gives those that were made before. */
    List<DeliveryRecord.Tried> run(ExecutorService threads) {
        int senders = Math.min(AT_ONCE, streams.size());
        if (senders == 1) {
            sendStreams();
            return List.copyOf(tried);
        }
        Callable<Object> sender = Executors.callable(this::sendStreams);
        try {
            threads.invokeAll(Collections.nCopies(senders, sender));
        } catch (InterruptedException e) {
            goesOn = false;
            Thread.currentThread().interrupt();
        }
        return List.copyOf(tried);
    }

    private void sendStreams() {
        for (List<Delivery> stream = streams.poll(); stream != null; stream = streams.poll()) {
            for (Delivery delivery : stream) {
                DeliveryRecord.Tried one = attempt(delivery);
                tried.add(one);
                if (one.answer() instanceof Channel.Answer.NotNow
                        || !clock.instant().isBefore(end)) {
                    goesOn = false;
                }
                if (!goesOn) {
                    return;
                }
                if (!(one.answer() instanceof Channel.Answer.Accepted)) {
                    break;
                }
            }
        }
    }

    private DeliveryRecord.Tried attempt(Delivery delivery) {
        Instant at = clock.instant();
        Channel.Answer answer = channel.apply(delivery);
        return new DeliveryRecord.Tried(
                delivery.id(), at, Duration.between(at, clock.instant()).toMillis(), answer);
    }
}
