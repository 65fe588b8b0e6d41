package dev.stayfixed.drive.condition;

import dev.stayfixed.drive.DriveSummary;
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
public record DrivePlan(List<String> faults, List<DriveStep> steps, String apartBecause) {

    private static final String KEY_OFF = Phase.KEY_OFF.words()
            + ": Park, switch the engine off, and do not clear any code before the data are saved.";

    public DrivePlan {
        faults = List.copyOf(faults);
        steps = List.copyOf(steps);
    }

    static DrivePlan of(List<NextDrive.Need> needs, String apartBecause) {
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
    public List<String> lines() {
        Stream<String> apart =
                apartBecause.isEmpty() ? Stream.empty() : Stream.of("A drive of its own: " + apartBecause + ".");
        return Stream.of(
                        apart,
                        steps.stream().map(faults.size() == 1 ? DriveStep::plainWords : DriveStep::words),
                        Stream.of(KEY_OFF))
                .flatMap(lines -> lines)
                .toList();
    }

    /** What has to be minded on such a drive. */
    public List<String> cautions() {
        return Cautions.of(steps);
    }

    /** How often this car's past drives would have met it, as far as their summaries tell. */
    public Frequency frequency(List<DriveSummary> past) {
        return Frequency.ofSummaries(
                past, steps.stream().map(DriveStep::condition).toList());
    }
}
