package dev.stayfixed.verification.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * What the measurements around one repair prove: that the supply and the ground were good, the old part was not, the new one is, and
 * the test leads can be trusted. Common practice, no source. It is no verdict: a part that measures well may still not cure the fault.
 *
 * @param missing what was not measured, or not with an expected band; empty where nothing is missing
 * @param against what disagrees with the repair, each in words
 * @param reason the result in one sentence
 */
public record BenchProof(Result result, List<String> missing, List<String> against, String reason) {

    /** What the measurements come to. */
    public enum Result {
        COMPLETE("complete"),
        INCOMPLETE("incomplete"),
        CONTRADICTING("contradicting");

        private final String words;

        Result(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    public BenchProof {
        missing = List.copyOf(missing);
        against = List.copyOf(against);
    }

    /**
     * Weighs what was measured.
     *
     * @param measurements all of one repair
     */
    public static BenchProof of(List<BenchMeasurement> measurements) {
        List<String> against = against(measurements);
        List<String> missing = missing(measurements);
        if (!against.isEmpty()) {
            return new BenchProof(Result.CONTRADICTING, missing, against, sentence(String.join("; ", against)));
        }
        if (measurements.isEmpty()) {
            return new BenchProof(Result.INCOMPLETE, missing, against, "Nothing was measured at the bench.");
        }
        if (!missing.isEmpty()) {
            return new BenchProof(
                    Result.INCOMPLETE, missing, against, sentence("still missing: " + String.join(", ", missing)));
        }
        return new BenchProof(Result.COMPLETE, missing, against, complete(measurements));
    }

    private static String complete(List<BenchMeasurement> measurements) {
        BenchMeasurement part = measurements.stream()
                .filter(m -> m.is(BenchCheck.PART) && shows(m, m.before(), false))
                .findFirst()
                .orElseThrow();
        return "Supply and ground were inside their bands, the old part was not (%s), the new part is, and the test leads were checked."
                .formatted(part.before().map(part::describe).orElseThrow());
    }

    private static String sentence(String words) {
        return words.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + words.substring(1) + ".";
    }

    private static List<String> against(List<BenchMeasurement> measurements) {
        List<String> against = new ArrayList<>();
        outside(measurements, BenchCheck.SUPPLY, "the supply").forEach(against::add);
        outside(measurements, BenchCheck.GROUND, "the ground").forEach(against::add);
        outside(measurements, BenchCheck.LEADS, "the test leads, held together,")
                .forEach(against::add);
        for (BenchMeasurement m : measurements) {
            boolean afterCounts = m.is(BenchCheck.PART) || m.is(BenchCheck.OTHER);
            String whose = m.is(BenchCheck.PART) ? "the new part" : "after the repair " + m.quantity();
            if (afterCounts && shows(m, m.after(), false)) {
                against.add(whose + " reads " + m.after().map(m::describe).orElse(""));
            }
        }
        if (no(measurements, m -> m.is(BenchCheck.PART) && shows(m, m.before(), false))) {
            measurements.stream()
                    .filter(m -> m.is(BenchCheck.PART) && shows(m, m.before(), true))
                    .forEach(m -> against.add("the old part read "
                            + m.before().map(m::describe).orElse("") + ", so it was not out of range"));
        }
        boolean unchecked = measurements.stream()
                .anyMatch(m -> m.leadsVerified().filter(verified -> !verified).isPresent());
        if (unchecked) {
            against.add("the test leads were not checked");
        }
        return against;
    }

    private static List<String> outside(List<BenchMeasurement> measurements, BenchCheck check, String what) {
        return measurements.stream()
                .filter(m -> m.is(check) && shows(m, m.last(), false))
                .map(m -> what + " read " + m.last().map(m::describe).orElse(""))
                .toList();
    }

    private static List<String> missing(List<BenchMeasurement> measurements) {
        List<String> missing = new ArrayList<>();
        ask(missing, measurements, BenchCheck.SUPPLY, "the supply", BenchMeasurement::last);
        ask(missing, measurements, BenchCheck.GROUND, "the ground", BenchMeasurement::last);
        ask(missing, measurements, BenchCheck.PART, "the old part", BenchMeasurement::before);
        ask(missing, measurements, BenchCheck.PART, "the new part", BenchMeasurement::after);
        boolean leads = measurements.stream()
                .anyMatch(m -> m.leadsVerified().orElse(false) || (m.is(BenchCheck.LEADS) && shows(m, m.last(), true)));
        if (!leads) {
            missing.add("the check of the test leads");
        }
        return missing;
    }

    /** A reading without an expected band decides nothing. */
    private static void ask(
            List<String> missing,
            List<BenchMeasurement> measurements,
            BenchCheck check,
            String what,
            java.util.function.Function<BenchMeasurement, Optional<BenchReading>> reading) {
        Predicate<BenchMeasurement> read = m -> m.is(check) && reading.apply(m).isPresent();
        if (no(measurements, read)) {
            missing.add(what);
        } else if (no(measurements, read.and(BenchMeasurement::hasBand))) {
            missing.add("the expected band of " + what);
        }
    }

    private static boolean no(List<BenchMeasurement> measurements, Predicate<BenchMeasurement> such) {
        return measurements.stream().noneMatch(such);
    }

    /** There is a reading and a band, and the reading lies inside it, or outside. */
    private static boolean shows(BenchMeasurement m, Optional<BenchReading> reading, boolean inside) {
        return m.hasBand() && reading.filter(r -> m.isInside(r) == inside).isPresent();
    }
}
