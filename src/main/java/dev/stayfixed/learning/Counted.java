package dev.stayfixed.learning;

import dev.stayfixed.verification.StateName;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;

/**
 * What is counted of one repair of one fault. Times and distances are rounded up to few values, so that the sums stay few: tenths of
 * a day up to 20 days, then whole days; 10 km up to 2,000 km, then 100 km.
 *
 * @param words what was done, in words that are the same where only spaces and capitals differ
 * @param tenthsToProof of a day; empty where it is not proven
 * @param tenthsHeld of a day, to the failure or as long as it was watched
 * @param kmHeld likewise
 * @param cameBack the fault did, in this job or in another one
 */
record Counted(
        boolean first,
        String code,
        String words,
        boolean recurred,
        OptionalInt tenthsToProof,
        OptionalInt drivesToProof,
        boolean failed,
        int tenthsHeld,
        int kmHeld,
        boolean cameBack) {

    private static final int LONGEST_WORDS = 200;

    static Counted of(Attempt attempt, boolean cameBack) {
        return new Counted(
                attempt.position() == 0,
                attempt.code(),
                words(attempt.repair()),
                attempt.state() == StateName.RECURRED,
                attempt.provenAt().isPresent()
                        ? OptionalInt.of(tenths(attempt.days(attempt.provenAt().get())))
                        : OptionalInt.empty(),
                attempt.drivesToProof(),
                attempt.failedAt().isPresent(),
                tenths(attempt.daysFollowed()),
                km(attempt.kmToFailure().orElse(attempt.kmFollowed())),
                cameBack);
    }

    static String words(String repair) {
        String same = repair.strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
        return same.codePointCount(0, same.length()) <= LONGEST_WORDS
                ? same
                : same.substring(0, same.offsetByCodePoints(0, LONGEST_WORDS));
    }

    static int tenths(double days) {
        return up(days, 0.1, 1, 200, 10);
    }

    static int km(double km) {
        return up(km, 1, 10, 2_000, 100);
    }

    /** In units, rounded up to fine steps and beyond a limit to coarse ones. */
    private static int up(double value, double unit, int fine, int limit, int coarse) {
        int units = (int) Math.ceil(value / unit);
        int step = units <= limit ? fine : coarse;
        return (units + step - 1) / step * step;
    }

    Counted with(boolean back) {
        return new Counted(
                first, code, words, recurred, tenthsToProof, drivesToProof, failed, tenthsHeld, kmHeld, back);
    }

    private boolean isProven() {
        return tenthsToProof.isPresent();
    }

    List<Lesson> lessons() {
        int proven = isProven() ? 1 : 0;
        int back = isProven() && cameBack ? 1 : 0;
        int failure = failed ? 1 : 0;
        List<Lesson> lessons = new ArrayList<>();
        if (first) {
            boolean decided = isProven() || recurred;
            boolean held = isProven() && !cameBack;
            lessons.add(new Lesson(Lesson.Topic.FAULTS, "", 1, decided ? 1 : 0, decided && !held ? 1 : 0));
        }
        lessons.add(new Lesson(Lesson.Topic.CODE, code, 1, proven, back));
        lessons.add(new Lesson(Lesson.Topic.REPAIR, words, 1, proven, back));
        tenthsToProof.ifPresent(t -> lessons.add(number(Lesson.Topic.TENTHS_TO_PROOF, t, 0)));
        drivesToProof.ifPresent(d -> lessons.add(number(Lesson.Topic.DRIVES_TO_PROOF, d, 0)));
        // A repair that was never followed tells nothing.
        if (tenthsHeld > 0 || failed) {
            lessons.add(number(Lesson.Topic.TENTHS_HELD, tenthsHeld, failure));
        }
        if (kmHeld > 0 || failed) {
            lessons.add(number(Lesson.Topic.KM_HELD, kmHeld, failure));
        }
        return lessons;
    }

    private static Lesson number(Lesson.Topic topic, int number, int back) {
        return new Lesson(topic, String.valueOf(number), 1, 0, back);
    }
}
