package dev.stayfixed.verification;

import static dev.stayfixed.English.reason;
import static dev.stayfixed.English.words;
import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.drive.EnablingCondition;
import dev.stayfixed.drive.Finding;
import dev.stayfixed.obd.Ignition;
import dev.stayfixed.obd.TroubleCode;
import dev.stayfixed.verification.RecordedConditions.Origin;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Conditions that recorded signals met or missed, as evidence that the monitor ran. Common practice, no source. */
class RecordedConditionsTest {

    private static final RepairedFault PLAIN = RepairedFault.of(TroubleCode.parse("P0420"), Ignition.SPARK, Trips.TWO);

    private static List<MonitorReading> read(RepairedFault fault, Map<String, Finding> found, double runTime) {
        DriveRecord drive = new DriveRecord(
                        "d",
                        Instant.parse("2026-06-02T08:00:00Z"),
                        Optional.empty(),
                        new DriveSummary(Map.of(DriveQuantity.RUN_TIME, runTime), List.of(), Optional.empty()),
                        false,
                        List.of())
                .with(found);
        return new MonitorEvidence(fault, Knowledge.NOTHING, drive).withoutScan();
    }

    private static RepairedFault with(Origin origin) {
        return PLAIN.with(new RecordedConditions("key", origin));
    }

    @Test
    void all_met_says_that_it_ran() {
        List<MonitorReading> said =
                read(with(Origin.SERVICE_INFORMATION), Map.of("key", Finding.yes(reason("held 62 s of 60 s"))), 900);
        assertThat(said).hasSize(1);
        assertThat(said.get(0).says()).isEqualTo(MonitorReading.Says.RAN);
        assertThat(words(said.get(0).evidence().says()))
                .isEqualTo("its enabling conditions were met: held 62 s of 60 s");
    }

    @Test
    void one_missed_says_that_it_did_not_run_and_by_how_much() {
        List<MonitorReading> said =
                read(with(Origin.TYPICAL_ADOPTED), Map.of("key", Finding.no(reason("held 41 s of 60 s"))), 900);
        assertThat(said.get(0).says()).isEqualTo(MonitorReading.Says.DID_NOT_RUN);
        assertThat(words(said.get(0).evidence().says()))
                .isEqualTo("typical conditions adopted by the shop: held 41 s of 60 s");
    }

    @Test
    void what_cannot_be_told_says_nothing() {
        RepairedFault fault = with(Origin.SERVICE_INFORMATION);
        assertThat(read(fault, Map.of("key", Finding.unknown(reason("no speed"))), 900))
                .isEmpty();
        assertThat(read(fault, Map.of(), 900)).isEmpty();
        assertThat(read(fault, Map.of("other", Finding.yes(reason("met"))), 900))
                .isEmpty();
        assertThat(read(PLAIN, Map.of("key", Finding.yes(reason("met"))), 900)).isEmpty();
    }

    @Test
    void conditions_of_the_whole_drive_have_to_be_met_too() {
        RepairedFault fault = new RepairedFault(
                PLAIN.code(),
                PLAIN.ignition(),
                PLAIN.group(),
                Trips.TWO,
                2,
                EvidenceGrade.ENABLING_CONDITIONS,
                List.of(new EnablingCondition(DriveQuantity.RUN_TIME, OptionalDouble.of(1000), OptionalDouble.empty())),
                Optional.empty(),
                Optional.of(new RecordedConditions("key", Origin.SERVICE_INFORMATION)));
        Map<String, Finding> met = Map.of("key", Finding.yes(reason("met")));
        assertThat(read(fault, met, 999).get(0).says()).isEqualTo(MonitorReading.Says.DID_NOT_RUN);
        assertThat(read(fault, met, 1000).get(0).says()).isEqualTo(MonitorReading.Says.RAN);
        assertThat(read(fault, Map.of(), 1000)).isEmpty();
    }
}
