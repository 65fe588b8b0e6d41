package dev.stayfixed.simulator;

import static dev.stayfixed.English.words;
import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.Count;
import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.drive.OperatingPoint;
import dev.stayfixed.obd.Ignition;
import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.obd.TroubleCode;
import dev.stayfixed.verification.EvidenceGrade;
import dev.stayfixed.verification.RepairAttempt;
import dev.stayfixed.verification.RepairedFault;
import dev.stayfixed.verification.RuleSet;
import dev.stayfixed.verification.Trips;
import dev.stayfixed.verification.Verdict;
import dev.stayfixed.verification.Verification;
import dev.stayfixed.verification.VerificationState;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/**
 * Seeded cars through the rule, held against the observer who knows every driving cycle (13 CCR 1968.2 (d)(2.2)): 1,000 a test where
 * CI=true, 80 elsewhere; {@code -Dstayfixed.cars=2000} asks for more.
 */
class VerdictsAgreeTest {

    /** The evaporative bit may be complete by a check for a larger leak. */
    private static final String VERY_SMALL_LEAK = "P0456";

    private static final int CARS = Count.of("stayfixed.cars", 80, 120);

    @Test
    @DisplayName("with the status byte of every code the verdict is the observer's, on every car")
    void withStatusBytes() {
        int hidden = 0;
        for (long seed = 0; seed < CARS; seed++) {
            CarHistory history = CarHistory.of(seed, Ask.EVERYTHING);
            if (history.isHidden()) {
                hidden++;
                continue;
            }
            assertThat(differing(seed, history, judged(history))).isEmpty();
        }
        assertThat(hidden).as("cars whose failures nobody can know of").isLessThan(CARS / 7);
    }

    @Test
    @DisplayName(
            "with PID $41, $03, $07 and the counters the verdict is the observer's wherever readiness bits can prove anything")
    void withCycleReadiness() {
        int compared = 0;
        List<String> differing = new ArrayList<>();
        for (long seed = 0; seed < CARS; seed++) {
            CarHistory history = CarHistory.of(seed, Ask.CODES_AND_READINESS);
            Verdict verdict = judged(history);
            if (isShownByReadiness(history, verdict)) {
                compared++;
                differing(seed, history, verdict).ifPresent(differing::add);
            }
        }
        assertThat(differing).isEmpty();
        assertThat(compared).isGreaterThan(CARS / 3);
    }

    /**
     * Whether PID $41, $03, $07 and the counters can tell all that the observer knows: not of a failure that left no trace, nor of a
     * continuous monitor, nor of a group that was slower than the code, nor of what only another scan would have told.
     */
    static boolean isShownByReadiness(CarHistory history, Verdict verdict) {
        PerfectObserver.Proof proof = history.proof(history.trips());
        boolean leftNoTrace = proof.onceProven() && !proof.proven();
        return !history.isHidden()
                && !leftNoTrace
                && !fault(history).group().isContinuous()
                && !VERY_SMALL_LEAK.equals(history.code())
                && !history.isSlowedByItsGroup()
                && !isLeftOpen(verdict);
    }

    /** Both verdicts in words, where they are not the same. */
    static Optional<String> differing(long seed, CarHistory history, Verdict verdict) {
        String judged = where(verdict.state());
        String observed = where(history.proof(history.trips()));
        return judged.equals(observed)
                        || countsWhatIsSure(verdict.state(), history)
                        || mayHavePassedBetween(verdict, history)
                ? Optional.empty()
                : Optional.of("car %d, %s: %s, observed %s".formatted(seed, history.code(), judged, observed));
    }

    /** Unrecorded trips that the records prove are counted as well; never more than there were. */
    private static boolean countsWhatIsSure(VerificationState state, CarHistory history) {
        PerfectObserver.Proof proof = history.proof(history.trips());
        int counted = state instanceof VerificationState.ConfirmedFixed
                ? history.trips()
                : state instanceof VerificationState.Passing passing ? passing.passes() : 0;
        return !proof.back()
                && !proof.failedOnce()
                && counted > 0
                && proof.cleanRun() <= counted
                && counted <= proof.wholeRun();
    }

    /**
     * Two failed trips with unrecorded drives between them, of a code that the control unit had confirmed before the repair already:
     * a passed trip in between would look the same.
     */
    private static boolean mayHavePassedBetween(Verdict verdict, CarHistory history) {
        CarHistory.RepairDone repair = history.repairs().get(history.repairs().size() - 1);
        return verdict.state() instanceof VerificationState.FailedOnce
                && history.proof(history.trips()).back()
                && history.drives().stream().anyMatch(drive -> !drive.recorded())
                && Scan.read(repair.scanAfter()).confirmed(TroubleCode.parse(history.code())) == Scan.Presence.PRESENT;
    }

    @Test
    @DisplayName("without them nothing is called fixed that the observer did not call fixed too")
    void withoutStatusBytes() {
        Set<Ask> asked = EnumSet.copyOf(Ask.EVERYTHING);
        asked.remove(Ask.STATUS);
        asked.remove(Ask.SUPPORTED_CODES);
        assertThat(fixedByBoth(asked)).isGreaterThan(CARS / 5);
    }

    @Test
    @DisplayName(
            "PID $01 turns complete once: a plain code reader proves a repair only where the lamp went out by itself")
    void withACodeReader() {
        assertThat(fixedByBoth(Ask.POCKET_READER)).isLessThanOrEqualTo(CARS / 20);
    }

    private static long fixedByBoth(Set<Ask> asked) {
        return LongStream.range(0, CARS)
                .filter(seed -> {
                    CarHistory history = CarHistory.of(seed, asked);
                    boolean fixed = verdict(history) instanceof VerificationState.ConfirmedFixed;
                    PerfectObserver.Proof proof = history.proof(history.trips());
                    assertThat(fixed && !proof.proven() && !proof.onceTrue())
                            .as("car %d, %s: called fixed, and the observer would not", seed, history.code())
                            .isFalse();
                    return fixed;
                })
                .count();
    }

    static String where(PerfectObserver.Proof proof) {
        if (proof.back()) {
            return "back";
        }
        if (proof.failedOnce()) {
            return "failed once";
        }
        return proof.proven() ? "fixed" : proof.cleanRun() + " clean";
    }

    static String where(VerificationState state) {
        if (state instanceof VerificationState.Recurred) {
            return "back";
        }
        if (state instanceof VerificationState.FailedOnce) {
            return "failed once";
        }
        if (state instanceof VerificationState.ConfirmedFixed) {
            return "fixed";
        }
        return (state instanceof VerificationState.Passing passing ? passing.passes() : 0) + " clean";
    }

    /** A code still pending, confirmed before, and no start right after that shows whether it failed again. */
    private static boolean isLeftOpen(Verdict verdict) {
        return verdict.judgements().stream()
                .anyMatch(judgement -> words(judgement.reason()).endsWith("scan again at the next start"));
    }

    static VerificationState verdict(CarHistory history) {
        return judged(history).state();
    }

    private static Verdict judged(CarHistory history) {
        List<DriveRecord> drives =
                history.delivered().stream().map(VerdictsAgreeTest::record).toList();
        List<RepairAttempt> repairs =
                history.repairs().stream().map(VerdictsAgreeTest::attempt).toList();
        return new Verification(RuleSet.STANDARD).of(fault(history), repairs, drives);
    }

    static RepairedFault fault(CarHistory history) {
        Ignition ignition = history.car().combustion() == Combustion.SPARK ? Ignition.SPARK : Ignition.COMPRESSION;
        TroubleCode code = TroubleCode.parse(history.code());
        Trips trips = history.trips() == 1 ? Trips.ONE : Trips.TWO;
        return new RepairedFault(
                code,
                ignition,
                MonitorGroup.of(code, ignition),
                trips,
                trips.count(),
                EvidenceGrade.ENABLING_CONDITIONS,
                List.of(),
                history.similar() ? history.frame().map(VerdictsAgreeTest::point) : Optional.empty());
    }

    private static RepairAttempt attempt(CarHistory.RepairDone repair) {
        return new RepairAttempt(
                repair.at().toString(),
                repair.at(),
                repair.cleared(),
                Optional.of(Scan.read(repair.scanBefore())),
                Optional.of(Scan.read(repair.scanAfter())));
    }

    private static DriveRecord record(CarHistory.Drive drive) {
        CycleTruth truth = drive.truth();
        List<OperatingPoint> points =
                truth.samples().stream().map(VerdictsAgreeTest::point).toList();
        return new DriveRecord(
                "drive " + truth.number(),
                truth.start(),
                Optional.of(truth.end()),
                new DriveSummary(values(truth.summary()), points, Optional.empty()),
                drive.toldCleared(),
                Stream.of(
                                new DriveRecord.TimedScan(DriveRecord.Moment.BEFORE, Scan.read(drive.scanBefore())),
                                new DriveRecord.TimedScan(DriveRecord.Moment.AFTER, Scan.read(drive.scanAfter())))
                        .toList());
    }

    private static Map<DriveQuantity, Double> values(Summary summary) {
        Map<DriveQuantity, Double> values = new EnumMap<>(DriveQuantity.class);
        values.put(DriveQuantity.START_COOLANT, (double) summary.startCoolant());
        values.put(DriveQuantity.PEAK_COOLANT, (double) summary.peakCoolant());
        values.put(DriveQuantity.RUN_TIME, (double) summary.runTime());
        values.put(DriveQuantity.FAST_TIME, (double) summary.fastTime());
        values.put(DriveQuantity.LONGEST_IDLE, (double) summary.longestIdle());
        values.put(DriveQuantity.AMBIENT, (double) summary.ambient());
        values.put(DriveQuantity.BAROMETER, (double) summary.barometer());
        values.put(DriveQuantity.FUEL_LEVEL, summary.fuelLevel());
        values.put(DriveQuantity.SOAK, summary.soak());
        values.put(DriveQuantity.DISTANCE, summary.distance());
        return values;
    }

    static OperatingPoint point(Sample sample) {
        return new OperatingPoint(sample.rpm(), sample.load(), sample.coolant());
    }
}
