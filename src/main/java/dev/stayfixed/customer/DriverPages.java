package dev.stayfixed.customer;

import dev.stayfixed.archive.Original;
import dev.stayfixed.archive.UploadedLog;
import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.drive.EnablingCondition;
import dev.stayfixed.intake.Intake;
import dev.stayfixed.intake.Logs;
import dev.stayfixed.intake.Received;
import dev.stayfixed.jobs.Jobs;
import dev.stayfixed.jobs.ShopSettings;
import dev.stayfixed.jobs.Shops;
import dev.stayfixed.jobs.Standing;
import dev.stayfixed.judging.CaseFile;
import dev.stayfixed.judging.CaseFiles;
import dev.stayfixed.judging.FaultVerdict;
import dev.stayfixed.judging.NextDrives;
import dev.stayfixed.platform.storage.Durably;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Quantity;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Unit;
import dev.stayfixed.verification.Outcome;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.stereotype.Service;

/** The page of one job as its driver sees it, and the drives that come in through it. */
@Service
public class DriverPages {

    private final Jobs jobs;
    private final CaseFiles files;
    private final Intake intake;
    private final Logs logs;
    private final Shops shops;
    private final StoredDriverLinks links;
    private final Durably durably;
    private final Clock clock;

    DriverPages(
            Jobs jobs,
            CaseFiles files,
            Intake intake,
            Logs logs,
            Shops shops,
            StoredDriverLinks links,
            Durably durably,
            Clock clock) {
        this.jobs = jobs;
        this.files = files;
        this.intake = intake;
        this.logs = logs;
        this.shops = shops;
        this.links = links;
        this.durably = durably;
        this.clock = clock;
    }

    public DriverView of(UUID jobId) {
        return durably.read(() -> {
            CaseFile file = files.ofJob(jobId);
            List<FaultVerdict> judged = file.verdicts(jobId);
            List<FaultVerdict> open = judged.stream()
                    .filter(verdict -> stage(verdict) == DriverView.Stage.COUNTING)
                    .toList();
            ShopSettings.Units units = shops.settings().units();
            return new DriverView(
                    judged.stream().map(DriverPages::check).toList(),
                    plans(open, file.nextDrives(jobId), units),
                    open.stream()
                            .flatMap(verdict -> verdict.faultCase().fault().enablingConditions().stream())
                            .map(condition -> units.words(asked(condition)))
                            .distinct()
                            .toList(),
                    RoadCautions.all(),
                    drives(jobId, judged));
        });
    }

    /** Takes a drive in, like any other, and remembers that the driver logged it. */
    public Received log(Visit.Welcome visit, Original original) {
        return durably.write(() -> {
            Received received = intake.receive(jobs.get(visit.jobId()).vehicleId(), original);
            links.logged(received.drive().id(), visit.linkId(), clock.instant());
            return received;
        });
    }

    /**
     * Takes a recorded log in, likewise. Sent again it is the same drive, so a phone may repeat what it got no answer to.
     *
     * @param said a drive as JSON: what the driver knows beside the log
     */
    public Received log(Visit.Welcome visit, UploadedLog log, Original said) {
        Received received = logs.receive(jobs.get(visit.jobId()).vehicleId(), log, said);
        durably.write(() -> links.logged(received.drive().id(), visit.linkId(), clock.instant()));
        return received;
    }

    private static DriverView.Check check(FaultVerdict verdict) {
        Standing standing = verdict.standing();
        var fault = verdict.faultCase().fault();
        return new DriverView.Check(
                PartOfDrive.plainName(fault.group()),
                fault.code().text(),
                stage(verdict),
                standing.passes().orElse(0),
                standing.needed());
    }

    private static DriverView.Stage stage(FaultVerdict verdict) {
        return switch (verdict.standing().state()) {
            case AWAITING_REPAIR -> DriverView.Stage.NOT_YET;
            case WAITING_FOR_FIRST_TRIP, PASSING, FAILED_ONCE -> DriverView.Stage.COUNTING;
            case CONFIRMED_FIXED -> DriverView.Stage.FIXED;
            case RECURRED -> DriverView.Stage.FAILED;
        };
    }

    /** The planned drives, and one more for the faults for which there is no plan. */
    private static List<DriverView.Plan> plans(
            List<FaultVerdict> open, NextDrives.Outline outline, ShopSettings.Units units) {
        List<DriverView.Plan> plans = new ArrayList<>();
        for (NextDrives.Plan plan : outline.plans()) {
            List<FaultVerdict> served = open.stream()
                    .filter(verdict -> plan.faults().contains(code(verdict)))
                    .toList();
            if (!served.isEmpty()) {
                List<Reason> steps = PlainSteps.of(plan.conditions());
                plans.add(new DriverView.Plan(
                        names(served),
                        steps.isEmpty()
                                ? partsFor(served)
                                : steps.stream().map(units::words).toList()));
            }
        }
        List<FaultVerdict> left = open.stream()
                .filter(verdict ->
                        outline.plans().stream().noneMatch(plan -> plan.faults().contains(code(verdict))))
                .toList();
        if (!left.isEmpty()) {
            plans.add(new DriverView.Plan(names(left), partsFor(left)));
        }
        return plans;
    }

    private static String code(FaultVerdict verdict) {
        return verdict.faultCase().fault().code().text();
    }

    private static String names(List<FaultVerdict> faults) {
        return faults.stream()
                .map(verdict ->
                        PartOfDrive.plainName(verdict.faultCase().fault().group()))
                .distinct()
                .collect(Collectors.joining(", "));
    }

    private static List<String> partsFor(List<FaultVerdict> open) {
        Set<PartOfDrive> parts = EnumSet.noneOf(PartOfDrive.class);
        open.forEach(verdict ->
                parts.addAll(PartOfDrive.of(verdict.faultCase().fault().group())));
        return PartOfDrive.words(parts);
    }

    /** A condition of the workshop, with times in minutes. */
    private static Reason asked(EnablingCondition condition) {
        Part what = condition.quantity() == DriveQuantity.SOAK ? DriverReason.TIME_PARKED : condition.quantity();
        if (condition.min().isEmpty()) {
            return Reason.of(DriverReason.ASKED_MOST, what, amount(condition, condition.max()));
        }
        Part min = amount(condition, condition.min());
        return condition.max().isEmpty()
                ? Reason.of(DriverReason.ASKED_LEAST, what, min)
                : Reason.of(DriverReason.ASKED_BOTH, what, min, amount(condition, condition.max()));
    }

    private static Part amount(EnablingCondition condition, OptionalDouble limit) {
        Unit unit = condition.quantity().measure();
        double value = limit.orElseThrow();
        return unit == Unit.SECOND
                ? Reason.of(DriverReason.MINUTES, Quantity.of(value / 60, Unit.ONE))
                : Quantity.of(value, unit);
    }

    private List<DriverView.LoggedDrive> drives(UUID jobId, List<FaultVerdict> judged) {
        return intake.get(jobs.get(jobId).vehicleId(), new HashSet<>(links.loggedFor(jobId))).stream()
                .map(drive -> new DriverView.LoggedDrive(
                        drive.record().start(),
                        drive.leftOut().isPresent()
                                ? List.of("does not count, the workshop left it out")
                                : judged.stream()
                                        .map(verdict -> says(drive.id().toString(), verdict))
                                        .toList()))
                .sorted(Comparator.comparing(DriverView.LoggedDrive::start).reversed())
                .toList();
    }

    private static String says(String driveId, FaultVerdict verdict) {
        String name = PartOfDrive.plainName(verdict.faultCase().fault().group());
        return verdict.verdict().attempts().stream()
                .flatMap(attempt -> attempt.judgements().stream())
                .filter(judgement -> judgement.driveId().equals(driveId))
                .findFirst()
                .map(judgement -> "%s: %s".formatted(name, PLAIN.get(judgement.outcome())))
                .orElse(name + ": not judged, because the drive was before the repair");
    }

    private static final Map<Outcome, String> PLAIN = Map.of(
            Outcome.PASSED, "counts, the car checked it and found it good",
            Outcome.FAILED, "the car checked it and the fault showed again",
            Outcome.FAILED_CONFIRMED, "the car checked it and the fault is back",
            Outcome.DID_NOT_RUN, "does not count, nothing shows that the car got to check it in this drive",
            Outcome.RAN_UNPROVEN, "does not count, the car checked it but the record does not show the result",
            Outcome.CARRIED_OVER, "does not count, the old entry is still stored and the car did not check again",
            Outcome.CONTRADICTORY, "does not count, the record disagrees with itself; the workshop will look at it");
}
