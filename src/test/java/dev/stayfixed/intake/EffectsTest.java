package dev.stayfixed.intake;

import static dev.stayfixed.English.words;
import static dev.stayfixed.judging.JudgedFault.DID_NOT_RUN;
import static dev.stayfixed.judging.JudgedFault.FAILED;
import static dev.stayfixed.judging.JudgedFault.RAN_CLEAN;
import static dev.stayfixed.judging.JudgedFault.at;
import static dev.stayfixed.judging.JudgedFault.driveId;
import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.judging.FaultVerdict;
import dev.stayfixed.judging.JudgedFault;
import dev.stayfixed.verification.Outcome;
import dev.stayfixed.verification.StateName;
import dev.stayfixed.verification.VerificationState;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What the answer to a drive says that it did. */
class EffectsTest {

    @Test
    void aJudgedDriveSaysItsOutcomeAndHowTheFaultStandsBeforeAndAfter() {
        Effect effect = only(
                1,
                new JudgedFault()
                        .repaired(1, true)
                        .drive(2, RAN_CLEAN)
                        .stood(new VerificationState.WaitingForFirstTrip())
                        .verdict());
        assertThat(effect.outcome()).contains(Outcome.PASSED);
        assertThat(effect.before().state()).isEqualTo(StateName.WAITING_FOR_FIRST_TRIP);
        assertThat(effect.now().state()).isEqualTo(StateName.PASSING);
        assertThat(effect.now().passes()).hasValue(1);
    }

    @Test
    void aDriveWithoutTheMonitorSaysSoThoughNothingMoved() {
        Effect effect = only(
                1,
                new JudgedFault()
                        .repaired(1, true)
                        .drive(2, DID_NOT_RUN)
                        .stood(new VerificationState.WaitingForFirstTrip())
                        .verdict());
        assertThat(effect.outcome()).contains(Outcome.DID_NOT_RUN);
        assertThat(effect.now()).isEqualTo(effect.before());
    }

    @Test
    void aDriveFromBeforeTheRepairIsNotJudgedAndSaysWhy() {
        FaultVerdict verdict = new JudgedFault()
                .drive(1, RAN_CLEAN)
                .repaired(2, true)
                .stood(new VerificationState.WaitingForFirstTrip())
                .verdict();
        Effect effect = only(1, verdict);
        assertThat(effect.outcome()).isEmpty();
        assertThat(words(effect.reason())).contains("before");
        assertThat(BeforeRepair.repair(driveId(1).toString(), verdict)).contains(at(2));
    }

    @Test
    void beforeAnyRepairItSaysThatNoneIsRecorded() {
        Effect effect = only(1, new JudgedFault().drive(1, FAILED).verdict());
        assertThat(effect.outcome()).isEmpty();
        assertThat(effect.now().state()).isEqualTo(StateName.AWAITING_REPAIR);
    }

    @Test
    void ofAClosedJobADriveFromBeforeItsRepairSaysNothing() {
        FaultVerdict verdict = new JudgedFault()
                .drive(1, RAN_CLEAN)
                .repaired(2, true)
                .closed()
                .stood(new VerificationState.WaitingForFirstTrip())
                .verdict();
        assertThat(Effects.of(driveId(1), List.of(verdict))).isEmpty();
        assertThat(BeforeRepair.repair(driveId(1).toString(), verdict)).isEmpty();
    }

    @Test
    void aDriveThatNoLongerCountsSaysHowTheFaultMoved() {
        FaultVerdict without = new JudgedFault()
                .repaired(1, true)
                .drive(2, RAN_CLEAN)
                .stood(new VerificationState.ConfirmedFixed(at(3)))
                .verdict();
        Effect effect = only(99, without);
        assertThat(effect.outcome()).isEmpty();
        assertThat(effect.before().state()).isEqualTo(StateName.CONFIRMED_FIXED);
        assertThat(effect.now().state()).isEqualTo(StateName.PASSING);
    }

    private static Effect only(int drive, FaultVerdict verdict) {
        List<Effect> effects = Effects.of(driveId(drive), List.of(verdict));
        assertThat(effects).hasSize(1);
        return effects.get(0);
    }
}
