package dev.stayfixed.histories;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.histories.RuleOnTrial.Tried;
import dev.stayfixed.verification.FaultFold;
import dev.stayfixed.verification.RuleSet;
import dev.stayfixed.verification.Verification;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** {@code -Dstayfixed.goes-on=N} for more records, {@code -Dstayfixed.histories.from=SEED} to begin at a seed. */
class FoldGoesOnTest {

    private static final int BATCH = 200;
    private static final int RECORDS =
            Integer.getInteger("stayfixed.goes-on", "true".equals(System.getenv("CI")) ? 4_000 : 600);
    private static final long FROM = Long.getLong("stayfixed.histories.from", 0);

    private static final Verification RULE = new Verification(RuleSet.STANDARD);

    static LongStream batches() {
        return LongStream.range(0, (RECORDS + BATCH - 1) / BATCH).map(batch -> FROM + batch * BATCH);
    }

    @ParameterizedTest(name = "records from seed {0}")
    @MethodSource("batches")
    @DisplayName(
            "however the drives come in, late or twice, going on from a checkpoint says what folding everything says")
    void goesOnAsIfFoldedAtOnce(long first) {
        LongStream.range(first, first + BATCH).parallel().forEach(FoldGoesOnTest::goesOn);
    }

    private static void goesOn(long seed) {
        Random random = new Random(seed);
        Tried tried = tried(UntidyRecords.of(seed).record(), random);
        List<DriveRecord> coming = coming(tried.drives(), random);
        int known = random.nextInt(coming.size() + 1);
        List<DriveRecord> all = new ArrayList<>(coming.subList(0, known));
        FaultFold fold = RULE.fold(tried.fault(), tried.repairs(), all);
        for (DriveRecord drive : coming.subList(known, coming.size())) {
            all.add(drive);
            fold = fold.and(drive);
            assertThat(fold.verdict())
                    .as("seed %d, %d drives of %d", seed, all.size(), coming.size())
                    .isEqualTo(RULE.of(tried.fault(), tried.repairs(), all));
        }
    }

    /** In one record of two, two readings of three lack the ignition counter, so that a later one speaks of several drives. */
    private static Tried tried(CarRecord record, Random random) {
        boolean seldom = random.nextBoolean();
        return RuleOnTrial.tried(
                record,
                reading -> ReadingText.of(
                        record.fault(), seldom && random.nextInt(3) > 0 ? withoutCounter(reading) : reading));
    }

    private static Reading withoutCounter(Reading reading) {
        return new Reading(
                reading.headers(),
                reading.answers().stream()
                        .filter(answer -> !(answer instanceof Answer.InUse))
                        .toList());
    }

    /** One record of three in its order, one with late drives, one in any order; some drives come twice. */
    private static List<DriveRecord> coming(List<DriveRecord> drives, Random random) {
        List<DriveRecord> coming = new ArrayList<>(drives);
        switch (random.nextInt(3)) {
            case 0 -> Collections.shuffle(coming, random);
            case 1 -> {
                for (int late = 0; late < 3 && !coming.isEmpty(); late++) {
                    coming.add(coming.remove(random.nextInt(coming.size())));
                }
            }
            default -> {}
        }
        if (!coming.isEmpty() && random.nextInt(4) == 0) {
            coming.add(random.nextInt(coming.size() + 1), coming.get(random.nextInt(coming.size())));
        }
        return coming;
    }
}
