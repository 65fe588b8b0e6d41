package dev.stayfixed.simulator;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PerfectObserverTest {

    /** P passed, F failed, n not monitored; a lower-case p or f was not recorded; c before one: codes cleared. */
    @ParameterizedTest
    @CsvSource({
        "PP,    2, true,  false, false",
        "P,     1, false, false, false",
        "PnnP,  2, true,  false, false",
        "Pp,    1, false, false, false",
        "PpP,   2, true,  false, false",
        "PfP,   1, false, false, false",
        "PfPP,  2, true,  false, false",
        "F,     0, false, true,  false",
        "FnF,   0, false, false, true",
        "FpF,   0, false, true,  false",
        "FPF,   0, false, true,  false",
        "Ff,    0, false, false, true",
        "PcP,   1, false, false, false",
        "FcF,   0, false, true,  false",
        "PPF,   0, false, true,  false",
        "nnn,   0, false, false, false"
    })
    void appliesTheTwoTripRule(String story, int cleanRun, boolean proven, boolean failedOnce, boolean back) {
        PerfectObserver observer = new PerfectObserver("P0420", 2, 2);
        observer.repaired();
        boolean cleared = false;
        for (int i = 0; i < story.length(); i++) {
            char c = story.charAt(i);
            if (c == 'c') {
                cleared = true;
                continue;
            }
            observer.saw(cycle(Character.toUpperCase(c), cleared), Character.isUpperCase(c) || c == 'n');
            cleared = false;
        }
        PerfectObserver.Proof proof = observer.proof();
        assertThat(proof.cleanRun()).isEqualTo(cleanRun);
        assertThat(proof.proven()).isEqualTo(proven);
        assertThat(proof.failedOnce()).isEqualTo(failedOnce);
        assertThat(proof.back()).isEqualTo(back);
    }

    @Test
    void knowsThatItHadBeenProven() {
        PerfectObserver observer = new PerfectObserver("P0420", 2, 1);
        observer.saw(cycle('P', false), true);
        observer.saw(cycle('F', false), true);
        assertThat(observer.proof().onceProven()).isTrue();
        assertThat(observer.proof().proven()).isFalse();
    }

    private static CycleTruth cycle(char what, boolean cleared) {
        CycleTruth.CodeTruth truth = new CycleTruth.CodeTruth(what != 'N', what == 'F', true, false);
        return new CycleTruth(
                1,
                Instant.EPOCH,
                Instant.EPOCH,
                cleared,
                new Summary(20, 90, 900, 400, 60, 18, 100, 50, 9, 12),
                Map.of("P0420", truth),
                List.of());
    }

    @Test
    void aOneTripFaultIsBackAtOnce() {
        PerfectObserver observer = new PerfectObserver("P0420", 1, 1);
        observer.saw(cycle('F', false), false);
        assertThat(observer.proof().back()).isTrue();
    }
}
