package dev.stayfixed.learning;

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
public record Lessons(
        int faults,
        Share firstTime,
        OptionalDouble daysToProof,
        OptionalDouble drivesToProof,
        List<Group> byCode,
        List<Group> byRepair) {

    /** Fewer than so many are too few to compare. Common practice, no source. */
    public static final int FEW = 20;

    /**
     * A share with its 95 % interval by Clopper and Pearson.
     *
     * @param part of {@code whole}
     * @param lower 0 to 1, likewise upper
     */
    public record Share(int part, int whole, double lower, double upper) {
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
    public record Group(String name, int repairs, Share comebacks) {}

    /** How long repairs hold, by days or by distance. */
    public record Holding(Measure by, KaplanMeier curve) {
        public boolean isFew() {
            return curve.count() < FEW;
        }
    }

    /** By what it is measured how long a repair holds. */
    public enum Measure {
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
