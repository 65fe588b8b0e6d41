package dev.stayfixed.learning;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is counted of a repair, and how sums change. The steps of rounding are this service's own. */
class CountedTest {

    @ParameterizedTest
    @CsvSource({"0, 0", "0.001, 1", "2, 20", "2.01, 21", "20, 200", "20.1, 210", "21, 210", "399.2, 4000"})
    void daysAreRoundedUp(double days, int tenths) {
        assertThat(Counted.tenths(days)).isEqualTo(tenths);
    }

    @ParameterizedTest
    @CsvSource({"0, 0", "0.4, 10", "10, 10", "1995, 2000", "2000, 2000", "2001, 2100", "19901, 20000"})
    void kilometresAreRoundedUp(double km, int rounded) {
        assertThat(Counted.km(km)).isEqualTo(rounded);
    }

    @Test
    void wordsAreTheSameWhateverTheirSpacesAndCapitals() {
        assertThat(Counted.words("  Catalyst\n\treplaced ")).isEqualTo("catalyst replaced");
        assertThat(Counted.words("\uD83D\uDE97".repeat(201))).isEqualTo("\uD83D\uDE97".repeat(200));
    }

    @Test
    void whatIsCountedAsBeforeChangesNoSum() {
        Lesson one = new Lesson(Lesson.Topic.CODE, "P0420", 1, 1, 0);
        Lesson back = new Lesson(Lesson.Topic.CODE, "P0420", 1, 1, 1);
        Lesson other = new Lesson(Lesson.Topic.REPAIR, "hose", 1, 0, 0);
        assertThat(Lesson.change(Stream.of(one, other), Stream.of(other, one))).isEmpty();
        assertThat(Lesson.change(Stream.of(one, one), Stream.of(back, other)))
                .isEqualTo(List.of(new Lesson(Lesson.Topic.CODE, "P0420", -1, -1, 1), other));
    }
}
