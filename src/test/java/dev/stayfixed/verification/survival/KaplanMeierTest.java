package dev.stayfixed.verification.survival;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

/**
 * Weeks of remission of the 21 patients on 6-mercaptopurine in Freireich et al., Blood 21 (1963) 699-716, a worked example of many
 * textbooks; data, estimates and standard errors as in table 2.2 and the text of D. R. Cox and D. Oakes, Analysis of Survival Data
 * (1984), and D. G. Kleinbaum and M. Klein, Survival Analysis. All from memory.
 */
class KaplanMeierTest {

    private static final double[] RELAPSED = {6, 6, 6, 7, 10, 13, 16, 22, 23};
    private static final double[] CENSORED = {6, 9, 10, 11, 17, 19, 20, 25, 32, 32, 34, 35};

    private static final KaplanMeier EXAMPLE = KaplanMeier.of(Stream.concat(
                    DoubleStream.of(RELAPSED).mapToObj(t -> new Watched(t, true)),
                    DoubleStream.of(CENSORED).mapToObj(t -> new Watched(t, false)))
            .toList());

    @Test
    void theEstimateIsThatOfTheTextbooks() {
        assertThat(EXAMPLE.count()).isEqualTo(21);
        assertThat(EXAMPLE.failures()).isEqualTo(9);
        assertThat(EXAMPLE.steps().stream().map(KaplanMeier.Step::time))
                .containsExactly(6.0, 7.0, 10.0, 13.0, 16.0, 22.0, 23.0);
        assertThat(EXAMPLE.steps().stream().map(KaplanMeier.Step::atRisk)).containsExactly(21, 17, 15, 12, 11, 7, 6);
        double[] holding = {0.8571, 0.8067, 0.7529, 0.6902, 0.6275, 0.5378, 0.4482};
        double[] errors = {0.0764, 0.0869, 0.0963, 0.1068, 0.1141, 0.1282, 0.1346};
        for (int i = 0; i < holding.length; i++) {
            assertThat(EXAMPLE.steps().get(i).holding()).isCloseTo(holding[i], within(0.00005));
            assertThat(EXAMPLE.steps().get(i).standardError()).isCloseTo(errors[i], within(0.00006));
        }
        assertThat(EXAMPLE.median()).hasValue(23);
    }

    /** The log-log band of the same example at week 6 and week 10, as survival packages print it; from memory. */
    @Test
    void theBandIsThatOfTheTextbooks() {
        assertThat(EXAMPLE.steps().get(0).lower()).isCloseTo(0.620, within(0.0006));
        assertThat(EXAMPLE.steps().get(0).upper()).isCloseTo(0.952, within(0.0006));
        assertThat(EXAMPLE.steps().get(2).lower()).isCloseTo(0.503, within(0.0006));
        assertThat(EXAMPLE.steps().get(2).upper()).isCloseTo(0.889, within(0.0006));
    }

    @Test
    void theQuantileIsThatOfTheNormalDistribution() {
        assertThat(KaplanMeier.Z)
                .isCloseTo(NormalDistribution.of(0, 1).inverseCumulativeProbability(0.975), within(1e-12));
    }

    @Test
    void whatIsCountedAlreadyGivesTheSame() {
        Map<Double, KaplanMeier.Ended> ended = new HashMap<>();
        for (double time : RELAPSED) {
            ended.merge(
                    time, new KaplanMeier.Ended(1, 0), (a, b) -> new KaplanMeier.Ended(a.failed() + 1, a.censored()));
        }
        for (double time : CENSORED) {
            ended.merge(
                    time, new KaplanMeier.Ended(0, 1), (a, b) -> new KaplanMeier.Ended(a.failed(), a.censored() + 1));
        }
        assertThat(KaplanMeier.of(ended)).isEqualTo(EXAMPLE);
    }

    @Test
    void theEndsAreHandled() {
        assertThat(KaplanMeier.of(List.of()).steps()).isEmpty();
        KaplanMeier all = KaplanMeier.of(List.of(new Watched(1, true), new Watched(2, true)));
        assertThat(all.steps().get(1).holding()).isZero();
        assertThat(all.steps().get(1).upper()).isZero();
        assertThat(KaplanMeier.of(List.of(new Watched(3, false))).median()).isEmpty();
        assertThatThrownBy(() -> new Watched(Double.NaN, true)).hasMessageContaining("expected a number of at least 0");
        assertThatThrownBy(() -> new Watched(-1, true)).hasMessageContaining("found -1.0");
    }

    /** Without censoring the estimate is the plain share that is left, and Greenwood's variance the binomial one. */
    @Test
    void withoutCensoringItIsThePlainShare() {
        KaplanMeier curve = KaplanMeier.of(DoubleStream.iterate(1, t -> t + 1)
                .limit(40)
                .mapToObj(t -> new Watched(t, true))
                .toList());
        for (KaplanMeier.Step s : curve.steps()) {
            double share = (40 - s.time()) / 40;
            assertThat(s.holding()).isCloseTo(share, within(1e-12));
            assertThat(s.standardError()).isCloseTo(Math.sqrt(share * (1 - share) / 40), within(1e-12));
            assertThat(s.lower()).isLessThanOrEqualTo(s.holding());
            assertThat(s.upper()).isGreaterThanOrEqualTo(s.holding()).isLessThanOrEqualTo(1);
        }
    }
}
