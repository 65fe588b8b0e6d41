package dev.stayfixed.web.pages;

import dev.stayfixed.drive.condition.TypicalCondition;
import dev.stayfixed.drive.condition.TypicalConditions;
import dev.stayfixed.intake.Alert;
import dev.stayfixed.intake.AllClears;
import dev.stayfixed.intake.BeforeRepair;
import dev.stayfixed.intake.FaultVerdict;
import dev.stayfixed.intake.Inspections;
import dev.stayfixed.intake.Intake;
import dev.stayfixed.intake.NextDrives;
import dev.stayfixed.intake.Proofs;
import dev.stayfixed.intake.Verdicts;
import dev.stayfixed.intake.WaysOfFaults;
import dev.stayfixed.jobs.ConditionsOfFaults;
import dev.stayfixed.jobs.Fault;
import dev.stayfixed.jobs.Job;
import dev.stayfixed.jobs.Jobs;
import dev.stayfixed.jobs.Standing;
import dev.stayfixed.jobs.Vehicles;
import dev.stayfixed.notifications.FollowUps;
import dev.stayfixed.notifications.JobNotices;
import dev.stayfixed.notifications.Notices;
import dev.stayfixed.verification.confidence.AllClear;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Stream;
import org.springframework.stereotype.Component;
import org.springframework.ui.Model;

/** What stands on a job's page, whichever of its forms was sent. */
@Component
class JobView {

    private final Jobs jobs;
    private final Vehicles vehicles;
    private final Verdicts verdicts;
    private final WaysOfFaults ways;
    private final Intake intake;
    private final AllClears allClears;
    private final Inspections inspections;
    private final NextDrives nextDrives;
    private final Notices notices;
    private final FollowUps followUps;
    private final Proofs proofs;
    private final ConditionsOfFaults conditions;

    JobView(
            Jobs jobs,
            Vehicles vehicles,
            Verdicts verdicts,
            WaysOfFaults ways,
            Intake intake,
            AllClears allClears,
            Inspections inspections,
            NextDrives nextDrives,
            Notices notices,
            FollowUps followUps,
            Proofs proofs,
            ConditionsOfFaults conditions) {
        this.jobs = jobs;
        this.vehicles = vehicles;
        this.verdicts = verdicts;
        this.ways = ways;
        this.intake = intake;
        this.allClears = allClears;
        this.inspections = inspections;
        this.nextDrives = nextDrives;
        this.notices = notices;
        this.followUps = followUps;
        this.proofs = proofs;
        this.conditions = conditions;
    }

    String page(UUID id, Form form, Show show, Model model) {
        Job job = jobs.get(id);
        List<FaultVerdict> judged = verdicts.ofJob(id);
        model.addAttribute("job", job);
        model.addAttribute("vehicle", vehicles.get(job.vehicleId()));
        model.addAttribute("form", form);
        model.addAttribute(
                "faults", judged.stream().map(v -> FaultView.of(v, job, show)).toList());
        model.addAttribute("ways", sentences(id, show));
        model.addAttribute("typicals", typicals(job));
        model.addAttribute("proofs", proofs.ofJob(id));
        model.addAttribute("allClears", allClears(id, judged, form, show));
        model.addAttribute("isOpen", job.state() == Job.State.OPEN);
        model.addAttribute(
                "isFixed",
                stands(job, Standing.State.CONFIRMED_FIXED) == job.faults().size());
        model.addAttribute(
                "needsRepair", stands(job, Standing.State.RECURRED) + stands(job, Standing.State.AWAITING_REPAIR) > 0);
        model.addAttribute("alerts", alerts(job));
        model.addAttribute("tooEarly", tooEarly(judged));
        model.addAttribute("leftOut", intake.leftOut(job.vehicleId()));
        model.addAttribute("outlooks", inspections.outlook(job.vehicleId()));
        model.addAttribute("nextDrive", nextDrives.of(id));
        JobNotices told = notices.ofJob(id);
        JobNoticesPage.show(told, form);
        model.addAttribute("told", told);
        model.addAttribute("shopTold", notices.ofShop());
        model.addAttribute("promises", followUps.ofJob(id));
        return "job";
    }

    private Map<UUID, String> sentences(UUID id, Show show) {
        Map<UUID, String> sentences = new LinkedHashMap<>();
        ways.ofJob(id).forEach((fault, way) -> sentences.put(fault, show.words(way.sentence())));
        return sentences;
    }

    /** The typical conditions that one click adopts: of the faults for which none were named. */
    private Map<UUID, TypicalCondition> typicals(Job job) {
        Map<UUID, TypicalCondition> typicals = new LinkedHashMap<>();
        for (Fault fault : job.faults()) {
            boolean named = !fault.terms().enablingConditions().isEmpty()
                    || conditions.get(job.id(), fault.id()).agreed().isPresent();
            if (!named) {
                TypicalConditions.of(fault.terms().code(), fault.terms().group())
                        .ifPresent(typical -> typicals.put(fault.id(), typical));
            }
        }
        return typicals;
    }

    private static int stands(Job job, Standing.State state) {
        return (int)
                job.faults().stream().filter(f -> f.standing().state() == state).count();
    }

    /** By fault; what the shop stated before stands in the fields of its form. */
    private Map<UUID, AllClear> allClears(UUID jobId, List<FaultVerdict> judged, Form form, Show show) {
        Map<UUID, AllClear> found = new LinkedHashMap<>();
        for (FaultVerdict verdict : judged) {
            UUID faultId = verdict.faultCase().faultId();
            AllClear allClear = allClears.of(jobId, faultId);
            found.put(faultId, allClear);
            FaultHistoryPage.show(faultId, allClear, form, show);
        }
        return found;
    }

    /** What stands of the vehicle since the job was opened, or since its repair where that is dated earlier. */
    private List<Alert> alerts(Job job) {
        Instant from = Stream.concat(
                        Stream.of(job.openedAt()),
                        job.repairs().stream().map(repair -> repair.details().performedAt()))
                .min(Comparator.naturalOrder())
                .orElseThrow();
        return verdicts.alerts(job.vehicleId()).stream()
                .filter(alert -> !alert.at().isBefore(from))
                .toList();
    }

    /** A drive that lies before the repair. */
    record TooEarly(String driveId, Instant start) {}

    /** Drives of the two weeks before the repair: the date of one of both may be wrong. */
    private static List<TooEarly> tooEarly(List<FaultVerdict> judged) {
        SortedMap<Instant, String> found = new TreeMap<>();
        for (FaultVerdict verdict : judged) {
            verdict.driveStarts()
                    .forEach((drive, start) -> BeforeRepair.repair(drive, verdict)
                            .filter(repair -> start.isAfter(repair.minus(Duration.ofDays(14))))
                            .ifPresent(repair -> found.put(start, drive)));
        }
        return found.entrySet().stream()
                .map(entry -> new TooEarly(entry.getValue(), entry.getKey()))
                .toList();
    }
}
