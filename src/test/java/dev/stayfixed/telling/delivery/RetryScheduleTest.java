package dev.stayfixed.telling.delivery;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RetryScheduleTest {

    private static final Instant FIRST = Instant.parse("2026-06-30T12:00:00Z");

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
    void triesEndExactlyThreeDaysAfterTheFirst(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<Instant> tries = new ArrayList<>(List.of(FIRST));
        Optional<Instant> next = Optional.of(FIRST);
        while (next.isPresent()) {
            next = RetrySchedule.next(tries.size(), FIRST, next.get(), Optional.empty(), random);
            next.ifPresent(tries::add);
        }
        assertThat(tries.get(tries.size() - 1)).isEqualTo(FIRST.plus(Duration.ofDays(3)));
        assertThat(tries).isSorted().doesNotHaveDuplicates().hasSizeBetween(12, 16);
        assertThat(Duration.between(tries.get(0), tries.get(1)).toMillis()).isBetween(8_000L, 12_000L);
    }

    @Test
    void differentReceiversAreTriedAtDifferentTimes() {
        List<Instant> seconds = new ArrayList<>();
        for (int seed = 0; seed < 50; seed++) {
            seconds.add(RetrySchedule.next(3, FIRST, FIRST, Optional.empty(), new SplittableRandom(seed))
                    .orElseThrow());
        }
        assertThat(seconds.stream().distinct().count()).isGreaterThan(45);
    }

    @Test
    void whoAsksForTimeGetsItButNotBeyondTheThreeDays() {
        Instant later = FIRST.plus(Duration.ofHours(2));
        assertThat(RetrySchedule.next(1, FIRST, FIRST, Optional.of(later), new SplittableRandom(1)))
                .contains(later);
        assertThat(RetrySchedule.next(
                        1, FIRST, FIRST, Optional.of(FIRST.plus(Duration.ofDays(9))), new SplittableRandom(1)))
                .contains(FIRST.plus(Duration.ofDays(3)));
    }
}
