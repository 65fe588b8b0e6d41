package dev.stayfixed.verification.bench;

import dev.stayfixed.reason.Kind;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Shape;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;

/**
 * What the measurements around one repair prove: that the supply and the ground were good, the old part was not, the new one is, and
 * the test leads can be trusted; and what the checks with the engine running do. Common practice, no source. It is no verdict: a part
 * that measures well may still not cure the fault.
 *
 * @param missing what was not measured, or not with an expected band; empty where nothing is missing
 * @param against what disagrees with the repair
 * @param reason the result in one sentence
 */
public record BenchProof(Result result, List<Reason> missing, List<Reason> against, Reason reason) {

    /** What the measurements come to. */
    public enum Result implements Kind {
        COMPLETE,
        /** What was checked is right after the repair; nothing shows that it was wrong before. */
        RIGHT_AFTER,
        INCOMPLETE,
        CONTRADICTING
    }

    public BenchProof {
        missing = List.copyOf(missing);
        against = List.copyOf(against);
    }

    /**
     * Weighs what was measured and checked.
     *
     * @param measurements all of one repair
     * @param runs of all checks with the engine running; they can stand alone
     */
    public static BenchProof of(List<BenchMeasurement> measurements, List<BenchRuns> runs) {
        List<Reason> against = new ArrayList<>(against(measurements));
        runs.stream()
                .filter(BenchRuns::isWrongAfter)
                .forEach(run -> run.foundAfter().ifPresent(found -> against.add(run.after(found))));
        boolean runsAlone = measurements.isEmpty() && !runs.isEmpty();
        List<Reason> missing = new ArrayList<>(runsAlone ? List.of() : missing(measurements));
        runs.stream()
                .filter(run -> !run.isRightAfter() && !run.isWrongAfter())
                .forEach(run ->
                        missing.add(Reason.of(BenchReason.RUN_AFTER, run.check().name())));
        if (!against.isEmpty()) {
            return new BenchProof(
                    Result.CONTRADICTING,
                    missing,
                    against,
                    Shape.EACH.of(against).asSentence());
        }
        if (measurements.isEmpty() && runs.isEmpty()) {
            return new BenchProof(Result.INCOMPLETE, missing, against, Reason.of(BenchReason.NOTHING_MEASURED));
        }
        if (!missing.isEmpty()) {
            Reason still = Reason.of(BenchReason.STILL_MISSING, Shape.LIST.of(missing));
            return new BenchProof(Result.INCOMPLETE, missing, against, still.asSentence());
        }
        if (runsAlone) {
            return runs.stream().anyMatch(BenchRuns::showsChange)
                    ? new BenchProof(Result.COMPLETE, missing, against, Reason.of(BenchReason.RUNS_CHANGED))
                    : new BenchProof(Result.RIGHT_AFTER, missing, against, Reason.of(BenchReason.RUNS_RIGHT));
        }
        Reason measured = complete(measurements);
        return new BenchProof(
                Result.COMPLETE,
                missing,
                against,
                runs.isEmpty() ? measured : Reason.of(BenchReason.AND_RUNNING, measured));
    }

    private static Reason complete(List<BenchMeasurement> measurements) {
        BenchMeasurement part = measurements.stream()
                .filter(m -> m.is(BenchCheck.PART) && shows(m, m.before(), false))
                .findFirst()
                .orElseThrow();
        return Reason.of(BenchReason.ALL_FIVE, part.before().map(part::against).orElseThrow());
    }

    private static List<Reason> against(List<BenchMeasurement> measurements) {
        List<Reason> against = new ArrayList<>();
        against.addAll(outside(measurements, BenchCheck.SUPPLY, BenchReason.SUPPLY));
        against.addAll(outside(measurements, BenchCheck.GROUND, BenchReason.GROUND));
        against.addAll(outside(measurements, BenchCheck.LEADS, BenchReason.LEADS_TOGETHER));
        for (BenchMeasurement m : measurements) {
            boolean afterCounts = m.is(BenchCheck.PART) || m.is(BenchCheck.OTHER);
            if (afterCounts && shows(m, m.after(), false)) {
                Reason whose = m.is(BenchCheck.PART)
                        ? Reason.of(BenchReason.NEW_PART)
                        : Reason.of(BenchReason.AFTER_REPAIR, Part.verbatim(m.quantity()));
                m.after().ifPresent(read -> against.add(Reason.of(BenchReason.READS, whose, m.against(read))));
            }
        }
        if (no(measurements, m -> m.is(BenchCheck.PART) && shows(m, m.before(), false))) {
            measurements.stream()
                    .filter(m -> m.is(BenchCheck.PART) && shows(m, m.before(), true))
                    .forEach(m -> m.before()
                            .ifPresent(
                                    read -> against.add(Reason.of(BenchReason.OLD_PART_WAS_INSIDE, m.against(read)))));
        }
        boolean unchecked = measurements.stream()
                .anyMatch(m -> m.leadsVerified().filter(verified -> !verified).isPresent());
        if (unchecked) {
            against.add(Reason.of(BenchReason.LEADS_UNCHECKED));
        }
        return against;
    }

    private static List<Reason> outside(List<BenchMeasurement> measurements, BenchCheck check, BenchReason what) {
        return measurements.stream()
                .filter(m -> m.is(check) && shows(m, m.last(), false))
                .flatMap(m -> m.last().map(m::against).stream())
                .map(reading -> Reason.of(BenchReason.READ, what, reading))
                .toList();
    }

    private static List<Reason> missing(List<BenchMeasurement> measurements) {
        List<Reason> missing = new ArrayList<>();
        ask(missing, measurements, BenchCheck.SUPPLY, BenchReason.SUPPLY, BenchMeasurement::last);
        ask(missing, measurements, BenchCheck.GROUND, BenchReason.GROUND, BenchMeasurement::last);
        ask(missing, measurements, BenchCheck.PART, BenchReason.OLD_PART, BenchMeasurement::before);
        ask(missing, measurements, BenchCheck.PART, BenchReason.NEW_PART, BenchMeasurement::after);
        boolean leads = measurements.stream()
                .anyMatch(m -> m.leadsVerified().orElse(false) || (m.is(BenchCheck.LEADS) && shows(m, m.last(), true)));
        if (!leads) {
            missing.add(Reason.of(BenchReason.CHECK_OF_LEADS));
        }
        return missing;
    }

    /** A reading without an expected band decides nothing. */
    private static void ask(
            List<Reason> missing,
            List<BenchMeasurement> measurements,
            BenchCheck check,
            BenchReason what,
            Function<BenchMeasurement, Optional<BenchReading>> reading) {
        Predicate<BenchMeasurement> read = m -> m.is(check) && reading.apply(m).isPresent();
        if (no(measurements, read)) {
            missing.add(Reason.of(what));
        } else if (no(measurements, read.and(BenchMeasurement::hasBand))) {
            missing.add(Reason.of(BenchReason.BAND_OF, what));
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
