package dev.stayfixed.intake;

import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.drive.condition.Condition;
import dev.stayfixed.drive.condition.NextDrive;
import dev.stayfixed.drive.condition.TypicalCondition;
import dev.stayfixed.drive.condition.TypicalConditions;
import dev.stayfixed.jobs.Job;
import dev.stayfixed.jobs.Jobs;
import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.platform.storage.Durably;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Service;

/** The drives that the open faults of a job still need, as few as can be, in plain words for a driver. */
@Service
public class NextDrives {

    /**
     * What to drive.
     *
     * @param plans in order; empty once every fault is decided, or where no conditions are known for those that are open
     * @param unplanned faults for which no conditions are known, each with what is needed instead
     */
    public record Outline(List<Plan> plans, List<String> unplanned) {}

    /**
     * One drive.
     *
     * @param faults that it serves
     * @param lines what to do, in order
     * @param sources where the figures are from
     * @param likelihood how often this car's past drives would have met it, in words
     */
    public record Plan(
            List<String> faults, List<String> lines, List<String> cautions, List<String> sources, String likelihood) {}

    private final Jobs jobs;
    private final Verdicts verdicts;
    private final Originals originals;
    private final Durably durably;

    NextDrives(Jobs jobs, Verdicts verdicts, Originals originals, Durably durably) {
        this.jobs = jobs;
        this.verdicts = verdicts;
        this.originals = originals;
        this.durably = durably;
    }

    public Outline of(UUID jobId) {
        return durably.read(() -> {
            Job job = jobs.get(jobId);
            List<Open> open = verdicts.ofJob(jobId).stream()
                    .filter(verdict -> verdict.verdict().next().isPresent())
                    .map(Open::of)
                    .toList();
            List<NextDrive.Need> needs = open.stream()
                    .filter(fault -> !fault.conditions().isEmpty())
                    .map(fault -> new NextDrive.Need(fault.code(), fault.conditions()))
                    .toList();
            return new Outline(plans(needs, open, pastDrives(job.vehicleId())), unplanned(open));
        });
    }

    private record Open(String code, MonitorGroup group, Optional<TypicalCondition> typical) {

        static Open of(FaultVerdict verdict) {
            MonitorGroup group = verdict.faultCase().fault().group();
            return new Open(
                    verdict.faultCase().fault().code().text(),
                    group,
                    TypicalConditions.of(group).stream().findFirst());
        }

        List<Condition> conditions() {
            return typical.map(t -> t.set().conditions()).orElse(List.of());
        }
    }

    private static List<Plan> plans(List<NextDrive.Need> needs, List<Open> open, List<DriveSummary> past) {
        return NextDrive.of(needs).plans().stream()
                .map(plan -> new Plan(
                        plan.faults(),
                        plan.lines(),
                        plan.cautions(),
                        open.stream()
                                .filter(fault -> plan.faults().contains(fault.code()))
                                .flatMap(fault -> fault.typical().stream())
                                .map(TypicalCondition::caution)
                                .distinct()
                                .toList(),
                        plan.frequency(past).words()))
                .toList();
    }

    private static List<String> unplanned(List<Open> open) {
        return open.stream()
                .filter(fault -> fault.typical().isEmpty())
                .map(fault ->
                        "%s: the enabling conditions of its %s monitor stand in the service information of the vehicle."
                                .formatted(fault.code(), fault.group().label()))
                .toList();
    }

    private List<DriveSummary> pastDrives(UUID vehicleId) {
        return originals.drivesOf(vehicleId).stream()
                .map(drive -> drive.record().summary())
                .toList();
    }
}
