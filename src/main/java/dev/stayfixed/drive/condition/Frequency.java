package dev.stayfixed.drive.condition;

import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.drive.Finding;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Quantity;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Shape;
import dev.stayfixed.reason.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * How often this car's recorded drives would have met a plan.
 *
 * @param met of those that could be judged
 * @param judged drives that could be judged
 * @param unknown drives that lacked what the plan asks for
 * @param untold conditions that no summary of a drive can tell, and that are left out of the count
 */
public record Frequency(int met, int judged, int unknown, List<Reason> untold) {

    private static final int FEW = 5;
    private static final int MANY = 100;
    private static final double Z = 1.959964;

    public Frequency {
        untold = List.copyOf(untold);
    }

    /** Counts drives of which only the summary is kept: an upper bound, because a summary has no sequence. */
    public static Frequency ofSummaries(List<DriveSummary> drives, List<Condition> conditions) {
        List<Reason> untold = conditions.stream()
                .filter(condition -> condition.inSummary(DriveSummary.UNKNOWN).isEmpty())
                .map(Condition::said)
                .toList();
        if (untold.size() == conditions.size()) {
            return new Frequency(0, 0, drives.size(), untold);
        }
        return of(drives.stream().map(drive -> all(conditions, drive)).toList(), untold);
    }

    private static Frequency of(List<Finding> drives, List<Reason> untold) {
        int met = (int) drives.stream().filter(Finding::isYes).count();
        int missed = (int) drives.stream().filter(Finding::isNo).count();
        return new Frequency(met, met + missed, drives.size() - met - missed, untold);
    }

    private static Finding all(List<Condition> conditions, DriveSummary drive) {
        List<Finding> findings = conditions.stream()
                .map(condition -> condition.inSummary(drive))
                .flatMap(Optional::stream)
                .toList();
        return findings.stream()
                .filter(Finding::isNo)
                .findFirst()
                .or(() -> findings.stream().filter(f -> !f.isYes()).findFirst())
                .orElse(Finding.yes(Reason.of(ConditionReason.NOTHING_AGAINST)));
    }

    /** The least share that these counts leave likely: Wilson score interval, 95 %. */
    double lowest() {
        return Math.max(0, centre() - margin());
    }

    /** The greatest share that these counts leave likely: Wilson score interval, 95 %. */
    double highest() {
        return Math.min(1, centre() + margin());
    }

    private double centre() {
        return (met + Z * Z / 2) / (judged + Z * Z);
    }

    private double margin() {
        double share = (double) met / judged;
        return Z / (judged + Z * Z) * Math.sqrt(judged * share * (1 - share) + Z * Z / 4);
    }

    /** No surer than the numbers are. */
    public Reason said() {
        List<Reason> said = new ArrayList<>();
        if (judged == 0) {
            said.add(Reason.of(PlanReason.NO_DRIVE_TELLS));
        } else {
            said.add(Reason.of(PlanReason.WOULD_HAVE_MET, Part.count(met), Part.count(judged)));
            if (judged < FEW) {
                said.add(Reason.of(PlanReason.TOO_FEW));
            } else if (judged < MANY) {
                said.add(
                        met == 0
                                ? Reason.of(PlanReason.UP_TO, percent(highest()))
                                : Reason.of(PlanReason.ANYTHING_FROM, percent(lowest()), percent(highest())));
            }
        }
        if (unknown > 0) {
            said.add(Reason.of(PlanReason.MORE_UNKNOWN, Part.count(unknown)));
        }
        if (!untold.isEmpty()) {
            said.add(Reason.of(PlanReason.UNTOLD, Shape.EACH.of(untold)));
        }
        return Shape.SENTENCES.of(said);
    }

    private static Quantity percent(double share) {
        return Quantity.whole(share * 100, Unit.PERCENT);
    }
}
