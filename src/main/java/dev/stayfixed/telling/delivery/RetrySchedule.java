package dev.stayfixed.telling.delivery;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.random.RandomGenerator;

/** When to try again: soon at first, then ever more seldom, for three days. Each pause is varied so that receivers are not hit at once. */
final class RetrySchedule {

    /** From the first try to the last. */
    static final Duration PATIENCE = Duration.ofDays(3);

    /** A pause is as it stands here, give or take this share of it. */
    static final double JITTER = 0.2;

    private static final List<Duration> PAUSES = List.of(
            Duration.ofSeconds(10),
            Duration.ofMinutes(1),
            Duration.ofMinutes(5),
            Duration.ofMinutes(20),
            Duration.ofHours(1),
            Duration.ofHours(3),
            Duration.ofHours(6),
            Duration.ofHours(12));

    private RetrySchedule() {}

    /**
     * The time of the next try; empty when it is time to give up. The last try is exactly three days after the first.
     *
     * @param tries made so far, at least 1
     * @param notBefore asked for by the receiver
     */
    static Optional<Instant> next(
            int tries, Instant first, Instant now, Optional<Instant> notBefore, RandomGenerator random) {
        Instant last = first.plus(PATIENCE);
        if (!now.isBefore(last)) {
            return Optional.empty();
        }
        Duration pause = PAUSES.get(Math.min(tries, PAUSES.size()) - 1);
        double factor = 1 + JITTER * (2 * random.nextDouble() - 1);
        Instant planned = now.plusMillis(Math.round(pause.toMillis() * factor));
        Instant wanted = notBefore.filter(planned::isBefore).orElse(planned);
        return Optional.of(wanted.isBefore(last) ? wanted : last);
    }
}
