package dev.stayfixed.intake;

import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.drive.condition.Condition;
import dev.stayfixed.drive.condition.DriveStep;
import dev.stayfixed.drive.condition.NextDrive;
import dev.stayfixed.drive.condition.TypicalConditions;
import dev.stayfixed.jobs.AgreedConditions;
import dev.stayfixed.jobs.ConditionsOfFaults;
import dev.stayfixed.jobs.Job;
import dev.stayfixed.jobs.Jobs;
import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.platform.storage.Durably;
import dev.stayfixed.verification.RepairedFault;
import java.util.List;
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
     * @param conditions that these lines meet, in the same order
     * @param sources where the figures are from
     * @param likelihood how often this car's past drives would have met it, in words
     */
    public record Plan(
            List<String> faults,
            List<String> lines,
            List<Condition> conditions,
            List<String> cautions,
            List<String> sources,
            String likelihood) {}

    private final Jobs jobs;
    private final Verdicts verdicts;
    private final ConditionsOfFaults conditions;
    private final Originals originals;
    private final Durably durably;

    NextDrives(Jobs jobs, Verdicts verdicts, ConditionsOfFaults conditions, Originals originals, Durably durably) {
        this.jobs = jobs;
        this.verdicts = verdicts;
        this.conditions = conditions;
        this.originals = originals;
        this.durably = durably;
    }

    public Outline of(UUID jobId) {
        return durably.read(() -> {
            Job job = jobs.get(jobId);
            List<Open> open = verdicts.ofJob(jobId).stream()
                    .filter(verdict -> verdict.verdict().next().isPresent())
                    .map(verdict -> open(jobId, verdict))
                    .toList();
            List<NextDrive.Need> needs = open.stream()
                    .filter(fault -> !fault.conditions().isEmpty())
                    .map(fault -> new NextDrive.Need(fault.code(), fault.conditions()))
                    .toList();
            return new Outline(plans(needs, open, pastDrives(job.vehicleId())), unplanned(open));
        });
    }

    /** What the shop agreed for the fault comes before what is typical of its monitor. */
    private Open open(UUID jobId, FaultVerdict verdict) {
        RepairedFault fault = verdict.faultCase().fault();
        String code = fault.code().text();
        MonitorGroup group = fault.group();
        return conditions
                .get(jobId, verdict.faultCase().faultId())
                .agreed()
                .map(agreed -> new Open(code, group, agreed.set().conditions(), source(code, agreed)))
                .or(() -> TypicalConditions.of(fault.code(), group)
                        .map(typical -> new Open(code, group, typical.set().conditions(), typical.caution())))
                .orElseGet(() -> new Open(code, group, List.of(), ""));
    }

    private static String source(String code, AgreedConditions agreed) {
        return "For " + code + ": " + agreed.origin().words()
                + (agreed.source().isBlank() ? "." : " (" + agreed.source() + ").");
    }

    /** A fault that is not decided yet, with what its monitor needs and where that stands. */
    private record Open(String code, MonitorGroup group, List<Condition> conditions, String source) {}

    private static List<Plan> plans(List<NextDrive.Need> needs, List<Open> open, List<DriveSummary> past) {
        return NextDrive.of(needs).plans().stream()
                .map(plan -> new Plan(
                        plan.faults(),
                        plan.lines(),
                        plan.steps().stream().map(DriveStep::condition).toList(),
                        plan.cautions(),
                        open.stream()
                                .filter(fault -> plan.faults().contains(fault.code()))
                                .map(Open::source)
                                .distinct()
                                .toList(),
                        plan.frequency(past).words()))
                .toList();
    }

    private static List<String> unplanned(List<Open> open) {
        return open.stream()
                .filter(fault -> fault.conditions().isEmpty())
                .map(fault -> "%s: what its test needs stands in the service information of the vehicle."
                        .formatted(fault.code()))
                .toList();
    }

    private List<DriveSummary> pastDrives(UUID vehicleId) {
        return originals.drivesOf(vehicleId).stream()
                .map(drive -> drive.record().summary())
                .toList();
    }
}
