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
import dev.stayfixed.judging.FaultProofs;
import dev.stayfixed.judging.FaultVerdict;
import dev.stayfixed.judging.NextDrives;
import dev.stayfixed.platform.storage.Durably;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Quantity;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Unit;
import dev.stayfixed.verification.Outcome;
import dev.stayfixed.verification.held.HeldSoFar;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
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
            List<FaultVerdict> open = open(judged);
            ShopSettings.Units units = shops.settings().units();
            return new DriverView(
                    judged.stream()
                            .map(verdict -> check(verdict, file.proofs(jobId), units))
                            .toList(),
                    plans(open, file.nextDrives(jobId), units),
                    open.stream()
                            .flatMap(verdict -> verdict.faultCase().fault().enablingConditions().stream())
                            .map(condition -> units.words(asked(condition)))
                            .distinct()
                            .toList(),
                    Arrays.stream(RoadCaution.values()).map(units::words).toList(),
                    Questions.of(open.stream()
                            .map(verdict -> verdict.faultCase().fault())
                            .toList()),
                    drives(jobId, judged, units));
        });
    }

    /** What is to be driven for a job, as its driver reads it. */
    public static List<DriverView.Plan> plans(CaseFile file, UUID jobId, ShopSettings.Units units) {
        return plans(open(file.verdicts(jobId)), file.nextDrives(jobId), units);
    }

    private static List<FaultVerdict> open(List<FaultVerdict> judged) {
        return judged.stream()
                .filter(verdict -> stage(verdict) == DriverView.Stage.COUNTING)
                .toList();
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

    private static DriverView.Check check(
            FaultVerdict verdict, Map<UUID, FaultProofs> proofs, ShopSettings.Units units) {
        Standing standing = verdict.standing();
        var fault = verdict.faultCase().fault();
        return new DriverView.Check(
                units.words(PlainName.of(fault.group())),
                fault.code().text(),
                stage(verdict),
                units.words(progress(stage(verdict), standing)),
                standing.passes().orElse(0),
                standing.needed(),
                units.words(held(proofs.getOrDefault(verdict.faultCase().faultId(), FaultProofs.NONE))));
    }

    private static Reason held(FaultProofs proofs) {
        Optional<HeldSoFar> known = proofs.held();
        if (known.flatMap(HeldSoFar::ended).isPresent()) {
            return Reason.of(DriverReason.HELD_NO_MORE);
        }
        return known.filter(held -> held.until().isPresent())
                .map(DriverPages::stretch)
                .orElseGet(() -> Reason.of(DriverReason.HELD_NOT_SEEN));
    }

    private static Reason stretch(HeldSoFar held) {
        Reason drives = Reason.of(DriverReason.DRIVES_HELD, Part.count(held.starts()));
        Reason days = Reason.of(DriverReason.DAYS_HELD, Part.count(held.days()));
        return held.kilometres().isEmpty()
                ? Reason.of(DriverReason.HELD, drives, days)
                : Reason.of(
                        DriverReason.HELD_DRIVEN,
                        Quantity.whole(held.kilometres().getAsDouble(), Unit.KILOMETRE),
                        drives,
                        days);
    }

    private static Reason progress(DriverView.Stage stage, Standing standing) {
        Part needed = Part.count(standing.needed());
        return switch (stage) {
            case COUNTING ->
                Reason.of(DriverReason.DONE_OF, Part.count(standing.passes().orElse(0)), needed);
            case FIXED -> Reason.of(DriverReason.PROVEN_BY, needed);
            case FAILED -> Reason.of(DriverReason.SHOWED_AGAIN);
            case NOT_YET -> Reason.of(DriverReason.REPAIR_NOT_RECORDED);
        };
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
                List<PlainStep> steps = PlainSteps.of(plan.conditions());
                plans.add(new DriverView.Plan(
                        names(served, units),
                        steps.isEmpty() ? partsFor(served, units) : steps(steps.stream(), units)));
            }
        }
        List<FaultVerdict> left = open.stream()
                .filter(verdict ->
                        outline.plans().stream().noneMatch(plan -> plan.faults().contains(code(verdict))))
                .toList();
        if (!left.isEmpty()) {
            plans.add(new DriverView.Plan(names(left, units), partsFor(left, units)));
        }
        return plans;
    }

    private static String code(FaultVerdict verdict) {
        return verdict.faultCase().fault().code().text();
    }

    private static String names(List<FaultVerdict> faults, ShopSettings.Units units) {
        return faults.stream()
                .map(verdict ->
                        units.words(PlainName.of(verdict.faultCase().fault().group())))
                .distinct()
                .collect(Collectors.joining(", "));
    }

    private static List<DriverView.Step> partsFor(List<FaultVerdict> open, ShopSettings.Units units) {
        Set<PartOfDrive> parts = EnumSet.noneOf(PartOfDrive.class);
        open.forEach(verdict ->
                parts.addAll(PartOfDrive.of(verdict.faultCase().fault().group())));
        return steps(parts.stream().map(PartOfDrive::step), units);
    }

    private static List<DriverView.Step> steps(Stream<PlainStep> steps, ShopSettings.Units units) {
        return steps.map(step -> new DriverView.Step(units.words(step.amount()), units.words(step.says())))
                .toList();
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

    private List<DriverView.LoggedDrive> drives(UUID jobId, List<FaultVerdict> judged, ShopSettings.Units units) {
        return intake.get(jobs.get(jobId).vehicleId(), new HashSet<>(links.loggedFor(jobId))).stream()
                .map(drive -> new DriverView.LoggedDrive(
                        drive.id(),
                        drive.record().start(),
                        drive.leftOut().isPresent()
                                ? List.of(units.words(DriverReason.LEFT_OUT_BY_WORKSHOP))
                                : judged.stream()
                                        .map(verdict ->
                                                units.words(says(drive.id().toString(), verdict)))
                                        .toList()))
                .sorted(Comparator.comparing(DriverView.LoggedDrive::start).reversed())
                .toList();
    }

    private static Reason says(String driveId, FaultVerdict verdict) {
        Part check = PlainName.of(verdict.faultCase().fault().group());
        return verdict.verdict().attempts().stream()
                .flatMap(attempt -> attempt.judgements().stream())
                .filter(judgement -> judgement.driveId().equals(driveId))
                .findFirst()
                .map(judgement -> Reason.of(DriverReason.CHECK_SAYS, check, plain(judgement.outcome())))
                .orElseGet(() -> Reason.of(DriverReason.BEFORE_REPAIR_OF, check));
    }

    private static DriverReason plain(Outcome outcome) {
        return switch (outcome) {
            case PASSED -> DriverReason.DRIVE_COUNTS;
            case FAILED -> DriverReason.DRIVE_FAILED;
            case FAILED_CONFIRMED -> DriverReason.DRIVE_BROUGHT_IT_BACK;
            case DID_NOT_RUN -> DriverReason.DRIVE_NOT_CHECKED;
            case RAN_UNPROVEN -> DriverReason.DRIVE_WITHOUT_RESULT;
            case CARRIED_OVER -> DriverReason.DRIVE_BEFORE_OLD_ENTRY_WENT;
            case CONTRADICTORY -> DriverReason.DRIVE_DISAGREES;
        };
    }
}
