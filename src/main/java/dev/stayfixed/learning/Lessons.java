package dev.stayfixed.learning;

import dev.stayfixed.reason.Kind;
import dev.stayfixed.verification.confidence.Intermittence;
import dev.stayfixed.verification.survival.KaplanMeier;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What a shop can learn from its repairs so far.
 *
 * @param faults that were repaired
 * @param firstTime how many of the decided ones were proven by the first repair and have not come back within the shop's window
 * @param daysToProof median, from the repair
 * @param drivesToProof median, all drives that were judged
 */
public record Lessons(int faults, Share firstTime, OptionalDouble daysToProof, OptionalDouble drivesToProof) {

    /** So many groups that are not shown are counted exactly; beyond, a person only needs to know that there are more. */
    public static final int COUNTED = 1_000;

    /** Rows of a list where not all are asked for. */
    public static final int LONGEST_LIST = 50;

    private static final double CONFIDENCE = 0.95;

    /** Fewer than so many are too few to compare. Common practice, no source. */
    public static final int FEW = 20;

    /**
     * A share with its 95 % interval by Clopper and Pearson.
     *
     * @param part of {@code whole}
     * @param lower 0 to 1, likewise upper
     */
    public record Share(int part, int whole, double lower, double upper) {
        static Share of(int part, int whole) {
            Intermittence.Rate rate = Intermittence.Rate.of(part, whole, CONFIDENCE);
            return new Share(part, whole, rate.low(), rate.high());
        }

        public boolean isFew() {
            return whole < FEW;
        }
    }

    /**
     * Repairs that have something in common.
     *
     * @param name the code, or what was done
     * @param comebacks how many of the repairs that were proven came back within the shop's window
     */
    public record Group(String name, int repairs, Share comebacks) {

        static Group of(Lesson lesson) {
            return new Group(lesson.name(), lesson.repairs(), Share.of(lesson.back(), lesson.proven()));
        }
    }

    /**
     * The groups that came back most often.
     *
     * @param left how many more there are; more than {@link #COUNTED} stands for any more
     */
    public record Leading(List<Group> groups, int left) {}

    /** How long repairs hold, by days or by distance. */
    public record Holding(Measure by, KaplanMeier curve) {
        public boolean isFew() {
            return curve.count() < FEW;
        }
    }

    /** By what it is measured how long a repair holds. */
    public enum Measure implements Kind {
        DAYS("days"),
        DISTANCE("km"),
        MILES("mi");

        private final String unit;

        Measure(String unit) {
            this.unit = unit;
        }

        public String unit() {
            return unit;
        }
    }
}
