package dev.stayfixed.drive.condition;

import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.drive.Finding;
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
public record Frequency(int met, int judged, int unknown, List<String> untold) {

    private static final int FEW = 5;
    private static final double Z = 1.959964;

    public Frequency {
        untold = List.copyOf(untold);
    }

    /** Counts drives of which only the summary is kept: an upper bound, because a summary has no sequence. */
    public static Frequency ofSummaries(List<DriveSummary> drives, List<Condition> conditions) {
        List<String> untold = conditions.stream()
                .filter(condition -> condition.inSummary(DriveSummary.UNKNOWN).isEmpty())
                .map(Condition::words)
                .toList();
        if (untold.size() == conditions.size()) {
            return new Frequency(0, 0, drives.size(), untold);
        }
        return of(drives.stream().map(drive -> all(conditions, drive)).toList(), untold);
    }

    private static Frequency of(List<Finding> drives, List<String> untold) {
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
                .orElse(Finding.yes("nothing speaks against it"));
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

    /** In plain words, and no surer than the numbers are. */
    public String words() {
        if (judged == 0) {
            return "No recorded drive of this car tells how often such a drive happens." + left();
        }
        String count = met + " of this car's last " + judged + " recorded drives would have met it.";
        if (judged < FEW) {
            return count + " That is too few to say how often such a drive happens." + left();
        }
        String range = met == 0
                ? " With so few drives it may still be up to " + percent(highest()) + " of them."
                : " With so few drives, anything from %s to %s of its drives is possible."
                        .formatted(percent(lowest()), percent(highest()));
        return count + (judged < 100 ? range : "") + left();
    }

    private static String percent(double share) {
        return Math.round(share * 100) + " %";
    }

    private String left() {
        String more = unknown == 0 ? "" : " " + unknown + " more could not be judged.";
        return untold.isEmpty()
                ? more
                : more + " Not counted, because a summary cannot tell: " + String.join("; ", untold) + ".";
    }
}
