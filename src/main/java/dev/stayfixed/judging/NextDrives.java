package dev.stayfixed.judging;

import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.drive.condition.Caution;
import dev.stayfixed.drive.condition.Condition;
import dev.stayfixed.drive.condition.DriveStep;
import dev.stayfixed.drive.condition.NextDrive;
import dev.stayfixed.drive.condition.TypicalConditions;
import dev.stayfixed.jobs.AgreedConditions;
import dev.stayfixed.jobs.FaultConditions;
import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.verification.RepairedFault;
import java.util.List;
import java.util.UUID;
import java.util.function.Function;

/** The drives that the open faults of a job still need, as few as can be. */
public final class NextDrives {

    /**
     * What to drive.
     *
     * @param plans in order; empty once every fault is decided, or where no conditions are known for those that are open
     * @param unplanned faults for which no conditions are known, each with what is needed instead
     */
    public record Outline(List<Plan> plans, List<Reason> unplanned) {}

    /**
     * One drive.
     *
     * @param faults that it serves
     * @param lines what to do, in order
     * @param conditions that these lines meet, in the same order
     * @param sources where the figures are from
     * @param likelihood how often this car's past drives would have met it
     */
    public record Plan(
            List<String> faults,
            List<Reason> lines,
            List<Condition> conditions,
            List<Caution> cautions,
            List<Reason> sources,
            Reason likelihood) {}

    private NextDrives() {}

    /**
     * @param judged the faults of a job
     * @param conditions of a fault, by its id
     * @param past how the vehicle was driven so far
     */
    static Outline outline(
            List<FaultVerdict> judged, Function<UUID, FaultConditions> conditions, List<DriveSummary> past) {
        List<Open> open = judged.stream()
                .filter(verdict -> verdict.verdict().next().isPresent())
                .map(verdict -> open(
                        verdict.faultCase().fault(),
                        conditions.apply(verdict.faultCase().faultId())))
                .toList();
        List<NextDrive.Need> needs = open.stream()
                .filter(fault -> !fault.conditions().isEmpty())
                .map(fault -> new NextDrive.Need(fault.code(), fault.conditions()))
                .toList();
        return new Outline(plans(needs, open, past), unplanned(open));
    }

    /** What the shop agreed for the fault comes before what is typical of its monitor. */
    private static Open open(RepairedFault fault, FaultConditions conditions) {
        String code = fault.code().text();
        MonitorGroup group = fault.group();
        return conditions
                .agreed()
                .map(agreed -> new Open(code, group, agreed.set().conditions(), source(code, agreed)))
                .or(() -> TypicalConditions.of(fault.code(), group)
                        .map(typical -> new Open(code, group, typical.set().conditions(), typical.caution())))
                .orElseGet(() -> new Open(code, group, List.of(), notPlanned(code)));
    }

    private static Reason source(String code, AgreedConditions agreed) {
        return agreed.source().isBlank()
                ? Reason.of(OutlineReason.FIGURES_OF, Part.verbatim(code), agreed.origin())
                : Reason.of(
                        OutlineReason.FIGURES_FROM,
                        Part.verbatim(code),
                        agreed.origin(),
                        Part.verbatim(agreed.source()));
    }

    private static Reason notPlanned(String code) {
        return Reason.of(OutlineReason.NOT_PLANNED, Part.verbatim(code));
    }

    /** A fault that is not decided yet, with what its monitor needs and where that stands. */
    private record Open(String code, MonitorGroup group, List<Condition> conditions, Reason source) {}

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
                        plan.frequency(past).said()))
                .toList();
    }

    private static List<Reason> unplanned(List<Open> open) {
        return open.stream()
                .filter(fault -> fault.conditions().isEmpty())
                .map(Open::source)
                .toList();
    }
}
