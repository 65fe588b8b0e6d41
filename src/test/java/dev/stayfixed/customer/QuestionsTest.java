package dev.stayfixed.customer;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.drive.EnablingCondition;
import dev.stayfixed.obd.Ignition;
import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.obd.TroubleCode;
import dev.stayfixed.verification.EvidenceGrade;
import dev.stayfixed.verification.RepairedFault;
import dev.stayfixed.verification.Trips;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class QuestionsTest {

    private static RepairedFault fault(String code, EvidenceGrade weakest, DriveQuantity... asked) {
        TroubleCode parsed = TroubleCode.parse(code);
        return new RepairedFault(
                parsed,
                Ignition.SPARK,
                MonitorGroup.of(parsed, Ignition.SPARK),
                Trips.TWO,
                2,
                weakest,
                Stream.of(asked)
                        .map(quantity -> new EnablingCondition(quantity, OptionalDouble.of(10), OptionalDouble.empty()))
                        .toList(),
                Optional.empty());
    }

    @Test
    void nothingIsAskedThatCountsForNoFault() {
        assertThat(Questions.of(List.of(
                        fault("P0420", EvidenceGrade.ENABLING_CONDITIONS),
                        fault("P0430", EvidenceGrade.CYCLE_READINESS, DriveQuantity.SOAK))))
                .isEqualTo(Questions.of(List.of()));
    }

    @Test
    void whatTheConditionsAreAboutIsAsked() {
        Questions asked = Questions.of(List.of(
                fault("P0420", EvidenceGrade.ENABLING_CONDITIONS, DriveQuantity.SOAK, DriveQuantity.FAST_TIME)));
        assertThat(asked.alone()).containsExactlyInAnyOrder(DriveQuantity.SOAK, DriveQuantity.FAST_TIME);
        assertThat(asked.besideReading()).isEqualTo(asked.alone());
    }

    @Test
    void whereACarHasToBeReadForAnotherConditionAnAnswerAloneCountsForNothing() {
        Questions asked = Questions.of(
                List.of(fault("P0420", EvidenceGrade.ENABLING_CONDITIONS, DriveQuantity.SOAK, DriveQuantity.AMBIENT)));
        assertThat(asked.besideReading()).containsExactly(DriveQuantity.SOAK);
        assertThat(asked.alone()).isEmpty();
    }

    @Test
    void whatNeedsSimilarConditionsIsNeverMetFromMemory() {
        Questions asked =
                Questions.of(List.of(fault("P0300", EvidenceGrade.ENABLING_CONDITIONS, DriveQuantity.RUN_TIME)));
        assertThat(asked.besideReading()).containsExactly(DriveQuantity.RUN_TIME);
        assertThat(asked.alone()).isEmpty();
    }
}
