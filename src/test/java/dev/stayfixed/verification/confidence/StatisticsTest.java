package dev.stayfixed.verification.confidence;

import static dev.stayfixed.English.words;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.stayfixed.ReferenceRows;
import dev.stayfixed.ReferenceRows.Row;
import dev.stayfixed.obd.Ignition;
import dev.stayfixed.obd.InUseCounters;
import dev.stayfixed.obd.TroubleCode;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.assertj.core.data.Offset;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class StatisticsTest {

    private static final Offset<Double> PRINTED = within(0.00006);

    static Stream<Row> rows() {
        return ReferenceRows.in(StatisticsTest.class, "statistics.csv").stream();
    }

    @ParameterizedTest
    @MethodSource("rows")
    void holdsEveryCheckRow(Row row) {
        List<Double> in = numbers(row.input());
        switch (row.kind()) {
            case "drives-for" -> compare(row, 2, n -> InUseRatio.drivesFor(n, in.get(0), in.get(1)));
            case "no-failure" -> compare(row, 1, n -> CleanTrips.chanceOfNoFailure(in.get(0), n));
            case "needed" -> needed(in, row.expected());
            case "success-run" ->
                assertThat(CleanTrips.neededFor(in.get(0), 1 - in.get(1))).hasValue(Integer.parseInt(row.expected()));
            case "bayes-run" ->
                assertThat(new Intermittence(0, in.get(0).intValue())
                                .chanceThatRateIsAtMost(1 - Double.parseDouble(row.expected())))
                        .isCloseTo(in.get(1), within(0.001));
            case "one-sided-upper" ->
                compare(row, 0, n -> new Intermittence(0, n).rate(0.9).high());
            case "two-sided-upper" ->
                compare(row, 0, n -> new Intermittence(0, n).rate(0.95).high());
            case "rule-of-three" -> ruleOfThree(in, numbers(row.expected()));
            case "clopper-pearson" -> {
                Intermittence.Rate rate =
                        new Intermittence(in.get(0).intValue(), in.get(1).intValue()).rate(0.95);
                assertThat(rate.low()).isCloseTo(numbers(row.expected()).get(0), PRINTED);
                assertThat(rate.high()).isCloseTo(numbers(row.expected()).get(1), PRINTED);
            }
            case "false-all-clear" ->
                compare(
                        row,
                        2,
                        n -> new Intermittence(in.get(0).intValue(), in.get(1).intValue()).chanceOfFalseAllClear(n));
            case "fixed" -> compare(row, 2, n -> CleanTrips.chanceFixed(in.get(0), in.get(1), n));
            case "fixed-unknown-rate" -> compare(row, 1, n -> new Intermittence(0, 0).chanceFixed(in.get(0), n));
            case "expected-rate" -> compare(row, 0, n -> new Intermittence(0, n).expectedRate());
            case "rate-at-most" -> compare(row, 1, n -> new Intermittence(0, n).chanceThatRateIsAtMost(in.get(0)));
            case "two-trip-blind" -> compare(row, 1, n -> CleanTrips.chanceOfNoTwoFailuresInARow(in.get(0), n));
            default -> throw new IllegalArgumentException("no such kind: " + row);
        }
    }

    @Test
    void ranEveryRowOfItsFile() {
        assertThat(rows().map(Row::id).distinct().sorted().toList())
                .containsExactly(
                        129, 380, 381, 382, 383, 384, 385, 386, 387, 388, 389, 391, 392, 393, 394, 395, 396, 397, 398,
                        399, 400, 401, 402);
    }

    @Test
    void theCleanTripsAskedForLeaveAtMostTheChanceAllowed() {
        for (int monitored = 0; monitored <= 12; monitored++) {
            for (int failed = 0; failed <= monitored; failed++) {
                Intermittence seen = new Intermittence(failed, monitored);
                int trips = seen.cleanTripsFor(0.8).orElse(0);
                if (trips > 0) {
                    assertThat(seen.chanceOfFalseAllClear(trips)).isLessThanOrEqualTo(0.2 + 1e-9);
                    assertThat(seen.chanceOfFalseAllClear(trips - 1)).isGreaterThan(0.2);
                }
            }
        }
        assertThat(new Intermittence(0, 20).cleanTripsFor(0.99)).isEmpty();
        assertThat(new Intermittence(0, 0).rate(0.95)).isEqualTo(new Intermittence.Rate(0, 1));
    }

    @Test
    void refusesWhatIsNoProbability() {
        assertThatThrownBy(() -> CleanTrips.chanceOfNoFailure(1.01, 1))
                .hasMessage("failure rate: found 1.01, expected 0 to 1");
        assertThatThrownBy(() -> CleanTrips.neededFor(Double.NaN, 0.5))
                .hasMessage("confidence: found NaN, expected 0 to 1");
        assertThatThrownBy(() -> CleanTrips.chanceFixed(-0.1, 0.5, 1)).hasMessageContaining("prior");
        assertThatThrownBy(() -> new Intermittence(3, 2))
                .hasMessage("found 3 failed of 2 monitored trips, expected 0 to that many");
        assertThatThrownBy(() -> new Intermittence(-1, 2)).hasMessageContaining("found -1 failed");
        assertThatThrownBy(() -> new Intermittence(1, 2).rate(2)).hasMessageContaining("confidence");
        assertThatThrownBy(() -> InUseRatio.drivesFor(1, 2, 0.9)).hasMessageContaining("ratio");
        assertThat(InUseRatio.drivesFor(1, 0, 0.9)).isEqualTo(10_000);
    }

    /** Numerator and denominator of the catalyst as the car reports them; runs that are still needed. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        P0420 | 34 | 100 | 2 | By the car's own count this monitor ran in 0.34 of the drives that qualify (34 of 100). At that rate it takes 10 such drives to see 2 more runs, 90 % sure; whether it then passes is another matter.
        P0420 | 50 | 100 | 1 | By the car's own count this monitor ran in 0.5 of the drives that qualify (50 of 100). At that rate it takes 4 such drives to see 1 more run, 90 % sure; whether it then passes is another matter.
        P0420 | 30 | 20  | 2 | By the car's own count this monitor ran in all of the drives that qualify (30 of 20). At that rate it takes 2 such drives to see 2 more runs, 90 % sure; whether it then passes is another matter.
        P0420 | 10 | 19  | 2 |
        P0420 | 0  | 100 | 2 |
        P0430 | 34 | 100 | 2 |
        P0133 | 34 | 100 | 2 |
        """)
    void theCarsOwnRatioTellsHowManyDrivesItIsLikelyToTake(
            String code, int ran, int qualified, int runs, @Nullable String said) {
        InUseCounters counters =
                new InUseCounters(Ignition.SPARK, Map.of("CATCOMP1", ran, "CATCOND1", qualified, "O2SCOMP1", 9));
        assertThat(InUseRatio.likely(TroubleCode.parse(code), counters, runs).map(reason -> words(reason)))
                .isEqualTo(Optional.ofNullable(said));
    }

    private static void compare(Row row, int from, IntToDoubleFunction actual) {
        List<Double> in = numbers(row.input());
        List<Double> expected = numbers(row.expected());
        assertThat(expected).hasSize(in.size() - from);
        IntStream.range(0, expected.size())
                .forEach(i -> assertThat(actual.applyAsDouble(in.get(from + i).intValue()))
                        .isCloseTo(expected.get(i), PRINTED));
    }

    private static void needed(List<Double> in, String expected) {
        String[] each = expected.split(" ", -1);
        for (int i = 0; i < each.length; i++) {
            var trips = CleanTrips.neededFor(in.get(0), in.get(i + 1));
            assertThat(trips.isPresent() ? Integer.toString(trips.getAsInt()) : "-")
                    .isEqualTo(each[i]);
        }
    }

    private static void ruleOfThree(List<Double> in, List<Double> expected) {
        for (int i = 0; i < in.size(); i++) {
            double exact = new Intermittence(0, in.get(i).intValue()).rate(0.9).high();
            assertThat(exact).isCloseTo(expected.get(i), within(expected.get(i) * 0.06));
        }
    }

    private static List<Double> numbers(String text) {
        return Stream.of(text.split(" ", -1))
                .filter(t -> !t.equals("-"))
                .map(Double::valueOf)
                .toList();
    }
}
