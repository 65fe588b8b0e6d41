package dev.stayfixed.worklist;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Whose turn it is in a job with two faults. The order of needs is this service's own. */
class AttentionTest {

    private static final Instant SILENT_SINCE = Instant.parse("2026-06-23T12:00:00Z");

    @ParameterizedTest
    @CsvSource({
        // fixed, back, failed once, contradictory, awaiting repair, silent: need
        "2, 0, 0, 0, 0, false, READY_TO_CLOSE",
        "2, 0, 0, 0, 0, true, READY_TO_CLOSE",
        "1, 1, 0, 0, 0, true, CAME_BACK",
        "2, 1, 1, 0, 0, false, CAME_BACK",
        "1, 0, 0, 0, 0, true, STALLED",
        "0, 0, 1, 1, 1, true, STALLED",
        "0, 0, 1, 1, 1, false, CONTRADICTORY",
        "1, 0, 1, 0, 0, false, FAILED_ONCE",
        "1, 0, 0, 0, 1, false, REPAIR_DUE",
        "1, 0, 0, 0, 0, false, WAITING",
    })
    void theMostPressingNeedWins(
            int fixed, int back, int failedOnce, int contradictory, int awaiting, boolean silent, Attention need) {
        Instant news = silent ? SILENT_SINCE.minusMillis(1) : SILENT_SINCE;
        assertThat(Attention.of(new Attention.Facts(2, fixed, back, failedOnce, contradictory, awaiting))
                        .after(news, SILENT_SINCE))
                .isEqualTo(need);
    }
}
