package dev.stayfixed.learning;

import static dev.stayfixed.judging.JudgedFault.CONFIRMED;
import static dev.stayfixed.judging.JudgedFault.DID_NOT_RUN;
import static dev.stayfixed.judging.JudgedFault.FAILED;
import static dev.stayfixed.judging.JudgedFault.RAN_CLEAN;
import static dev.stayfixed.judging.JudgedFault.at;
import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.judging.JudgedFault;
import dev.stayfixed.verification.StateName;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** What the shop learns from the verdict on a fault: one line for each repair. */
class OutcomesTest {

    @Test
    void aProvenRepairTellsWhenItWasProvenAndByHowManyDrives() {
        Attempt attempt = only(new JudgedFault()
                .repaired(1, true)
                .driven(2, DID_NOT_RUN, 10)
                .driven(3, RAN_CLEAN, 20)
                .driven(4, RAN_CLEAN, 30)
                .driven(9, DID_NOT_RUN, 40));
        assertThat(attempt.state()).isEqualTo(StateName.CONFIRMED_FIXED);
        assertThat(attempt.provenAt()).contains(at(4));
        assertThat(attempt.drivesToProof()).hasValue(3);
        assertThat(attempt.failedAt()).isEmpty();
        assertThat(attempt.followedUntil()).isEqualTo(at(9));
        assertThat(attempt.kmFollowed()).isEqualTo(100);
        assertThat(attempt.daysFollowed()).isEqualTo(8);
    }

    @Test
    void aRepairThatDidNotHoldTellsWhenItFailed() {
        Attempt attempt =
                only(new JudgedFault().repaired(1, true).driven(2, FAILED, 10).driven(3, CONFIRMED, 20));
        assertThat(attempt.state()).isEqualTo(StateName.RECURRED);
        assertThat(attempt.provenAt()).isEmpty();
        assertThat(attempt.drivesToProof()).isEmpty();
        assertThat(attempt.failedAt()).contains(at(3));
        assertThat(attempt.daysFollowed()).isEqualTo(2);
        assertThat(attempt.kmToFailure()).hasValue(30);
    }

    @Test
    void theNextRepairEndsTheOneBefore() {
        JudgedFault fault = new JudgedFault()
                .repaired(1, true)
                .driven(2, RAN_CLEAN, 10)
                .repaired(5, true)
                .driven(6, RAN_CLEAN, 10);
        List<Attempt> attempts = attempts(fault);
        assertThat(attempts).extracting(Attempt::position).containsExactly(0, 1);
        assertThat(attempts.get(0).followedUntil()).isEqualTo(at(5));
        assertThat(attempts.get(0).failedAt()).isEmpty();
        assertThat(attempts.get(1).followedUntil()).isEqualTo(at(6));
    }

    @Test
    void aRepairWithoutADriveIsFollowedNoTimeAtAll() {
        Attempt attempt = only(new JudgedFault().repaired(1, true));
        assertThat(attempt.followedUntil()).isEqualTo(at(1));
        assertThat(attempt.daysFollowed()).isZero();
        assertThat(attempt.state()).isEqualTo(StateName.WAITING_FOR_FIRST_TRIP);
    }

    private static Attempt only(JudgedFault fault) {
        List<Attempt> attempts = attempts(fault);
        assertThat(attempts).hasSize(1);
        return attempts.get(0);
    }

    private static List<Attempt> attempts(JudgedFault fault) {
        return new Outcomes(new UUID(1, 2), fault.inOrder(), Map.of()).of(fault.verdict());
    }
}
