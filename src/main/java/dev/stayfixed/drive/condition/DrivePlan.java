package dev.stayfixed.drive.condition;

import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.reason.Reason;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * One drive, step by step.
 *
 * @param apartBecause why it is not one with an earlier plan; empty for the first
 */
public record DrivePlan(List<String> faults, List<DriveStep> steps, Optional<Reason> apartBecause) {

    private static final Reason KEY_OFF = Reason.of(PlanReason.KEY_OFF_STEP, Phase.KEY_OFF);

    public DrivePlan {
        faults = List.copyOf(faults);
        steps = List.copyOf(steps);
    }

    static DrivePlan of(List<NextDrive.Need> needs, Optional<Reason> apartBecause) {
        List<DriveStep> steps = new ArrayList<>();
        for (NextDrive.Need need : needs) {
            need.conditions().forEach(condition -> add(new DriveStep(condition, List.of(need.fault())), steps));
        }
        steps.sort(Comparator.comparing(DriveStep::phase));
        return new DrivePlan(needs.stream().map(NextDrive.Need::fault).toList(), steps, apartBecause);
    }

    private static void add(DriveStep step, List<DriveStep> steps) {
        for (int i = 0; i < steps.size(); i++) {
            Optional<Condition> merged = Merge.of(steps.get(i).condition(), step.condition());
            if (merged.isPresent()) {
                List<String> faults = Stream.concat(steps.get(i).faults().stream(), step.faults().stream())
                        .distinct()
                        .toList();
                steps.set(i, new DriveStep(merged.get(), faults));
                return;
            }
        }
        steps.add(step);
    }

    /** The plan for a driver, line by line, without the cautions. */
    public List<Reason> lines() {
        return Stream.of(
                        apartBecause.stream().map(why -> Reason.of(PlanReason.APART, why)),
                        steps.stream().map(faults.size() == 1 ? DriveStep::plain : DriveStep::said),
                        Stream.of(KEY_OFF))
                .flatMap(lines -> lines)
                .toList();
    }

    /** What has to be minded on such a drive. */
    public List<Caution> cautions() {
        return Caution.of(steps);
    }

    /** How often this car's past drives would have met it, as far as their summaries tell. */
    public Frequency frequency(List<DriveSummary> past) {
        return Frequency.ofSummaries(
                past, steps.stream().map(DriveStep::condition).toList());
    }
}
