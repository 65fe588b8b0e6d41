package dev.stayfixed.histories;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.histories.Oracle.Says;
import java.util.List;
import java.util.stream.LongStream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.slf4j.LoggerFactory;

/**
 * What each assumption is worth: cars that break one of them, and how often that ends in a wrong verdict. The log is the table;
 * {@code -Dstayfixed.histories.broken=N} takes N cars for each row.
 */
class BrokenAssumptionsTest {

    private static final int CARS = Integer.getInteger("stayfixed.histories.broken", 100);

    @ParameterizedTest
    @EnumSource
    @DisplayName("a broken assumption may mislead; where none is broken nothing is falsely said")
    void countsWrongVerdicts(Broken broken) {
        List<Case> cases = LongStream.range(0, CARS)
                .mapToObj(seed -> Case.of(UntidyRecords.of(seed, broken)))
                .toList();
        long fixed =
                cases.stream().filter(c -> c.rule() == Says.CONFIRMED_FIXED).count();
        long back = cases.stream().filter(c -> c.rule() == Says.RECURRED).count();
        long falselyFixed = cases.stream().filter(Case::isFalselyFixed).count();
        long falselyBack = cases.stream().filter(Case::isFalselyBack).count();
        LoggerFactory.getLogger(BrokenAssumptionsTest.class)
                .info(
                        "| {} | {} | {} | {} | {} | {} |",
                        broken.words,
                        cases.size(),
                        fixed,
                        falselyFixed,
                        back,
                        falselyBack);
        assertThat(fixed).as("some of %s are called fixed", broken).isPositive();
        assertThat(broken != Broken.NOTHING || falselyFixed == 0)
                .as("%s", cases.stream().filter(Case::isFalselyFixed).findFirst())
                .isTrue();
    }
}
