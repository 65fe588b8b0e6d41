package dev.stayfixed.reports;

import static dev.stayfixed.judging.JudgedFault.CONFIRMED;
import static dev.stayfixed.judging.JudgedFault.FAILED;
import static dev.stayfixed.judging.JudgedFault.RAN_CLEAN;
import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.English;
import dev.stayfixed.judging.FaultVerdict;
import dev.stayfixed.judging.JudgedFault;
import dev.stayfixed.reason.Kind;
import dev.stayfixed.reason.Reason;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What a report says that it does not cover. */
class UncoveredTest {

    private static final List<Kind> ALWAYS =
            List.of(ReportReason.OTHER_FAULTS_NOT_FOLLOWED, ReportReason.NO_PROMISE, ReportReason.NO_INSPECTION_RESULT);

    @Test
    void aProofByTheReadinessOfAGroupSaysThatItRestsOnTheGroup() {
        FaultVerdict proven = new JudgedFault()
                .repaired(1, true)
                .drive(2, RAN_CLEAN)
                .drive(3, RAN_CLEAN)
                .verdict();
        assertThat(kinds(proven, false)).startsWith(ReportReason.RESTS_ON_GROUP).endsWith(ALWAYS.toArray(Kind[]::new));
        assertThat(kinds(proven, false)).doesNotContain(ReportReason.NOT_CONFIRMED_FIXED, ReportReason.JOB_WAS_OPEN);
    }

    @Test
    void whatIsNotConfirmedFixedIsSaidFirstWhateverElse() {
        for (FaultVerdict verdict : List.of(
                new JudgedFault().verdict(),
                new JudgedFault().repaired(1, true).verdict(),
                new JudgedFault().repaired(1, true).drive(2, RAN_CLEAN).verdict(),
                new JudgedFault().repaired(1, true).drive(2, FAILED).verdict(),
                new JudgedFault()
                        .repaired(1, true)
                        .drive(2, FAILED)
                        .drive(3, CONFIRMED)
                        .verdict())) {
            assertThat(kinds(verdict, false)).startsWith(ReportReason.NOT_CONFIRMED_FIXED);
            assertThat(kinds(verdict, true)).startsWith(ReportReason.JOB_WAS_OPEN, ReportReason.NOT_CONFIRMED_FIXED);
        }
    }

    @Test
    void drivesOnWordAloneAndDrivesLeftOutAreNamed() {
        Reason leftOut = English.reason("the drive of 4 March was left out: another car");
        List<Reason> said =
                Uncovered.by(List.of(new JudgedFault().repaired(1, true).verdict()), false, 2, List.of(leftOut));
        assertThat(said).contains(leftOut);
        assertThat(said).extracting(Reason::kind).contains(ReportReason.ON_WORD_ALONE);
    }

    private static List<Kind> kinds(FaultVerdict verdict, boolean interim) {
        return Uncovered.by(List.of(verdict), interim, 0, List.of()).stream()
                .map(Reason::kind)
                .toList();
    }
}
