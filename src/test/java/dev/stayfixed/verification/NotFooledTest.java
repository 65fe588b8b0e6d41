package dev.stayfixed.verification;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.drive.DriveRecord.Moment;
import dev.stayfixed.drive.DriveRecord.TimedScan;
import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.verification.VerificationState.ConfirmedFixed;
import dev.stayfixed.verification.VerificationState.FailedOnce;
import dev.stayfixed.verification.VerificationState.Passing;
import dev.stayfixed.verification.VerificationState.Recurred;
import dev.stayfixed.verification.VerificationState.WaitingForFirstTrip;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Records that look like two clean trips and are not: one driving cycle in two parts, another car, a list that cannot be whole. */
class NotFooledTest {

    private static final Instant REPAIR = Instant.parse("2026-03-02T16:00:00Z");
    private static final Instant FIRST = Instant.parse("2026-03-03T07:00:00Z");
    private static final Duration HALF_AN_HOUR = Duration.ofMinutes(30);
    private static final Duration A_DAY = Duration.ofDays(1);

    /** Monitor complete in this cycle, no pending and no confirmed code. */
    private static final String CLEAN = "07\n47 00\n03\n43 00\n01 41\n41 41 00 07 E5 00";

    private final List<DriveRecord> drives = new ArrayList<>();

    private NotFooledTest drive(Duration after, String end) {
        return drive(after, end, Optional.empty());
    }

    private NotFooledTest drive(Duration after, String end, Optional<String> start) {
        List<TimedScan> scans = new ArrayList<>();
        start.ifPresent(text -> scans.add(new TimedScan(Moment.BEFORE, Scan.read(text))));
        scans.add(new TimedScan(Moment.AFTER, Scan.read(end)));
        Instant at = FIRST.plus(after);
        drives.add(new DriveRecord(
                "drive " + drives.size(), at, Optional.of(at.plus(HALF_AN_HOUR)), DriveSummary.UNKNOWN, false, scans));
        return this;
    }

    private VerificationState state() {
        return state(Optional.empty(), Optional.empty());
    }

    /** After a repair with a clear, read before it and after it. */
    private VerificationState state(Optional<String> before, Optional<String> after) {
        RepairAttempt repair = new RepairAttempt("repair", REPAIR, true, before.map(Scan::read), after.map(Scan::read));
        return new Verification(RuleSet.STANDARD)
                .of(History.twoTrip("P0420"), List.of(repair), drives)
                .state();
    }

    @Test
    void twoCleanDrivesOnTwoDaysAreWhatTheOthersResemble() {
        assertThat(drive(Duration.ZERO, CLEAN).drive(A_DAY, CLEAN).state()).isInstanceOf(ConfirmedFixed.class);
    }

    @ParameterizedTest
    @ValueSource(strings = {"41 0C 0C 80\n41 1F 07 40\n47 00", "41 0C 0C 80\n47 00", "41 1F 07 40\n47 00"})
    void aScanBeforeTheDriveWithTheEngineRunningIsNoNewStart(String running) {
        drive(Duration.ZERO, CLEAN).drive(Duration.ofMinutes(31), CLEAN, Optional.of(running));
        assertThat(state()).isEqualTo(new Passing(1, 2));
    }

    @Test
    void aRunTimeThatReachesBackIntoTheDriveBeforeIsOneCycle() {
        drive(Duration.ZERO, CLEAN).drive(Duration.ofMinutes(31), CLEAN + "\n41 1F 0E 10", Optional.of("07\n47 00"));
        assertThat(state()).isEqualTo(new Passing(1, 2));
    }

    @Test
    void aFailureInTheSecondPartOfACycleMakesItAFailedTrip() {
        String running = "41 0C 0C 80\n41 1F 07 40\n47 01 04 20";
        drive(Duration.ZERO, CLEAN)
                .drive(Duration.ofMinutes(31), "47 01 04 20\n43 00\n41 41 00 07 E5 00", Optional.of(running));
        assertThat(state()).isInstanceOf(FailedOnce.class);
    }

    /** Distance, warm-ups and minutes since the clear, and the odometer, after one day. */
    @ParameterizedTest
    @ValueSource(strings = {"41 31 00 20,41 31 F0 20", "41 30 05,41 30 F5", "41 4E 00 20,41 4E 20 20"})
    void countersThatGrewBeyondADayAreOfAnotherCar(String counters) {
        String[] read = counters.split(",", -1);
        drive(Duration.ZERO, CLEAN + "\n" + read[0]).drive(A_DAY, CLEAN + "\n" + read[1]);
        assertThat(state()).isEqualTo(new Passing(1, 2));
    }

    @Test
    void anOdometerThatGrewBeyondADayIsOfAnotherCar() {
        drive(Duration.ZERO, CLEAN + "\n41 A6 00 0F 00 00").drive(A_DAY, CLEAN + "\n41 A6 00 3F 00 00");
        assertThat(state()).isEqualTo(new Passing(1, 2));
    }

    @Test
    void aThousandKilometresInADayAreDriven() {
        drive(Duration.ZERO, CLEAN + "\n41 31 00 20\n41 30 01").drive(A_DAY, CLEAN + "\n41 31 04 08\n41 30 04");
        assertThat(state()).isInstanceOf(ConfirmedFixed.class);
    }

    @Test
    void aCodeThatWasDeniedAndIsConfirmedNowCameBackThoughNobodySawIt() {
        drive(Duration.ZERO, "07\n47 00\n03\n43 00").drive(A_DAY, "07\n47 00\n03\n43 01 04 20");
        assertThat(state()).isInstanceOf(Recurred.class);
    }

    @Test
    void theVinInARecordOfAnotherCarIsNotTheVinOfThisOne() {
        drive(Duration.ZERO, CLEAN + "\n41 A6 00 0F 00 00")
                .drive(A_DAY, CLEAN + "\n41 A6 00 01 00 00\n" + vin("2HGES16575H512345"))
                .drive(A_DAY.multipliedBy(2), CLEAN + "\n41 A6 00 0F 10 00\n" + vin("1G1JC5444R7212345"));
        assertThat(state()).isInstanceOf(ConfirmedFixed.class);
    }

    /** It failed, was cleared, and passed, all in one cycle, behind its last scan: a failed trip, and no code. */
    @Test
    void aPassBehindAClearThatNobodySawMayBelongToATripThatFailedBeforeIt() {
        String complete = "47 00\n43 00\n41 01 00 07 E5 00\n41 31 00 ";
        drive(Duration.ZERO, complete + "20")
                .drive(A_DAY, complete + "05", Optional.of("47 00\n41 31 00 00"))
                .drive(A_DAY.multipliedBy(2), CLEAN);
        assertThat(state()).isEqualTo(new Passing(1, 2));
    }

    private static String vin(String number) {
        return "49 02 01" + number.chars().mapToObj(" %02X"::formatted).collect(Collectors.joining());
    }

    @Test
    void countersInARecordOfAnotherCarDoNotUndoTheClear() {
        drive(Duration.ZERO, "47 00\n41 A6 00 01 00 00\n41 31 50 00").drive(A_DAY, "47 01 04 20\n43 01 04 20");
        assertThat(state(Optional.of("43 01 04 20\n41 A6 00 0F 00 00"), Optional.empty()))
                .isInstanceOf(Recurred.class);
    }

    @ParameterizedTest
    @ValueSource(strings = {"41 01 81 07 E5 00", "MIL: ON\nMIL: OFF"})
    void aLampThatBurnsRightAfterAClearLeavesOpenWhetherTheCodeIsTheOldOne(String lamp) {
        drive(Duration.ZERO, "43 01 04 20");
        assertThat(state(Optional.of("43 01 04 20\n47 01 04 20"), Optional.of("47 01 04 20\n" + lamp)))
                .isInstanceOf(WaitingForFirstTrip.class);
    }

    @Test
    void norDoesItHideAFailureWhereAnotherFaultHadLitIt() {
        drive(Duration.ZERO, "47 01 04 20\n43 00\n41 41 00 07 E5 00").drive(A_DAY, CLEAN);
        assertThat(state(Optional.of("43 01 04 20\n47 01 04 20"), Optional.of("41 01 81 07 E5 00")))
                .isEqualTo(new Passing(1, 2));
    }

    @Test
    void aListWithFewerCodesThanAreCountedDeniesNothing() {
        String counted = CLEAN + "\n01 01\n41 01 81 07 E5 00";
        assertThat(drive(Duration.ZERO, counted).drive(A_DAY, counted).state()).isInstanceOf(WaitingForFirstTrip.class);
    }

    @Test
    void aListOfAnotherUnitDeniesNothing() {
        String silent = "7E9 02 43 00\n7E9 02 47 00\n7E8 06 41 41 00 07 E5 00";
        assertThat(drive(Duration.ZERO, silent).drive(A_DAY, silent).state()).isInstanceOf(WaitingForFirstTrip.class);
    }
}
