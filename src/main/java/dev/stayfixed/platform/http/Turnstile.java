package dev.stayfixed.platform.http;

import io.github.bucket4j.Bandwidth;
import io.github.bucket4j.Bucket;
import io.github.bucket4j.ConsumptionProbe;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/** Lets no more than so many a minute through for one name: a link, a person, or the address of somebody who tries what does not exist. */
public class Turnstile {

    private static final int MOST_KEPT = 10_000;

    private final int perMinute;
    private final Map<String, Bucket> buckets = new LinkedHashMap<>(16, 0.75f, true) {
        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Bucket> eldest) {
            return size() > MOST_KEPT;
        }
    };

    public Turnstile(int perMinute) {
        this.perMinute = perMinute;
    }

    /** How long to wait; zero for "go on". Nothing of the token is kept but its place in this map, which is in memory only. */
    public Duration enter(String who) {
        Bucket bucket;
        synchronized (buckets) {
            bucket = buckets.computeIfAbsent(
                    who,
                    key -> Bucket.builder()
                            .addLimit(Bandwidth.builder()
                                    .capacity(perMinute)
                                    .refillGreedy(perMinute, Duration.ofMinutes(1))
                                    .build())
                            .build());
        }
        ConsumptionProbe probe = bucket.tryConsumeAndReturnRemaining(1);
        return probe.isConsumed()
                ? Duration.ZERO
                : Duration.ofSeconds(TimeUnit.NANOSECONDS.toSeconds(probe.getNanosToWaitForRefill()) + 1);
    }
}
