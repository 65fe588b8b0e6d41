package dev.stayfixed.simulator;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CarHistoryTest {

    private enum Ending {
        PROVEN,
        FAILED_ONCE,
        BACK,
        OPEN
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 99})
    void theSameSeedTellsTheSameStory(long seed) {
        CarHistory first = CarHistory.of(seed, Ask.EVERYTHING);
        CarHistory second = CarHistory.of(seed, Ask.EVERYTHING);
        assertThat(first.delivered()).isEqualTo(second.delivered());
        assertThat(first.repairs()).isEqualTo(second.repairs());
    }

    @Test
    void whatAScanAsksForDoesNotChangeTheCar() {
        CarHistory all = CarHistory.of(7, Ask.EVERYTHING);
        CarHistory few = CarHistory.of(7, Ask.POCKET_READER);
        assertThat(all.drives().stream().map(CarHistory.Drive::truth))
                .containsExactlyElementsOf(
                        few.drives().stream().map(CarHistory.Drive::truth).toList());
    }

    @Test
    void everyEndingHappens() {
        Map<Ending, Integer> endings = new EnumMap<>(Ending.class);
        LongStream.range(0, 200).forEach(seed -> endings.merge(ending(seed), 1, Integer::sum));
        assertThat(endings.values())
                .as("of 200: %s", endings)
                .hasSize(Ending.values().length)
                .allMatch(n -> n >= 5);
    }

    private static Ending ending(long seed) {
        CarHistory history = CarHistory.of(seed, Ask.CODES);
        PerfectObserver.Proof proof = history.proof(2);
        if (proof.proven()) {
            return Ending.PROVEN;
        }
        return proof.back() ? Ending.BACK : proof.failedOnce() ? Ending.FAILED_ONCE : Ending.OPEN;
    }

    @Test
    void drivesArePhysicallyPlausible() {
        for (long seed = 0; seed < 20; seed++) {
            for (CarHistory.Drive drive : CarHistory.of(seed, Ask.CODES).drives()) {
                List<Sample> samples = drive.truth().samples();
                assertThat(samples).allMatch(s -> s.rpm() >= 600 && s.rpm() <= 5000 && s.coolant() <= 95);
                assertThat(IntStream.range(1, samples.size()))
                        .allMatch(i -> Math.abs(samples.get(i).speed()
                                        - samples.get(i - 1).speed())
                                <= 8);
            }
        }
    }
}
