package dev.stayfixed.verification;

import static dev.stayfixed.English.words;
import static dev.stayfixed.verification.History.CYCLE_COMPLETE;
import static dev.stayfixed.verification.History.MINIMUM_CYCLE;
import static dev.stayfixed.verification.History.WARM_UP;
import static dev.stayfixed.verification.History.repaired;
import static dev.stayfixed.verification.ScanText.noCodes;
import static dev.stayfixed.verification.ScanText.scan;
import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.drive.DriveRules;
import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.drive.OperatingPoint;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.verification.VerificationState.AwaitingRepair;
import dev.stayfixed.verification.VerificationState.ConfirmedFixed;
import dev.stayfixed.verification.VerificationState.FailedOnce;
import dev.stayfixed.verification.VerificationState.Passing;
import dev.stayfixed.verification.VerificationState.Recurred;
import dev.stayfixed.verification.VerificationState.WaitingForFirstTrip;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** The fold: attempts, clears, gaps, and what stands beside the verdict. */
class VerificationTest {

    @Test
    void twoCleanTripsConfirmTheRepairAndNameTheRuleSet() {
        Verdict verdict = repaired("P0420").drives("PP").verdict();
        assertThat(verdict.state()).isInstanceOf(ConfirmedFixed.class);
        assertThat(verdict.ruleSet()).isEqualTo("two-trip 2026.2");
        assertThat(verdict.next()).isEmpty();
    }

    @Test
    void withoutARepairItWaitsForOne() {
        Verdict verdict = History.of("P0420").drives("PP").verdict();
        assertThat(verdict.state()).isInstanceOf(AwaitingRepair.class);
        assertThat(verdict.attempts()).isEmpty();
        assertThat(verdict.judgements()).isEmpty();
        assertThat(words(verdict.state().said())).isEqualTo("waiting for a repair");
    }

    @Test
    void whatADriveBeforeTheRepairShowedIsKnownAfterIt() {
        History history = History.of("P0420")
                .drive(scan().pending("P0420").confirmed("P0420"))
                .repair(false)
                .drive(scan().pending("P0420").confirmed("P0420"));
        assertThat(history.lastOutcome()).isEqualTo(Outcome.CARRIED_OVER);
        assertThat(history.verdict().judgements()).hasSize(1);
    }

    @Test
    void aRecurredFaultOpensANewAttemptWithTheNextRepairAndKeepsTheHistory() {
        History history = repaired("P0420").drives("FF").repair(true).drives("P");
        Verdict verdict = history.verdict();
        assertThat(verdict.attempts()).hasSize(2);
        assertThat(verdict.attempts().get(0).state()).isInstanceOf(Recurred.class);
        assertThat(verdict.attempts().get(0).repairId()).isEqualTo("repair-1");
        assertThat(verdict.attempts().get(0).judgements()).hasSize(2);
        assertThat(verdict.state()).isEqualTo(new Passing(1, 2));
        assertThat(verdict.judgements()).hasSize(1);
    }

    @Test
    void theOrderOfArrivalDoesNotMatter() {
        History history = repaired("P0420").drives("P-FP-X-PP").repair(true).drives("F-P");
        List<DriveRecord> shuffled = new ArrayList<>(history.driveRecords());
        Collections.reverse(shuffled);
        List<RepairAttempt> repairs = new ArrayList<>(history.repairs());
        Collections.reverse(repairs);
        assertThat(new Verification(RuleSet.STANDARD).of(history.fault(), repairs, shuffled))
                .isEqualTo(history.verdict());
    }

    @Test
    void aDriveAtTheMomentOfTheRepairBelongsToIt() {
        History history = repaired("P0420");
        DriveRecord atOnce = new DriveRecord(
                "d",
                history.repairs().get(0).at(),
                Optional.empty(),
                DriveSummary.UNKNOWN,
                false,
                List.of(new DriveRecord.TimedScan(
                        DriveRecord.Moment.AFTER, scan().status("P0420", 0).read())));
        assertThat(new Verification(RuleSet.STANDARD)
                        .of(history.fault(), history.repairs(), List.of(atOnce, atOnce))
                        .state())
                .isEqualTo(new Passing(1, 2));
    }

    @Test
    void aFailureAfterItWasFixedTakesThatBackEvenIfItIsClearedInTheSameScan() {
        Verdict verdict = repaired("P0420")
                .drives("PP")
                .drive(scan().status("P0420", 0x27).cleared())
                .verdict();
        assertThat(verdict.state()).isEqualTo(new WaitingForFirstTrip());
    }

    @Nested
    class MemoryLost {

        @Test
        void countersThatWentDownRestartTheCount() {
            Verdict verdict = repaired("P0420")
                    .drive(noCodes()
                            .cycle(CYCLE_COMPLETE)
                            .kilometresSinceClear(410)
                            .warmUpsSinceClear(12))
                    .drive(noCodes()
                            .cycle(CYCLE_COMPLETE)
                            .kilometresSinceClear(3)
                            .warmUpsSinceClear(1))
                    .verdict();
            assertThat(verdict.state()).isEqualTo(new Passing(1, 2));
            Verdict.Step step = verdict.attempts().get(0).steps().get(1);
            assertThat(words(step.reason()))
                    .isEqualTo(
                            "distance since clear went down from 410 to 3 km; warm-ups since clear went down from 12 to 1"
                                    + " cycles");
            assertThat(step)
                    .isEqualTo(new Verdict.Step.Noted(
                            Verdict.Step.Kind.RESTARTED, "drive-2", step.reason(), new WaitingForFirstTrip()));
        }

        @Test
        void engineRunTimeSinceTheClearThatWentDownRestartsTheCount() {
            assertThat(repaired("P0420")
                            .drive(noCodes().cycle(CYCLE_COMPLETE).minutesSinceClear(300))
                            .drive(noCodes().cycle(CYCLE_COMPLETE).minutesSinceClear(20))
                            .verdict()
                            .state())
                    .isEqualTo(new Passing(1, 2));
        }

        @Test
        void distanceSinceTheClearThatGrewLessThanTheOdometerRestartsTheCount() {
            Verdict verdict = repaired("P0420")
                    .drive(noCodes()
                            .cycle(CYCLE_COMPLETE)
                            .kilometresSinceClear(100)
                            .odometer(10_000))
                    .drive(noCodes()
                            .cycle(CYCLE_COMPLETE)
                            .kilometresSinceClear(105)
                            .odometer(12_000))
                    .verdict();
            assertThat(verdict.state()).isEqualTo(new Passing(1, 2));
            assertThat(repaired("P0420")
                            .drive(noCodes()
                                    .cycle(CYCLE_COMPLETE)
                                    .kilometresSinceClear(65_500)
                                    .odometer(1_000_000))
                            .drive(noCodes()
                                    .cycle(CYCLE_COMPLETE)
                                    .kilometresSinceClear(65_535)
                                    .odometer(1_010_000))
                            .verdict()
                            .state())
                    .isInstanceOf(ConfirmedFixed.class);
        }

        @Test
        void readinessThatFellBackRestartsTheCount() {
            Verdict verdict = repaired("P0420")
                    .drive(noCodes().cycle(CYCLE_COMPLETE).readiness("00 07 E5 00"))
                    .drive(noCodes().cycle(CYCLE_COMPLETE).readiness("00 07 E5 04"))
                    .verdict();
            assertThat(verdict.state()).isEqualTo(new Passing(1, 2));
            assertThat(words(verdict.attempts().get(0).steps().get(1).reason()))
                    .isEqualTo("readiness of the evaporative system monitor fell back to not complete");
        }

        @Test
        void aStatusByteThatFellBackRestartsTheCount() {
            assertThat(repaired("P0420")
                            .drive(scan().status("P0420", 0x00))
                            .drive(scan().status("P0420", 0x50))
                            .verdict()
                            .state())
                    .isInstanceOf(WaitingForFirstTrip.class);
        }

        @Test
        void aLossSeenBeforeTheStartLetsTheDriveItselfCount() {
            assertThat(repaired("P0420")
                            .drive(noCodes().cycle(CYCLE_COMPLETE).kilometresSinceClear(410))
                            .drive(
                                    scan().kilometresSinceClear(0),
                                    noCodes().cycle(CYCLE_COMPLETE).kilometresSinceClear(20))
                            .verdict()
                            .state())
                    .isEqualTo(new Passing(1, 2));
        }

        @Test
        void aLossInTheMiddleOfADriveSpoilsIt() {
            History history = repaired("P0420")
                    .drive(noCodes().cycle(CYCLE_COMPLETE).kilometresSinceClear(410))
                    .drive(
                            scan().kilometresSinceClear(411),
                            noCodes().cycle(CYCLE_COMPLETE).kilometresSinceClear(5));
            assertThat(history.lastOutcome()).isEqualTo(Outcome.RAN_UNPROVEN);
            assertThat(history.verdict().state()).isInstanceOf(WaitingForFirstTrip.class);
        }

        @Test
        void aClearInTheEndingScanRestartsTheCountAfterTheDrive() {
            Verdict verdict = repaired("P0420")
                    .drives("P")
                    .drive(scan().status("P0420", 0x27).cleared())
                    .verdict();
            assertThat(verdict.state()).isInstanceOf(WaitingForFirstTrip.class);
            assertThat(verdict.attempts().get(0).steps()).hasSize(3);
        }

        @Test
        void aClearInTheScanBeforeTheStartRestartsTheCount() {
            assertThat(repaired("P0420")
                            .drives("P")
                            .drive(scan().cleared(), scan().status("P0420", 0x00))
                            .verdict()
                            .state())
                    .isEqualTo(new Passing(1, 2));
        }

        @Test
        void aClearSeenAfterTheRepairIsTakenAsOne() {
            History history = History.of("P0420")
                    .repair(
                            false,
                            scan().pending("P0420").confirmed("P0420").kilometresSinceClear(900),
                            scan().kilometresSinceClear(0))
                    .drive(scan().pending("P0420").confirmed());
            assertThat(history.lastOutcome()).isEqualTo(Outcome.FAILED);
        }
    }

    @Nested
    class Gaps {

        @Test
        void kilometresThatNobodyRecordedAreShownAndNeitherHelpNorHurt() {
            Verdict verdict = repaired("P0420")
                    .drive(noCodes().cycle(CYCLE_COMPLETE).odometer(10_000))
                    .drive(kilometres(20), null, noCodes().cycle(CYCLE_COMPLETE).odometer(10_900))
                    .verdict();
            assertThat(gaps(verdict)).containsExactly("70 km were not recorded before this point");
            assertThat(verdict.state()).isInstanceOf(ConfirmedFixed.class);
        }

        @Test
        void aDriveWhoseKilometresAreRecordedLeavesNoGap() {
            assertThat(gaps(repaired("P0420")
                            .drive(noCodes().odometer(10_000))
                            .drive(kilometres(88), null, noCodes().odometer(10_900))
                            .verdict()))
                    .isEmpty();
        }

        @Test
        void ignitionCyclesThatNobodyRecordedAreShown() {
            assertThat(gaps(repaired("P0420")
                            .drive(noCodes().inUse(100, 500, 50))
                            .drive(noCodes().inUse(101, 501, 51))
                            .drive(noCodes().inUse(103, 504, 52))
                            .verdict()))
                    .containsExactly("2 ignition cycles were not recorded before this point");
        }

        @Test
        void aGapSeenBeforeTheStartIsShown() {
            assertThat(gaps(repaired("P0420")
                            .drive(noCodes().odometer(10_000))
                            .drive(noCodes().odometer(10_100), noCodes().odometer(10_300))
                            .verdict()))
                    .containsExactly("10 km were not recorded before this point");
        }

        @Test
        void drivesWithoutAScanAreRecordedToo() {
            assertThat(gaps(repaired("P0420")
                            .drive(noCodes().odometer(10_000))
                            .drive(kilometres(40))
                            .drive(kilometres(50))
                            .drive(noCodes().odometer(10_900), noCodes())
                            .verdict()))
                    .isEmpty();
        }

        private DriveSummary kilometres(double km) {
            return History.summary(Map.of(DriveQuantity.DISTANCE, km));
        }

        private List<String> gaps(Verdict verdict) {
            return verdict.attempts().get(0).steps().stream()
                    .filter(step -> step.kind() == Verdict.Step.Kind.GAP)
                    .map(step -> words(step.reason()))
                    .toList();
        }
    }

    /** 13 CCR 1968.2 (d)(2.3) as makers print it, and (d)(2.5) for permanent codes. */
    @Nested
    class Memory {

        private final ScanText stored =
                scan().pending().confirmed("P0420").permanent("P0420").readiness("81 07 E5 00");

        @Test
        void nothingReadIsSaidSo() {
            CodeMemory memory = History.of("P0420").verdict().memory();
            assertThat(memory.mil())
                    .isEqualTo(new CodeMemory.Line(Optional.empty(), Reason.of(MemoryReason.MIL_UNREAD)));
            assertThat(words(memory.confirmedCode().explanation()))
                    .isEqualTo("No scan has read the confirmed codes (service $03).");
            assertThat(words(memory.permanentCode().explanation()))
                    .isEqualTo("No scan has read the permanent codes (service $0A).");
        }

        @Test
        void theMilCountsPassedTripsAndAnUnmonitoredCycleDoesNotBreakThem() {
            History history = History.of("P0420").repair(false, stored, null).drivesWithStoredCode("P-P");
            assertThat(words(history.verdict().memory().mil().explanation()))
                    .isEqualTo("The MIL is on. The car turns it off after 3 passed trips in a row: 2 seen so far.");
            RuleSet strict =
                    new RuleSet("strict", "1", DriveRules.WHOLE_DEGREES, 375, 20, true, 70, 80, 3, true, 40, false);
            assertThat(words(history.judgedBy(strict).verdict().memory().mil().explanation()))
                    .contains("1 seen so far");
        }

        @Test
        void aFailRestartsTheMilCount() {
            assertThat(words(History.of("P0420")
                            .repair(false, stored, null)
                            .drivesWithStoredCode("PPFP")
                            .verdict()
                            .memory()
                            .mil()
                            .explanation()))
                    .contains("1 seen so far");
        }

        @Test
        void aClearTurnsTheMilOffAndErasesTheCodeButNotThePermanentOne() {
            CodeMemory memory =
                    History.of("P0420").repair(true, stored, null).verdict().memory();
            assertThat(memory.mil())
                    .isEqualTo(new CodeMemory.Line(Optional.of(false), Reason.of(MemoryReason.MIL_OFF)));
            assertThat(memory.confirmedCode().present()).contains(false);
            assertThat(words(memory.confirmedCode().explanation()))
                    .isEqualTo("P0420 is not stored as a confirmed code.");
            assertThat(memory.permanentCode().present()).contains(true);
            assertThat(words(memory.permanentCode().explanation()))
                    .isEqualTo(
                            "P0420 is stored as a permanent code. After the clear the car needs a passed trip (not yet"
                                    + " seen).");
        }

        @Test
        void thePermanentCodeOfARatioMonitorEndsWithOnePassAfterTheClear() {
            assertThat(permanent(History.of("P0420").repair(true, stored, null).drives("P")))
                    .contains("What the car needs to end it has happened");
            assertThat(permanent(History.of("P0420").repair(true, stored, null).drives("PF")))
                    .contains("a passed trip (not yet seen)");
        }

        @Test
        void withoutAClearThePermanentCodeEndsWithTheMil() {
            assertThat(permanent(History.of("P0420").repair(false, stored, null).drivesWithStoredCode("P")))
                    .endsWith(
                            "Codes were not cleared, so it ends when the car turns the MIL off by itself: 1 of 3 passed"
                                    + " trips in a row.");
        }

        @Test
        void aMonitorWithoutARatioNeedsTheMinimumCycleToo() {
            History history = misfire().drive(SIMILAR, null, scan().status("P0302", 0x00));
            assertThat(permanent(history))
                    .endsWith(
                            "After the clear the car needs a passed trip (seen) and one drive of 600 s with 300 s at 25 mph"
                                    + " (40 km/h) or more and 30 s of unbroken idle (not yet seen).");
            assertThat(permanent(history.drive(MINIMUM_CYCLE))).contains("has happened");
        }

        @Test
        void theMinimumCycleAloneIsNotEnough() {
            assertThat(permanent(misfire().drive(MINIMUM_CYCLE)))
                    .contains("a passed trip (not yet seen)")
                    .endsWith("idle (seen).");
        }

        @Test
        void aFailedDriveIsNoMinimumCycle() {
            assertThat(permanent(misfire().drive(MINIMUM_CYCLE, null, scan().status("P0302", 0x27))))
                    .endsWith("idle (not yet seen).");
        }

        @Test
        void theStrictReadingWantsBothInOneDrive() {
            RuleSet strict =
                    new RuleSet("strict", "1", DriveRules.WHOLE_DEGREES, 375, 20, true, 70, 80, 3, false, 40, true);
            assertThat(permanent(misfire()
                            .judgedBy(strict)
                            .drive(SIMILAR, null, scan().status("P0302", 0x00))
                            .drive(MINIMUM_CYCLE)))
                    .contains("(not yet seen)");
            assertThat(permanent(misfire()
                            .judgedBy(strict)
                            .drive(similarTo(MINIMUM_CYCLE), null, scan().status("P0302", 0x00))))
                    .contains("has happened");
        }

        @Test
        void warmUpCyclesWithTheMilOffEraseTheConfirmedCode() {
            ScanText milOff = scan().pending().confirmed("P0420").readiness("01 07 E5 00");
            History history = History.of("P0420").repair(false, milOff, null);
            for (int i = 0; i < 2; i++) {
                history.drive(WARM_UP);
            }
            assertThat(words(history.verdict().memory().confirmedCode().explanation()))
                    .isEqualTo(
                            "P0420 is stored. The car erases it after 40 warm-up cycles with the MIL off: at least 2 seen so"
                                    + " far.");
            assertThat(words(History.of("P0420")
                            .repair(false, stored, null)
                            .drive(WARM_UP)
                            .verdict()
                            .memory()
                            .confirmedCode()
                            .explanation()))
                    .isEqualTo("P0420 is stored. It stays until the MIL is off and 40 warm-up cycles have passed.");
        }

        @Test
        void aPermanentCodeThatIsGoneIsSaidSo() {
            assertThat(permanent(History.of("P0420")
                            .repair(true, stored, null)
                            .drive(noCodes().permanent())))
                    .isEqualTo("P0420 is not stored as a permanent code.");
        }

        private static final OperatingPoint FROZEN = new OperatingPoint(850, 30, 80);
        private static final DriveSummary SIMILAR =
                new DriveSummary(java.util.Map.of(), java.util.List.of(FROZEN), Optional.empty());

        private DriveSummary similarTo(DriveSummary summary) {
            return new DriveSummary(summary.values(), java.util.List.of(FROZEN), Optional.empty());
        }

        private History misfire() {
            return History.of(History.frozenAt("P0302", FROZEN))
                    .repair(true, scan().confirmed("P0302").permanent("P0302").readiness("81 07 E5 00"), null);
        }

        private String permanent(History history) {
            return words(history.verdict().memory().permanentCode().explanation());
        }
    }

    @Nested
    class WhatIsNext {

        @Test
        void saysHowManyTripsAndHowToRecordThem() {
            assertThat(words(repaired("P0420").verdict().next().orElseThrow()))
                    .isEqualTo("2 more drives in a row in which the catalyst monitor runs and passes."
                            + " End it with a scan of PID $41 and service $07, key still on.");
            assertThat(words(repaired("P0420").drives("P").verdict().next().orElseThrow()))
                    .startsWith("One more drive in which the catalyst monitor runs and passes.");
        }

        @Test
        void asksForAnotherRecordWhereReadinessBitsProveNothing() {
            assertThat(words(repaired("P0302").verdict().next().orElseThrow()))
                    .contains("status byte ($19 0A or $19 02 FF)");
        }

        @Test
        void saysWhatAFailedTripMeans() {
            History history = repaired("P0420").drives("F");
            assertThat(history.verdict().state()).isInstanceOf(FailedOnce.class);
            assertThat(words(history.verdict().next().orElseThrow())).startsWith("The next trip decides");
            assertThat(words(repaired("P0420").drives("FF").verdict().next().orElseThrow()))
                    .startsWith("Find the cause and record the next repair");
        }
    }
}
