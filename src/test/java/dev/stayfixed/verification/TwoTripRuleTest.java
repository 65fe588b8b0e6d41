package dev.stayfixed.verification;

import static dev.stayfixed.English.words;
import static dev.stayfixed.verification.History.CYCLE_COMPLETE;
import static dev.stayfixed.verification.History.CYCLE_NOT_COMPLETE;
import static dev.stayfixed.verification.History.oneTrip;
import static dev.stayfixed.verification.History.repaired;
import static dev.stayfixed.verification.Outcome.CARRIED_OVER;
import static dev.stayfixed.verification.Outcome.CONTRADICTORY;
import static dev.stayfixed.verification.Outcome.DID_NOT_RUN;
import static dev.stayfixed.verification.Outcome.FAILED;
import static dev.stayfixed.verification.Outcome.FAILED_CONFIRMED;
import static dev.stayfixed.verification.Outcome.PASSED;
import static dev.stayfixed.verification.Outcome.RAN_UNPROVEN;
import static dev.stayfixed.verification.ScanText.noCodes;
import static dev.stayfixed.verification.ScanText.scan;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.drive.DriveRecord.Moment;
import dev.stayfixed.drive.DriveRecord.TimedScan;
import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.drive.EnablingCondition;
import dev.stayfixed.drive.OperatingPoint;
import dev.stayfixed.obd.Ignition;
import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.obd.TroubleCode;
import dev.stayfixed.reason.Reason;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** What one drive says, by each kind of evidence. */
class TwoTripRuleTest {

    private static final String CATALYST_PASS = "21 84 20 00 80 00 00 00 C0";
    private static final String CATALYST_FAIL = "21 84 20 00 D0 00 00 00 C0";
    private static final String CATALYST_NOT_RUN = "21 84 20 00 00 00 00 00 00";

    @Nested
    class CycleReadiness {

        @Test
        void completeInThisCycleAndNoCodeIsAPass() {
            History history = repaired("P0420").drive(noCodes().cycle(CYCLE_COMPLETE));
            assertThat(history.lastOutcome()).isEqualTo(PASSED);
            assertThat(history.last().strongest().source())
                    .isEqualTo(new Evidence.Monitor(EvidenceGrade.CYCLE_READINESS));
            assertThat(words(history.last().reason()))
                    .isEqualTo("the catalyst monitor is complete in this driving cycle, and no code came");
        }

        @Test
        void notCompleteIsNoTrip() {
            History history = repaired("P0420").drive(noCodes().cycle(CYCLE_NOT_COMPLETE));
            assertThat(history.lastOutcome()).isEqualTo(DID_NOT_RUN);
            assertThat(words(history.last().reason()))
                    .isEqualTo("the catalyst monitor is not complete in this driving cycle");
        }

        @Test
        void notEnabledIsNoTrip() {
            History history = repaired("P0420").drive(noCodes().cycle("00 05 E0 00"));
            assertThat(history.lastOutcome()).isEqualTo(DID_NOT_RUN);
            assertThat(words(history.last().reason()))
                    .isEqualTo("the catalyst monitor is not enabled in this driving cycle");
        }

        @Test
        void allZeroSaysNothingAndReadinessIsHeard() {
            History history =
                    repaired("P0420").drive(noCodes().cycle("00 00 00 00").readiness("00 07 E5 00"));
            assertThat(history.lastOutcome()).isEqualTo(PASSED);
            assertThat(history.last().strongest().source()).isEqualTo(new Evidence.Monitor(EvidenceGrade.READINESS));
        }

        @Test
        void ranWithoutTheCodeListsProvesNothing() {
            History history = repaired("P0420").drive(scan().cycle(CYCLE_COMPLETE));
            assertThat(history.lastOutcome()).isEqualTo(RAN_UNPROVEN);
            assertThat(words(history.last().reason()))
                    .contains("read services $03 and $07 before the key is turned off");
        }

        @Test
        void confirmedCodesAloneCannotExcludeAFirstFailureOfATwoTripFault() {
            assertThat(repaired("P0420")
                            .drive(scan().confirmed().cycle(CYCLE_COMPLETE))
                            .lastOutcome())
                    .isEqualTo(RAN_UNPROVEN);
        }

        @Test
        void aOneTripFaultIsExcludedByTheConfirmedCodesOrTheMil() {
            History byCodes = History.of(oneTrip("P0420"))
                    .repair(true)
                    .drive(scan().confirmed().cycle(CYCLE_COMPLETE));
            assertThat(byCodes.lastOutcome()).isEqualTo(PASSED);
            History byMil = History.of(oneTrip("P0420"))
                    .repair(true)
                    .drive(scan().readiness("00 07 E5 E5").cycle(CYCLE_COMPLETE));
            assertThat(byMil.lastOutcome()).isEqualTo(PASSED);
            History byNothing = History.of(oneTrip("P0420")).repair(true).drive(scan().cycle(CYCLE_COMPLETE));
            assertThat(byNothing.lastOutcome()).isEqualTo(RAN_UNPROVEN);
        }

        @Test
        void aScanAfterKeyOffSpeaksOfTheNextCycle() {
            History history = repaired("P0420")
                    .drive(noCodes().cycle(CYCLE_NOT_COMPLETE).engineOff().readiness("00 07 E5 00"));
            assertThat(history.lastOutcome()).isEqualTo(PASSED);
            assertThat(history.last().strongest().source()).isEqualTo(new Evidence.Monitor(EvidenceGrade.READINESS));
        }

        @Test
        void continuousMonitorsOfSparkEnginesProveNothing() {
            History history =
                    repaired("P0302").drive(noCodes().cycle(CYCLE_COMPLETE).readiness("00 07 E5 00"));
            assertThat(history.lastOutcome()).isEqualTo(DID_NOT_RUN);
            assertThat(words(history.last().reason()))
                    .startsWith("nothing in this record says that the misfire monitor ran");
        }

        @Test
        void continuousMonitorsOfCompressionEnginesAreHeard() {
            RepairedFault fault = RepairedFault.of(TroubleCode.parse("P0302"), Ignition.COMPRESSION, Trips.TWO);
            History history = History.of(fault).repair(true).drive(noCodes().cycle("00 0F EB 00"));
            assertThat(history.lastOutcome()).isEqualTo(RAN_UNPROVEN);
            assertThat(words(history.last().reason())).contains("no freeze frame of the failure is known");
        }

        @Test
        void theComponentsBitProvesNothingOnAnyEngine() {
            RepairedFault fault = RepairedFault.of(TroubleCode.parse("P0102"), Ignition.COMPRESSION, Trips.TWO);
            History history = History.of(fault).repair(true).drive(noCodes().cycle("00 0F EB 00"));
            assertThat(history.lastOutcome()).isEqualTo(DID_NOT_RUN);
        }
    }

    @Nested
    class CodeLists {

        @Test
        void aNewPendingCodeIsAFail() {
            History history =
                    repaired("P0420").drive(scan().pending("P0420").confirmed().cycle(CYCLE_COMPLETE));
            assertThat(history.lastOutcome()).isEqualTo(FAILED);
            assertThat(words(history.last().reason())).isEqualTo("P0420 is pending and was not before");
            assertThat(history.last().strongest().source()).isEqualTo(new Evidence.CodeStored());
        }

        @Test
        void aNewConfirmedCodeIsConfirmed() {
            History history = repaired("P0420").drive(scan().pending("P0420").confirmed("P0420"));
            assertThat(history.lastOutcome()).isEqualTo(FAILED_CONFIRMED);
            assertThat(history.verdict().state()).isInstanceOf(VerificationState.Recurred.class);
        }

        @Test
        void aPendingCodeCarriedOverIsNoSecondFailure() {
            History history = repaired("P0420")
                    .drive(scan().pending("P0420").confirmed())
                    .drive(scan().pending("P0420").confirmed().cycle(CYCLE_NOT_COMPLETE));
            assertThat(history.lastOutcome()).isEqualTo(CARRIED_OVER);
            assertThat(history.verdict().state()).isInstanceOf(VerificationState.FailedOnce.class);
        }

        @Test
        void aSecondFailureWouldHaveConfirmedTheCode() {
            History history = repaired("P0420")
                    .drive(scan().pending("P0420").confirmed())
                    .drive(scan().pending("P0420").confirmed().cycle(CYCLE_COMPLETE));
            assertThat(history.lastOutcome()).isEqualTo(PASSED);
            assertThat(history.verdict().state()).isEqualTo(new VerificationState.Passing(1, 2));
        }

        @Test
        void withAnOldConfirmedCodeNothingTellsANewFailureFromTheOldOne() {
            History history = History.of("P0420")
                    .repair(false, scan().pending("P0420").confirmed("P0420"), null)
                    .drive(scan().pending("P0420").confirmed("P0420").cycle(CYCLE_COMPLETE));
            assertThat(history.lastOutcome()).isEqualTo(CARRIED_OVER);
            assertThat(words(history.last().reason())).endsWith("scan again at the next start");
        }

        @Test
        void aPendingCodeGoneAtTheNextStartShowsAPassedTrip() {
            ScanText end = scan().pending("P0420").confirmed("P0420").cycle(CYCLE_COMPLETE);
            History history = uncleared()
                    .drive(end.inUse(1, 500, 1))
                    .drive(
                            scan().pending().confirmed("P0420").inUse(1, 500, 1),
                            scan().pending().confirmed("P0420").cycle(CYCLE_NOT_COMPLETE));
            assertThat(history.verdict().judgements().get(0).outcome()).isEqualTo(PASSED);
            assertThat(words(history.verdict().judgements().get(0).reason()))
                    .isEqualTo("P0420 is still pending; the next reading shows that this trip passed");
            assertThat(history.verdict().state()).isEqualTo(new VerificationState.Passing(1, 2));
        }

        /** A start without a kilometre may have been the trip that passed: the count is the same, and the drive stays open. */
        @Test
        void standingKilometresDoNotSayInWhichTripItPassed() {
            ScanText end = scan().pending("P0420").confirmed("P0420").cycle(CYCLE_COMPLETE);
            History history = uncleared()
                    .drive(end.odometer(1000).minutesSinceClear(50))
                    .drive(
                            scan().pending().confirmed("P0420").odometer(1000).minutesSinceClear(50),
                            scan().pending().confirmed("P0420").cycle(CYCLE_NOT_COMPLETE));
            assertThat(history.verdict().judgements().get(0).outcome()).isEqualTo(CARRIED_OVER);
            assertThat(history.verdict().state()).isEqualTo(new VerificationState.Passing(1, 2));
        }

        @Test
        void theIgnitionCounterTellsToo() {
            ScanText end = scan().pending("P0420").confirmed("P0420").cycle(CYCLE_COMPLETE);
            assertThat(uncleared()
                            .drive(end.inUse(1, 500, 1))
                            .drive(scan().pending().confirmed("P0420").inUse(1, 500, 1), noCodes())
                            .verdict()
                            .judgements()
                            .get(0)
                            .outcome())
                    .isEqualTo(PASSED);
            ScanText again = scan().pending("P0420").confirmed("P0420").cycle(CYCLE_COMPLETE);
            assertThat(uncleared()
                            .drive(again.inUse(1, 500, 1))
                            .drive(scan().pending().confirmed("P0420").inUse(1, 501, 1), noCodes())
                            .verdict()
                            .judgements()
                            .get(0)
                            .outcome())
                    .isEqualTo(CARRIED_OVER);
        }

        @Test
        void aClearInBetweenLeavesNothingToTell() {
            ScanText end = scan().pending("P0420").confirmed("P0420").cycle(CYCLE_COMPLETE);
            History history = uncleared()
                    .drive(end.odometer(1000).minutesSinceClear(50))
                    .drive(scan().pending().confirmed().odometer(1000).minutesSinceClear(0), noCodes());
            assertThat(history.verdict().judgements().get(0).outcome()).isEqualTo(CARRIED_OVER);
        }

        private History uncleared() {
            return History.of("P0420").repair(false, scan().pending("P0420").confirmed("P0420"), null);
        }

        @Test
        void anOldConfirmedCodeDoesNotHinderAPass() {
            History history = History.of("P0420")
                    .repair(false, scan().pending("P0420").confirmed("P0420"), null)
                    .drive(scan().pending().confirmed("P0420").cycle(CYCLE_COMPLETE));
            assertThat(history.lastOutcome()).isEqualTo(PASSED);
        }

        @Test
        void aPendingCodeOfUnknownAgeProvesNothing() {
            assertThat(History.of("P0420")
                            .repair(false)
                            .drive(scan().pending("P0420").cycle(CYCLE_COMPLETE))
                            .lastOutcome())
                    .isEqualTo(RAN_UNPROVEN);
            assertThat(History.of("P0420")
                            .repair(false)
                            .drive(scan().pending("P0420").cycle(CYCLE_NOT_COMPLETE))
                            .lastOutcome())
                    .isEqualTo(CARRIED_OVER);
        }

        /** PID $41 not complete says that the group has not finished, not that this monitor has not failed. */
        @Test
        void aCodeThatCameIsAFailureEvenWhereTheGroupIsNotComplete() {
            History history =
                    repaired("P0420").drive(scan().pending("P0420").confirmed().cycle(CYCLE_NOT_COMPLETE));
            assertThat(history.lastOutcome()).isEqualTo(FAILED);
            assertThat(history.verdict().state()).isInstanceOf(VerificationState.FailedOnce.class);
        }

        @Test
        void aCodeThatCameWhereItsOwnTestDidNotRunFailedUnseen() {
            History history = repaired("P0420").drive(scan().status("P0420", 0x64));
            assertThat(history.lastOutcome()).isEqualTo(CARRIED_OVER);
            assertThat(history.verdict().state()).isInstanceOf(VerificationState.FailedOnce.class);
            assertThat(history.verdict().attempts().get(0).steps().get(0).kind())
                    .isEqualTo(Verdict.Step.Kind.UNSEEN_FAILURE);
        }

        @Test
        void aPendingCodeBeforeTheStartFailedUnseen() {
            History history = repaired("P0420")
                    .drive(noCodes().cycle(CYCLE_COMPLETE))
                    .drive(
                            scan().pending("P0420").confirmed(),
                            scan().pending("P0420").confirmed().cycle(CYCLE_COMPLETE));
            assertThat(history.lastOutcome()).isEqualTo(PASSED);
            assertThat(history.verdict().state()).isEqualTo(new VerificationState.Passing(1, 2));
        }

        @Test
        void aConfirmedCodeBeforeTheStartRecurredUnseen() {
            History history = repaired("P0420")
                    .drive(scan().pending("P0420").confirmed("P0420"), noCodes().cycle(CYCLE_COMPLETE));
            assertThat(history.verdict().state()).isInstanceOf(VerificationState.Recurred.class);
        }

        @Test
        void markedFailedBeforeTheStartFailedUnseen() {
            History history = repaired("P0420")
                    .drive(scan().status("P0420", 0x00))
                    .drive(scan().status("P0420", 0x60), scan().status("P0420", 0x60));
            assertThat(history.lastOutcome()).isEqualTo(DID_NOT_RUN);
            assertThat(history.verdict().attempts().get(0).steps().get(1).kind())
                    .isEqualTo(Verdict.Step.Kind.UNSEEN_FAILURE);
            assertThat(history.verdict().state()).isEqualTo(new VerificationState.Passing(1, 2));
        }

        @Test
        void aPendingCodeErasedByTheCarEndsTheSeriesOfFailures() {
            History history = repaired("P0420")
                    .drive(scan().pending("P0420").confirmed())
                    .drive(noCodes(), scan().pending("P0420").confirmed().cycle(CYCLE_COMPLETE));
            assertThat(history.lastOutcome()).isEqualTo(FAILED);
            assertThat(history.verdict().state()).isInstanceOf(VerificationState.FailedOnce.class);
        }

        @Test
        void aDriveThatFailedAndLaterPassedIsAFail() {
            List<TimedScan> scans = new ArrayList<>();
            scans.add(new TimedScan(Moment.AFTER, scan().status("P0420", 0x27).read()));
            scans.add(new TimedScan(Moment.AFTER, scan().status("P0420", 0x26).read()));
            History history = repaired("P0420").drive(DriveSummary.UNKNOWN, false, scans);
            assertThat(history.lastOutcome()).isEqualTo(FAILED);
        }

        @Test
        void anotherCodeIsNotThisFault() {
            assertThat(repaired("P0420")
                            .drive(scan().pending("P0430").confirmed().cycle(CYCLE_COMPLETE))
                            .lastOutcome())
                    .isEqualTo(PASSED);
        }
    }

    /** ISO 14229-1: reportDTCByStatusMask lists the codes that have a bit of the mask set. */
    @Nested
    class LeftOutOfAStatusList {

        private final ScanText listedNoMore = scan().line("19 02 FF").line("59 02 FF");

        @Test
        void aKnownCodeLeftOutRanAndPassed() {
            History history = repaired("P0117")
                    .drive(scan().line("19 02 FF").line("59 02 FF 01 17 00 40"))
                    .drive(listedNoMore);
            assertThat(history.lastOutcome()).isEqualTo(PASSED);
            assertThat(words(history.last().reason())).isEqualTo("its test completed in this drive and did not fail");
        }

        /** Sub-function $0A lists every code, tested or not; it does not show that this unit lists untested ones under a mask. */
        @Test
        void aCodeListedAnotherWayShowsNothing() {
            assertThat(repaired("P0117")
                            .drive(scan().status("P0117", 0x40))
                            .drive(listedNoMore)
                            .lastOutcome())
                    .isEqualTo(DID_NOT_RUN);
        }

        @Test
        void aCodeNeverListedMayBeUnknownToTheControlUnit() {
            assertThat(repaired("P0117").drive(listedNoMore).lastOutcome()).isEqualTo(DID_NOT_RUN);
        }

        @Test
        void aMaskThatDoesNotAskForThisCycleSaysNothing() {
            assertThat(repaired("P0117")
                            .drive(scan().status("P0117", 0x40))
                            .drive(scan().line("19 02 08").line("59 02 FF"))
                            .lastOutcome())
                    .isEqualTo(DID_NOT_RUN);
        }

        @Test
        void withoutTheRequestTheMaskIsNotKnown() {
            assertThat(repaired("P0117")
                            .drive(scan().status("P0117", 0x40))
                            .drive(scan().line("59 02 FF"))
                            .lastOutcome())
                    .isEqualTo(DID_NOT_RUN);
        }
    }

    @Nested
    class TestResults {

        @Test
        void aNewResultInsideItsLimitsIsAPass() {
            History history = repaired("P0420").drive(noCodes().test(CATALYST_PASS));
            assertThat(history.lastOutcome()).isEqualTo(PASSED);
            assertThat(history.last().strongest().source()).isEqualTo(new Evidence.Monitor(EvidenceGrade.TEST_RESULT));
        }

        @Test
        void aNewResultOutsideItsLimitsIsAFail() {
            assertThat(repaired("P0420").drive(scan().test(CATALYST_FAIL)).lastOutcome())
                    .isEqualTo(FAILED);
        }

        @Test
        void aFailedResultIsNotDeniedByAnEmptyList() {
            History history = repaired("P0420").drive(noCodes().test(CATALYST_FAIL));
            assertThat(history.lastOutcome()).isEqualTo(FAILED);
            assertThat(history.verdict().state()).isInstanceOf(VerificationState.FailedOnce.class);
        }

        @Test
        void zeroValueAndLimitsIsNotRunYet() {
            History history = repaired("P0420").drive(noCodes().test(CATALYST_NOT_RUN));
            assertThat(history.lastOutcome()).isEqualTo(DID_NOT_RUN);
            assertThat(words(history.last().reason())).isEqualTo("monitor 21 stands at 0/0/0: not run since the clear");
        }

        @Test
        void anUnchangedResultSaysNothing() {
            History history = repaired("P0420")
                    .drive(noCodes().test(CATALYST_PASS))
                    .drive(noCodes().test(CATALYST_PASS));
            assertThat(history.lastOutcome()).isEqualTo(DID_NOT_RUN);
        }

        @Test
        void aResultOfAnotherMonitorSaysNothing() {
            assertThat(repaired("P0420")
                            .drive(noCodes().test("22 84 20 00 80 00 00 00 C0"))
                            .lastOutcome())
                    .isEqualTo(DID_NOT_RUN);
        }

        @Test
        void aStatusByteThatPassedAgainstAResultThatFailedIsContradictory() {
            assertThat(repaired("P0420")
                            .drive(scan().status("P0420", 0x00).test(CATALYST_FAIL))
                            .lastOutcome())
                    .isEqualTo(CONTRADICTORY);
        }
    }

    @Nested
    class CountersAndReadiness {

        @Test
        void aNumeratorThatWentUpIsARun() {
            History history = History.of("P0420")
                    .repair(true, null, noCodes().inUse(1024, 3337, 824))
                    .drive(noCodes().inUse(1025, 3338, 825));
            assertThat(history.lastOutcome()).isEqualTo(PASSED);
            assertThat(words(history.last().strongest().says()))
                    .isEqualTo("in-use counter CATCOMP1 went up from 824 to 825");
        }

        @Test
        void aNumeratorThatStoodStillIsNoRun() {
            assertThat(History.of("P0420")
                            .repair(true, null, noCodes().inUse(1024, 3337, 824))
                            .drive(noCodes().inUse(1027, 3340, 824))
                            .lastOutcome())
                    .isEqualTo(DID_NOT_RUN);
        }

        @Test
        void aNumeratorMayExceedItsDenominator() {
            assertThat(History.of("P0420")
                            .repair(true, null, noCodes().inUse(516, 600, 572))
                            .drive(noCodes().inUse(516, 601, 573))
                            .lastOutcome())
                    .isEqualTo(PASSED);
        }

        @Test
        void inUseCountersThatFellBelongToAnotherControlUnit() {
            History history = History.of("P0420")
                    .repair(true, null, noCodes().inUse(1024, 3337, 824))
                    .drive(noCodes().cycle(CYCLE_COMPLETE).inUse(1025, 3338, 825))
                    .drive(noCodes().cycle(CYCLE_COMPLETE).inUse(3, 5, 1));
            assertThat(history.verdict().state()).isEqualTo(new VerificationState.Passing(1, 2));
            assertThat(history.lastOutcome()).isEqualTo(CONTRADICTORY);
            assertThat(words(history.last().reason()))
                    .isEqualTo(
                            "the ignition cycle counter went down from 3338 to 5: another or a reprogrammed control unit");
            history.drive(noCodes().cycle(CYCLE_COMPLETE).inUse(4, 6, 2));
            assertThat(history.lastOutcome()).isEqualTo(PASSED);
            assertThat(history.verdict().state()).isEqualTo(new VerificationState.Passing(1, 2));
        }

        @Test
        void anIgnitionCounterThatWrapsIsNoLoss() {
            History history = History.of("P0420")
                    .repair(true, null, noCodes().inUse(1024, 65534, 824))
                    .drive(noCodes().cycle(CYCLE_COMPLETE).inUse(1025, 65535, 825))
                    .drive(noCodes().cycle(CYCLE_COMPLETE).inUse(1026, 0, 826));
            assertThat(history.verdict().state()).isInstanceOf(VerificationState.ConfirmedFixed.class);
        }

        @Test
        void completeInThisCycleWhileReadinessStoodStillRanAgain() {
            assertThat(History.of("P0420")
                            .repair(false, scan().pending().confirmed().readiness("00 07 E5 00"), null)
                            .drive(noCodes().readiness("00 07 E5 00").cycle(CYCLE_COMPLETE))
                            .lastOutcome())
                    .isEqualTo(PASSED);
        }

        @Test
        void completeWithTheCodeConfirmedAnewIsNoProof() {
            assertThat(repaired("P0420")
                            .drive(scan().pending("P0420").confirmed("P0420").readiness("81 07 E5 00"))
                            .lastOutcome())
                    .isEqualTo(FAILED_CONFIRMED);
        }

        @Test
        void readinessCompleteFromBeforeTheRepairProvesNothing() {
            assertThat(History.of("P0420")
                            .repair(false, scan().pending().confirmed("P0420").readiness("81 07 E5 00"), null)
                            .drive(scan().pending().confirmed("P0420").readiness("81 07 E5 00"))
                            .lastOutcome())
                    .isEqualTo(DID_NOT_RUN);
        }

        @Test
        void readinessTurnedCompleteSinceTheClearWorksOnce() {
            History history = repaired("P0420").drive(noCodes().readiness("00 07 E5 04"));
            assertThat(history.lastOutcome()).isEqualTo(PASSED);
            assertThat(history.drive(noCodes().readiness("00 07 E5 00")).lastOutcome())
                    .isEqualTo(DID_NOT_RUN);
        }

        @Test
        void oneRunIsNotCountedTwice() {
            History history = repaired("P0420")
                    .drive(noCodes().cycle(CYCLE_COMPLETE))
                    .drive(noCodes().readiness("00 07 E5 00"));
            assertThat(history.lastOutcome()).isEqualTo(DID_NOT_RUN);
            assertThat(history.verdict().state()).isEqualTo(new VerificationState.Passing(1, 2));
        }

        /** 13 CCR 1968.2 (d)(2.3), from memory; three makers' service texts: three passed trips turn it off. */
        @Test
        void theMilGoingOutByItselfProvesATwoTripFault() {
            ScanText before = scan().pending().confirmed("P0420").readiness("81 07 E5 00");
            ScanText after = scan().pending().confirmed("P0420").readiness("01 07 E5 00");
            History history = History.of("P0420")
                    .repair(false, before, null)
                    .drive(before)
                    .drive(after);
            assertThat(history.verdict().state()).isInstanceOf(VerificationState.ConfirmedFixed.class);
            assertThat(History.of(accepting(EvidenceGrade.READINESS))
                            .repair(false, before, null)
                            .drive(before)
                            .drive(after)
                            .verdict()
                            .state())
                    .isInstanceOf(VerificationState.WaitingForFirstTrip.class);
        }

        @Test
        void theMilGoingOutWithItsCodeIsAClear() {
            ScanText before = scan().pending().confirmed("P0420").readiness("81 07 E5 00");
            ScanText after = scan().pending().confirmed().readiness("00 07 E5 E5");
            assertThat(History.of("P0420")
                            .repair(false, before, null)
                            .drive(after)
                            .verdict()
                            .state())
                    .isInstanceOf(VerificationState.WaitingForFirstTrip.class);
        }

        @Test
        void aShopMayAskForStrongEvidenceOnly() {
            History history = History.of(accepting(EvidenceGrade.TEST_RESULT))
                    .repair(true)
                    .drive(noCodes().cycle(CYCLE_COMPLETE));
            assertThat(history.lastOutcome()).isEqualTo(RAN_UNPROVEN);
        }

        private RepairedFault accepting(EvidenceGrade weakest) {
            RepairedFault fault = History.twoTrip("P0420");
            return new RepairedFault(
                    fault.code(),
                    fault.ignition(),
                    fault.group(),
                    fault.trips(),
                    2,
                    weakest,
                    List.of(),
                    Optional.empty());
        }
    }

    @Nested
    class EnablingConditionsOfTheFault {

        private final EnablingCondition tenMinutes =
                new EnablingCondition(DriveQuantity.RUN_TIME, OptionalDouble.of(600), OptionalDouble.empty());

        @Test
        void metWithoutACodeIsAPass() {
            History history = History.of(fault(Trips.TWO)).repair(true).drive(run(600), null, noCodes());
            assertThat(history.lastOutcome()).isEqualTo(PASSED);
            assertThat(words(history.last().reason()))
                    .isEqualTo("its enabling conditions were met: engine run time 600 s, at least 600 s needed,"
                            + " and no code came");
        }

        @Test
        void missedIsNoTripAndSaysByHowMuch() {
            History history = History.of(fault(Trips.TWO)).repair(true).drive(run(559), null, noCodes());
            assertThat(history.lastOutcome()).isEqualTo(DID_NOT_RUN);
            assertThat(words(history.last().reason()))
                    .isEqualTo("engine run time 559 s, at least 600 s needed: 41 s short");
        }

        @Test
        void withoutAScanATwoTripFaultIsNotExcluded() {
            assertThat(History.of(fault(Trips.TWO)).repair(true).drive(run(600)).lastOutcome())
                    .isEqualTo(RAN_UNPROVEN);
        }

        @Test
        void withoutAScanTheMilExcludesAOneTripFault() {
            DriveSummary lampOff =
                    new DriveSummary(Map.of(DriveQuantity.RUN_TIME, 600.0), List.of(), Optional.of(false));
            assertThat(History.of(fault(Trips.ONE)).repair(true).drive(lampOff).lastOutcome())
                    .isEqualTo(PASSED);
            assertThat(History.of(fault(Trips.ONE)).repair(true).drive(run(600)).lastOutcome())
                    .isEqualTo(RAN_UNPROVEN);
        }

        @Test
        void notRecordedConditionsSayNothing() {
            History history = History.of(fault(Trips.TWO)).repair(true).drive(DriveSummary.UNKNOWN, null, noCodes());
            assertThat(history.lastOutcome()).isEqualTo(DID_NOT_RUN);
            assertThat(history.last().evidence()).containsExactly(Evidence.record(Reason.of(TripReason.NOTHING_HELD)));
        }

        private RepairedFault fault(Trips trips) {
            return new RepairedFault(
                    TroubleCode.parse("P0117"),
                    Ignition.SPARK,
                    MonitorGroup.COMPONENTS,
                    trips,
                    trips.count(),
                    EvidenceGrade.ENABLING_CONDITIONS,
                    List.of(tenMinutes),
                    Optional.empty());
        }

        private DriveSummary run(double seconds) {
            return History.summary(Map.of(DriveQuantity.RUN_TIME, seconds));
        }
    }

    @Nested
    class SimilarToTheFreezeFrame {

        private final OperatingPoint stored = new OperatingPoint(850, 30, 80);

        @Test
        void aPassElsewhereProvesNothing() {
            History history = History.of(History.frozenAt("P0302", stored))
                    .repair(true)
                    .drive(at(new OperatingPoint(2500, 30, 80)), null, scan().status("P0302", 0x00));
            assertThat(history.lastOutcome()).isEqualTo(RAN_UNPROVEN);
            assertThat(words(history.last().reason()))
                    .isEqualTo("the monitor passed, but no recorded moment was similar to the freeze frame;"
                            + " needed within 375 rpm of 850 rpm, load within 20 % relative of 30 %, engine warm");
        }

        @Test
        void aPassUnderSimilarConditionsCounts() {
            History history = History.of(History.frozenAt("P0302", stored))
                    .repair(true)
                    .drive(at(new OperatingPoint(900, 35, 90)), null, scan().status("P0302", 0x00));
            assertThat(history.lastOutcome()).isEqualTo(PASSED);
        }

        @Test
        void aFailCountsAnywhere() {
            History history = History.of(History.frozenAt("P0302", stored))
                    .repair(true)
                    .drive(at(new OperatingPoint(2500, 30, 80)), null, scan().status("P0302", 0x27));
            assertThat(history.lastOutcome()).isEqualTo(FAILED);
        }

        @Test
        void afterEightyCyclesWithoutThemThePassCounts() {
            History history = History.of(History.frozenAt("P0171", stored)).repair(true);
            for (int i = 0; i < 79; i++) {
                history.drive(scan().status("P0171", 0x00));
            }
            assertThat(history.lastOutcome()).isEqualTo(RAN_UNPROVEN);
            assertThat(words(history.last().reason())).contains("no operating point of this drive was recorded");
            assertThat(history.drive(scan().status("P0171", 0x00)).lastOutcome())
                    .isEqualTo(PASSED);
            assertThat(words(history.last().reason())).contains("80 driving cycles without the fault");
            assertThat(history.drive(scan().status("P0171", 0x00)).lastOutcome())
                    .isEqualTo(RAN_UNPROVEN);
        }

        @Test
        void anImbalanceCodeFollowsTheOrdinaryRule() {
            assertThat(History.of(History.frozenAt("P219A", stored))
                            .repair(true)
                            .drive(scan().status("P219A", 0x00))
                            .lastOutcome())
                    .isEqualTo(PASSED);
        }

        @Test
        void aSecondFailElsewhereRecurs() {
            History history = History.of(History.frozenAt("P0171", stored))
                    .repair(true)
                    .drive(at(stored), null, scan().status("P0171", 0x27))
                    .drive(at(new OperatingPoint(3000, 60, 80)), null, scan().status("P0171", 0xAF));
            assertThat(history.verdict().state()).isInstanceOf(VerificationState.Recurred.class);
        }

        @Test
        void aSimilarCycleWithoutTheFaultEndsTheSeries() {
            History history = History.of(History.frozenAt("P0171", stored))
                    .repair(true)
                    .drive(at(stored), null, scan().status("P0171", 0x27))
                    .drive(at(stored), null, scan().status("P0171", 0x24));
            assertThat(history.verdict().state()).isEqualTo(new VerificationState.Passing(1, 2));
        }

        @Test
        void otherGroupsNeedNone() {
            assertThat(History.of(History.frozenAt("P0420", stored))
                            .repair(true)
                            .drive(scan().status("P0420", 0x00))
                            .lastOutcome())
                    .isEqualTo(PASSED);
        }

        private DriveSummary at(OperatingPoint point) {
            return new DriveSummary(Map.of(), List.of(point), Optional.empty());
        }
    }

    @Nested
    class Contradictions {

        @Test
        void milOnWithoutACodeIsShownAndNeverScored() {
            History history =
                    repaired("P0420").drive(noCodes().cycle(CYCLE_COMPLETE).readiness("80 07 E5 00"));
            assertThat(history.lastOutcome()).isEqualTo(CONTRADICTORY);
            assertThat(history.verdict().state()).isInstanceOf(VerificationState.WaitingForFirstTrip.class);
        }

        @Test
        void anOdometerThatRanBackIsContradictory() {
            History history = repaired("P0420")
                    .drive(noCodes().cycle(CYCLE_COMPLETE).odometer(123456))
                    .drive(noCodes().cycle(CYCLE_COMPLETE).odometer(123400));
            assertThat(history.lastOutcome()).isEqualTo(CONTRADICTORY);
            assertThat(words(history.last().reason()))
                    .isEqualTo("odometer went down from 12346 to 12340 km: a clear does not touch the odometer");
        }

        @Test
        void distanceThatFellWhileWarmUpsRoseIsContradictory() {
            History history = repaired("P0420")
                    .drive(noCodes()
                            .cycle(CYCLE_COMPLETE)
                            .kilometresSinceClear(410)
                            .warmUpsSinceClear(12))
                    .drive(noCodes()
                            .cycle(CYCLE_COMPLETE)
                            .kilometresSinceClear(3)
                            .warmUpsSinceClear(13));
            assertThat(history.lastOutcome()).isEqualTo(CONTRADICTORY);
            assertThat(history.verdict().state()).isEqualTo(new VerificationState.Passing(1, 2));
        }

        @Test
        void aContradictoryRecordTeachesNothing() {
            History history = repaired("P0420")
                    .drive(noCodes().cycle(CYCLE_COMPLETE).odometer(1000))
                    .drive(noCodes().cycle(CYCLE_COMPLETE).odometer(900))
                    .drive(noCodes().cycle(CYCLE_COMPLETE).odometer(1100));
            assertThat(history.verdict().state()).isInstanceOf(VerificationState.ConfirmedFixed.class);
        }
    }

    @Test
    void thatItWasDrivenCountsForNothing() {
        DriveSummary lampOff = new DriveSummary(Map.of(), List.of(), Optional.of(false));
        History history = repaired("P0420").drive(lampOff);
        assertThat(history.lastOutcome()).isEqualTo(DID_NOT_RUN);
        assertThat(history.last().strongest().source()).isEqualTo(new Evidence.Monitor(EvidenceGrade.DRIVEN));
        assertThatThrownBy(() -> new RepairedFault(
                        TroubleCode.parse("P0420"),
                        Ignition.SPARK,
                        MonitorGroup.CATALYST,
                        Trips.TWO,
                        2,
                        EvidenceGrade.DRIVEN,
                        List.of(),
                        Optional.empty()))
                .hasMessageStartingWith("weakest evidence: found DRIVEN, expected ENABLING_CONDITIONS or stronger");
    }

    @Test
    void neverFewerPassesThanTheFaultNeedsToConfirm() {
        assertThatThrownBy(() -> History.withPasses("P0420", 1))
                .hasMessage("required passes: found 1, expected 2 (the trips this fault needs to confirm) to 1000");
        assertThatThrownBy(() -> History.withPasses("P0420", 1001)).hasMessageContaining("found 1001");
        assertThat(History.withPasses("P0420", 1000).requiredPasses()).isEqualTo(1000);
    }

    @Test
    void aPassReadAfterAClearInTheSameScanProvesNothing() {
        History history =
                repaired("P0420").drive(noCodes().cycle(CYCLE_COMPLETE).cleared());
        assertThat(history.lastOutcome()).isEqualTo(RAN_UNPROVEN);
        assertThat(words(history.last().reason())).contains("read the codes before clearing them");
    }
}
