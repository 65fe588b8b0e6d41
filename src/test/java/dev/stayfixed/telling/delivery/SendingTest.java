package dev.stayfixed.telling.delivery;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.platform.MovingClock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** What goes out of some messages that are due, and in which order. */
@Timeout(60)
class SendingTest {

    private static final Channel.Answer TAKEN = new Channel.Answer.Accepted("taken", Optional.empty());
    private static final Channel.Answer LATER = new Channel.Answer.TryLater("down", Optional.empty(), Optional.empty());

    private final MovingClock clock = new MovingClock();
    private final ExecutorService threads = Executors.newCachedThreadPool();
    private final Map<String, List<Delivery>> sent = new ConcurrentHashMap<>();

    @AfterEach
    void end() {
        threads.shutdownNow();
    }

    @Test
    void eachStreamGoesOutInItsOrder() {
        List<Delivery> due =
                IntStream.range(0, 60).mapToObj(i -> delivery("s" + i % 7)).toList();
        assertThat(run(due, d -> TAKEN)).hasSize(60);
        sent.forEach((stream, messages) -> assertThat(messages)
                .isEqualTo(due.stream().filter(d -> d.stream().equals(stream)).toList()));
    }

    @Test
    void aMessageThatIsNotAcceptedHoldsItsStreamOnly() {
        List<Delivery> due = List.of(delivery("a"), delivery("b"), delivery("a"), delivery("b"));
        assertThat(run(due, d -> d.stream().equals("a") ? LATER : TAKEN)).hasSize(3);
        assertThat(sent.get("a")).containsExactly(due.get(0));
        assertThat(sent.get("b")).containsExactly(due.get(1), due.get(3));
    }

    @Test
    void whoWantsPeaceGetsNoMore() {
        List<Delivery> due = List.of(delivery("a"), delivery("a"), delivery("a"));
        assertThat(run(due, d -> new Channel.Answer.NotNow(clock.instant()))).hasSize(1);
    }

    /** Another receiver's messages, and the notes of these, do not wait for more than one slow answer. */
    @Test
    void nothingIsBegunAfterASlowAnswer() {
        List<Delivery> due = List.of(delivery("a"), delivery("a"), delivery("a"));
        assertThat(run(due, d -> {
                    clock.forward(Duration.ofSeconds(9));
                    return TAKEN;
                }))
                .singleElement()
                .satisfies(one -> assertThat(one.tookMillis()).isEqualTo(9_000));
    }

    private List<DeliveryRecord.Tried> run(List<Delivery> due, Function<Delivery, Channel.Answer> answers) {
        return new Sending(
                        due,
                        d -> {
                            sent.computeIfAbsent(d.stream(), s -> new ArrayList<>())
                                    .add(d);
                            return answers.apply(d);
                        },
                        clock)
                .run(threads);
    }

    private Delivery delivery(String stream) {
        return new Delivery(
                UUID.randomUUID(),
                "test",
                UUID.randomUUID(),
                stream,
                UUID.randomUUID(),
                Optional.empty(),
                "TEST",
                "{}",
                Delivery.State.PENDING,
                false,
                0,
                clock.instant(),
                Optional.empty(),
                clock.instant(),
                Optional.empty());
    }
}
