package dev.stayfixed.verification;

import static dev.stayfixed.English.words;
import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.verification.Verdict.Step;
import dev.stayfixed.verification.VerificationState.ConfirmedFixed;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What holds for every history, on seeded random ones; a failing run names its seed. */
class GeneratedHistoriesTest {

    private static final List<String> CODES = List.of("P0420", "P0442", "P0302", "P0117", "P0135");
    private static final List<String> CYCLES = List.of("00 07 E5 00", "00 07 E5 E5", "00 00 00 00", "00 05 E0 00");
    private static final List<String> READINESS =
            List.of("00 07 E5 00", "00 07 E5 E5", "00 07 E5 04", "81 07 E5 00", "80 07 E5 00");
    private static final int[] STATUSES = {0x00, 0x50, 0x40, 0x27, 0x26, 0x24, 0x64, 0x2F, 0xAF, 0xA8, 0x20, 0x60, 0x42
    };

    static LongStream seeds() {
        return LongStream.range(0, Integer.getInteger("stayfixed.generated", 400));
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void orderOfArrivalAndRepetitionChangeNothing(long seed) {
        History history = random(seed);
        List<DriveRecord> drives = new ArrayList<>(history.driveRecords());
        drives.addAll(history.driveRecords());
        Collections.shuffle(drives, new Random(seed));
        List<RepairAttempt> repairs = new ArrayList<>(history.repairs());
        Collections.shuffle(repairs, new Random(seed));
        assertThat(new Verification(RuleSet.STANDARD).of(history.fault(), repairs, drives))
                .as("seed %d", seed)
                .isEqualTo(history.verdict());
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void onlyScoredStepsMoveTheCount(long seed) {
        for (Verdict.Attempt attempt : random(seed).verdict().attempts()) {
            VerificationState before = new VerificationState.WaitingForFirstTrip();
            for (Step step : attempt.steps()) {
                boolean moves = !step.after().equals(before);
                if (step.kind() == Step.Kind.GAP) {
                    assertThat(moves).as("seed %d: %s", seed, step).isFalse();
                } else if (step.judged().isPresent() && moves) {
                    assertThat(step.judged().get().outcome())
                            .as("seed %d", seed)
                            .isIn(Outcome.PASSED, Outcome.FAILED, Outcome.FAILED_CONFIRMED);
                }
                before = step.after();
            }
            assertThat(attempt.state()).as("seed %d", seed).isEqualTo(before);
        }
    }

    /** By the trips that were judged, or by what a later reading says of those before it: that is a step of its own. */
    @ParameterizedTest
    @MethodSource("seeds")
    void confirmedFixedNeverWithoutThePassesInARow(long seed) {
        History history = random(seed);
        for (Verdict.Attempt attempt : history.verdict().attempts()) {
            int inARow = 0;
            boolean fixed = false;
            for (int at = 0; at < attempt.steps().size(); at++) {
                Step step = attempt.steps().get(at);
                inARow = passesInARow(inARow, step);
                boolean more = at + 1 < attempt.steps().size()
                        && attempt.steps().get(at + 1).driveId().equals(step.driveId());
                boolean remarked = step.kind() == Step.Kind.REMARK || fixed;
                if (step.after() instanceof ConfirmedFixed && !more && !remarked) {
                    assertThat(inARow)
                            .as("seed %d", seed)
                            .isGreaterThanOrEqualTo(history.fault().requiredPasses());
                }
                fixed = step.after() instanceof ConfirmedFixed;
            }
        }
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void everyJudgementNamesItsReasonAndEvidence(long seed) {
        random(seed).verdict().attempts().stream()
                .flatMap(attempt -> attempt.judgements().stream())
                .forEach(judgement -> {
                    assertThat(words(judgement.reason())).as("seed %d", seed).isNotBlank();
                    assertThat(judgement.evidence()).as("seed %d", seed).isNotEmpty();
                    assertThat(words(judgement.strongest().says()))
                            .as("seed %d", seed)
                            .isNotBlank();
                });
    }

    private static int passesInARow(int before, Step step) {
        return switch (step.kind()) {
            case JUDGED ->
                switch (step.judged().orElseThrow().outcome()) {
                    case PASSED -> before + 1;
                    case FAILED, FAILED_CONFIRMED -> 0;
                    case DID_NOT_RUN, RAN_UNPROVEN, CARRIED_OVER, CONTRADICTORY -> before;
                };
            case UNSEEN_PASS -> before + 1;
            case GAP, REMARK -> before;
            case RESTARTED, UNSEEN_FAILURE -> 0;
        };
    }

    private static History random(long seed) {
        Random random = new Random(seed * 7919 + 17);
        String code = pick(random, CODES);
        History history = random.nextBoolean()
                ? History.of(History.withPasses(code, 2 + random.nextInt(3)))
                : History.of(History.oneTrip(code));
        int events = 1 + random.nextInt(14);
        int odometer = 100_000;
        for (int i = 0; i < events; i++) {
            if ((i == 0 && random.nextInt(5) > 0) || random.nextInt(8) == 0) {
                history.repair(random.nextBoolean(), maybe(random, code, odometer), maybe(random, code, odometer));
            } else {
                history.drive(DriveSummary.UNKNOWN, maybe(random, code, odometer), maybe(random, code, odometer));
            }
            odometer += random.nextInt(600) - (random.nextInt(12) == 0 ? 400 : 0);
        }
        return history;
    }

    private static @org.jspecify.annotations.Nullable ScanText maybe(Random random, String code, int odometer) {
        if (random.nextInt(3) == 0) {
            return null;
        }
        ScanText scan = ScanText.scan().odometer(odometer);
        if (random.nextInt(3) > 0) {
            scan = random.nextInt(4) == 0 ? scan.pending(code) : scan.pending();
        }
        if (random.nextInt(3) > 0) {
            scan = random.nextInt(6) == 0 ? scan.confirmed(code) : scan.confirmed();
        }
        if (random.nextInt(2) > 0) {
            scan = scan.cycle(pick(random, CYCLES));
        }
        if (random.nextInt(3) == 0) {
            scan = scan.readiness(pick(random, READINESS));
        }
        if (random.nextInt(3) == 0) {
            scan = scan.status(code, STATUSES[random.nextInt(STATUSES.length)]);
        }
        if (random.nextInt(3) == 0) {
            scan = scan.kilometresSinceClear(random.nextInt(500)).warmUpsSinceClear(random.nextInt(50));
        }
        return random.nextInt(12) == 0 ? scan.cleared() : scan;
    }

    private static String pick(Random random, List<String> from) {
        return from.get(random.nextInt(from.size()));
    }
}
