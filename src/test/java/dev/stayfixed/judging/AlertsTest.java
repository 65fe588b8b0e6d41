package dev.stayfixed.judging;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.drive.DriveRecord.Moment;
import dev.stayfixed.drive.DriveRecord.TimedScan;
import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.jobs.FaultCase;
import dev.stayfixed.jobs.Standing;
import dev.stayfixed.judging.Alert.Kind;
import dev.stayfixed.obd.Ignition;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.obd.TroubleCode;
import dev.stayfixed.verification.RepairAttempt;
import dev.stayfixed.verification.RepairedFault;
import dev.stayfixed.verification.Trips;
import dev.stayfixed.verification.VerificationState;
import dev.stayfixed.wording.Wording;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** What drives show that nobody knew of: answers of SAE J1979 services $01, $03 and $07, and of ISO 14229-1 $19. */
class AlertsTest {

    private static final Instant OPENED = Instant.parse("2026-03-01T09:00:00Z");
    private static final Instant REPAIRED = Instant.parse("2026-03-02T16:00:00Z");

    private static final String LAMP_ON = "41 01 81 07 E5 00";
    private static final String LAMP_OFF = "41 01 00 07 E5 00";
    private static final String NO_CODES = "43 00\n47 00";

    private final List<DriveRecord> drives = new ArrayList<>();

    private AlertsTest drive(String scan) {
        drives.add(new DriveRecord(
                "drive " + (drives.size() + 1),
                REPAIRED.plusSeconds(86_400L * (drives.size() + 1)),
                Optional.empty(),
                DriveSummary.UNKNOWN,
                false,
                List.of(new TimedScan(Moment.AFTER, Scan.read(scan)))));
        return this;
    }

    private static List<FaultCase> catalyst(Optional<String> opening, boolean cleared, Optional<String> after) {
        RepairedFault fault = RepairedFault.of(TroubleCode.parse("P0420"), Ignition.SPARK, Trips.TWO);
        RepairAttempt repair = new RepairAttempt("repair", REPAIRED, cleared, Optional.empty(), after.map(Scan::read));
        return List.of(new FaultCase(
                new FaultCase.OfJob(UUID.randomUUID(), OPENED, Optional.empty(), opening.map(Scan::read)),
                UUID.randomUUID(),
                fault,
                List.of(repair),
                Standing.of(new VerificationState.AwaitingRepair(), 2)));
    }

    private static List<FaultCase> catalyst() {
        return catalyst(Optional.empty(), true, Optional.empty());
    }

    private List<String> found(List<FaultCase> faults) {
        return Alerts.of(drives, faults).stream().map(AlertsTest::said).toList();
    }

    private static String said(Alert alert) {
        return alert.driveId() + " " + alert.kind() + " " + alert.codes();
    }

    @Test
    void aLampThatComesOnIsNewOnce() {
        drive(LAMP_OFF).drive(LAMP_ON).drive(LAMP_ON).drive(LAMP_OFF).drive(LAMP_ON);
        assertThat(found(catalyst())).containsExactly("drive 2 LAMP_ON []", "drive 5 LAMP_ON []");
    }

    @Test
    void aLampThatBurnedWhenTheJobWasOpenedIsNotNew() {
        drive(LAMP_ON);
        assertThat(found(catalyst(Optional.of(LAMP_ON), false, Optional.empty())))
                .isEmpty();
    }

    @Test
    void aClearPutsTheLampOut() {
        drive(LAMP_ON);
        assertThat(found(catalyst(Optional.of(LAMP_ON), true, Optional.empty())))
                .containsExactly("drive 1 LAMP_ON []");
    }

    @Test
    void aLampThatBurnsInTheScanAfterTheRepairIsNotNew() {
        drive(LAMP_ON);
        assertThat(found(catalyst(Optional.of(LAMP_ON), true, Optional.of(LAMP_ON))))
                .isEmpty();
    }

    @Test
    void theCodeOfTheFaultIsNoNews() {
        drive("47 01 04 20\n43 01 04 20");
        assertThat(found(catalyst())).isEmpty();
    }

    @Test
    void anotherCodeIsNewInTheFirstDriveThatListsIt() {
        drive(NO_CODES).drive("43 00\n47 02 01 71 03 01").drive("43 02 01 71 03 01\n47 00");
        List<Alert> alerts = Alerts.of(drives, catalyst());
        assertThat(alerts).singleElement().satisfies(alert -> {
            assertThat(alert.kind()).isEqualTo(Kind.NEW_CODE);
            assertThat(alert.driveId()).isEqualTo("drive 2");
            assertThat(alert.codes()).extracting(TroubleCode::text).containsExactly("P0171", "P0301");
            assertThat(Wording.METRIC.words(alert.said())).startsWith("the codes P0171, P0301 are new");
        });
    }

    @Test
    void aCodeThatTheOpeningScanListsIsKnown() {
        drive("43 00\n47 01 01 71");
        assertThat(found(catalyst(Optional.of("43 02 04 20 01 71"), true, Optional.empty())))
                .isEmpty();
    }

    /** ISO 14229-1 status $50: not completed since the clear and in this cycle. */
    @Test
    void aCodeThatIsOnlyUntestedIsNotNew() {
        drive("59 02 FF 01 71 00 50");
        assertThat(found(catalyst())).isEmpty();
    }

    @Test
    void whatWasSeenGoneNoLongerStands() {
        drive("43 00\n47 01 01 71").drive(LAMP_ON);
        assertThat(standing()).containsExactly("drive 1 NEW_CODE [P0171]", "drive 2 LAMP_ON []");
        drive(NO_CODES);
        assertThat(standing()).containsExactly("drive 2 LAMP_ON []");
        drive(LAMP_OFF);
        assertThat(standing()).isEmpty();
    }

    private List<String> standing() {
        return Alerts.goneThrough(drives, catalyst()).standing().stream()
                .map(alert -> alert.driveId() + " " + alert.kind() + " "
                        + alert.codes().stream().map(TroubleCode::text).toList())
                .toList();
    }

    @Test
    void goingOnWithALaterDriveIsTheSameAsGoingThroughAll() {
        drive(LAMP_OFF + "\n" + NO_CODES);
        Alerts first = Alerts.goneThrough(drives, catalyst());
        drive(LAMP_ON + "\n43 00\n47 01 01 71");
        Alerts all = Alerts.goneThrough(drives, catalyst());
        assertThat(first.and(drives.get(1)).orElseThrow().found()).isEqualTo(all.found());
        assertThat(all.and(drives.get(0))).as("a drive that came late").isEmpty();
    }
}
