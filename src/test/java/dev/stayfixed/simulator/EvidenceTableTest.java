package dev.stayfixed.simulator;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.Count;
import dev.stayfixed.verification.VerificationState;
import java.util.EnumSet;
import java.util.Set;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.slf4j.LoggerFactory;

/**
 * What can still be decided with less evidence. 200 cars a row where CI=true, 80 elsewhere; DEVELOPERS.md shows the shares for {@code
 * -Dstayfixed.cars=2000}.
 */
class EvidenceTableTest {

    private static final int CARS = Count.of("stayfixed.cars", 80, 120);

    /** What a shop's scans ask for. */
    @SuppressWarnings("ImmutableEnumChecker")
    enum Scans {
        EVERYTHING(Ask.EVERYTHING),
        WITHOUT_STATUS_BYTES(without(Ask.STATUS, Ask.SUPPORTED_CODES)),
        CODES_AND_READINESS(Ask.CODES_AND_READINESS),
        CODE_READER(Ask.POCKET_READER);

        private final Set<Ask> asked;

        Scans(Set<Ask> asked) {
            this.asked = asked;
        }

        private static Set<Ask> without(Ask... left) {
            Set<Ask> asked = EnumSet.copyOf(Ask.EVERYTHING);
            asked.removeAll(Set.of(left));
            return asked;
        }
    }

    /**
     * Of the cars that the observer decided, how many we decided too.
     *
     * @param undoneUnseen called fixed as the observer once did, who then saw a failure and a pass in drives that nobody recorded;
     *     without status bytes they leave no trace
     * @param wronglyFixed called fixed, and the observer never did
     */
    record Shares(int fixed, int fixedSeen, int back, int backSeen, int undoneUnseen, int wronglyFixed) {

        Shares and(PerfectObserver.Proof proof, VerificationState state) {
            boolean calledFixed = state instanceof VerificationState.ConfirmedFixed;
            boolean calledBack = state instanceof VerificationState.Recurred;
            return new Shares(
                    fixed + (proof.proven() ? 1 : 0),
                    fixedSeen + (proof.proven() && calledFixed ? 1 : 0),
                    back + (proof.back() ? 1 : 0),
                    backSeen + (proof.back() && calledBack ? 1 : 0),
                    undoneUnseen + (calledFixed && !proof.proven() && proof.onceProven() ? 1 : 0),
                    wronglyFixed + (calledFixed && !proof.proven() && !proof.onceTrue() ? 1 : 0));
        }

        @Override
        public String toString() {
            return "fixed %d of %d, back %d of %d, undone unseen %d, wrongly fixed %d"
                    .formatted(fixedSeen, fixed, backSeen, back, undoneUnseen, wronglyFixed);
        }
    }

    @ParameterizedTest
    @EnumSource
    @DisplayName(
            "with less evidence less is decided, and nothing is called fixed that the observer would not call fixed")
    void nothingIsWronglyCalledFixed(Scans scans) {
        Shares shares = new Shares(0, 0, 0, 0, 0, 0);
        for (long seed = 0; seed < CARS; seed++) {
            CarHistory history = CarHistory.of(seed, scans.asked);
            if (!history.isHidden()) {
                shares = shares.and(history.proof(history.trips()), VerdictsAgreeTest.verdict(history));
            }
        }
        assertThat(shares.wronglyFixed()).as("%s", shares).isZero();
        assertThat(shares.fixed()).isPositive();
        assertThat(scans != Scans.EVERYTHING || shares.undoneUnseen() == 0)
                .as("with status bytes every failure leaves a trace: %s", shares)
                .isTrue();
        LoggerFactory.getLogger(EvidenceTableTest.class).info("{}: {}", scans, shares);
    }
}
