package dev.stayfixed.jobs.pages;

import dev.stayfixed.customer.DriverLinks;
import dev.stayfixed.customer.DriverPages;
import dev.stayfixed.drive.condition.TypicalCondition;
import dev.stayfixed.drive.condition.TypicalConditions;
import dev.stayfixed.intake.BeforeRepair;
import dev.stayfixed.intake.Intake;
import dev.stayfixed.jobs.Fault;
import dev.stayfixed.jobs.Job;
import dev.stayfixed.jobs.Photo;
import dev.stayfixed.jobs.Photos;
import dev.stayfixed.judging.Alert;
import dev.stayfixed.judging.CaseFile;
import dev.stayfixed.judging.CaseFiles;
import dev.stayfixed.judging.FaultCheck;
import dev.stayfixed.judging.FaultVerdict;
import dev.stayfixed.platform.Languages;
import dev.stayfixed.platform.storage.Durably;
import dev.stayfixed.telling.FollowUps;
import dev.stayfixed.telling.JobNotices;
import dev.stayfixed.telling.Notices;
import dev.stayfixed.verification.WaysToProve;
import dev.stayfixed.verification.confidence.AllClear;
import dev.stayfixed.web.pages.Form;
import dev.stayfixed.web.pages.Show;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.springframework.stereotype.Component;
import org.springframework.ui.Model;

/** What stands on a job's page, whichever of its forms was sent. */
@Component
class JobView {

    private final CaseFiles files;
    private final Intake intake;
    private final Notices notices;
    private final FollowUps followUps;
    private final DriverLinks links;
    private final Photos photos;
    private final Languages languages;
    private final Durably durably;

    JobView(
            CaseFiles files,
            Intake intake,
            Notices notices,
            FollowUps followUps,
            DriverLinks links,
            Photos photos,
            Languages languages,
            Durably durably) {
        this.files = files;
        this.intake = intake;
        this.notices = notices;
        this.followUps = followUps;
        this.links = links;
        this.photos = photos;
        this.languages = languages;
        this.durably = durably;
    }

    /** All of it is read at one moment. */
    String page(UUID id, Form form, Show show, Model model) {
        return durably.read(() -> filled(id, form, show, model));
    }

    private String filled(UUID id, Form form, Show show, Model model) {
        CaseFile file = files.ofJob(id);
        Job job = file.job(id);
        List<FaultVerdict> judged = file.verdicts(id);
        model.addAttribute("job", job);
        model.addAttribute("vehicle", file.vehicle());
        model.addAttribute("form", form);
        model.addAttribute("faults", FaultView.all(judged, job, show));
        model.addAttribute("ways", sentences(file.ways(id), show));
        model.addAttribute("likely", file.likelyDrives(id));
        model.addAttribute("typicals", typicals(file, job));
        model.addAttribute("proofs", file.proofs(id));
        model.addAttribute(
                "checks",
                file.checks(id).stream()
                        .filter(FaultCheck::counts)
                        .collect(Collectors.groupingBy(check -> check.stated().faultId())));
        model.addAttribute("allClears", allClears(file, judged, form, show));
        model.addAttribute("isOpen", job.state() == Job.State.OPEN);
        JobLead lead = JobLead.of(
                job.state(), judged.stream().map(FaultVerdict::standing).toList());
        model.addAttribute("lead", lead);
        model.addAttribute("isFixed", lead.proven() == lead.faults());
        model.addAttribute("bands", bands(job, show));
        model.addAttribute("handedOver", links.handedOver(id));
        model.addAttribute("alerts", alerts(file, job));
        model.addAttribute("tooEarly", tooEarly(judged));
        model.addAttribute("leftOut", intake.leftOut(job.vehicleId()));
        model.addAttribute("outlooks", file.inspection());
        model.addAttribute("nextDrive", file.nextDrives(id));
        model.addAttribute(
                "cautions",
                file.nextDrives(id).plans().stream()
                        .flatMap(plan -> plan.cautions().stream())
                        .distinct()
                        .toList());
        model.addAttribute("plain", DriverPages.plans(file, id, show.settings().units()));
        JobNotices told = notices.ofJob(id);
        JobNoticesPage.show(told, form);
        model.addAttribute("told", told);
        model.addAttribute("photosOf", photos.ofJob(id).stream().collect(Collectors.groupingBy(Photo::repairId)));
        model.addAttribute("languages", languages.choices());
        model.addAttribute("shopTold", notices.ofShop());
        model.addAttribute("promises", followUps.ofJob(id));
        return "job";
    }

    private static Map<UUID, String> sentences(Map<UUID, WaysToProve> ways, Show show) {
        Map<UUID, String> sentences = new LinkedHashMap<>();
        ways.forEach((fault, way) -> sentences.put(fault, show.words(way.sentence())));
        return sentences;
    }

    /** The typical conditions that one click adopts: of the faults for which none were named. */
    private static Map<UUID, TypicalCondition> typicals(CaseFile file, Job job) {
        Map<UUID, TypicalCondition> typicals = new LinkedHashMap<>();
        for (Fault fault : job.faults()) {
            boolean named = !fault.terms().enablingConditions().isEmpty()
                    || file.conditions(fault.id()).agreed().isPresent();
            if (!named) {
                TypicalConditions.of(fault.terms().code(), fault.terms().group())
                        .ifPresent(typical -> typicals.put(fault.id(), typical));
            }
        }
        return typicals;
    }

    private static Map<UUID, List<BenchBand>> bands(Job job, Show show) {
        Map<UUID, List<BenchBand>> bands = new LinkedHashMap<>();
        job.faults().forEach(fault -> bands.put(fault.id(), BenchBand.of(job, fault.id(), show)));
        return bands;
    }

    /** By fault; what the shop stated before stands in the fields of its form. */
    private static Map<UUID, AllClear> allClears(CaseFile file, List<FaultVerdict> judged, Form form, Show show) {
        Map<UUID, AllClear> found = new LinkedHashMap<>();
        for (FaultVerdict verdict : judged) {
            UUID faultId = verdict.faultCase().faultId();
            AllClear allClear = file.allClear(verdict.faultCase().jobId(), faultId);
            found.put(faultId, allClear);
            FaultHistoryPage.show(faultId, allClear, form, show);
        }
        return found;
    }

    /** What stands of the vehicle since the job was opened, or since its repair where that is dated earlier. */
    private static List<Alert> alerts(CaseFile file, Job job) {
        Instant from = Stream.concat(
                        Stream.of(job.openedAt()),
                        job.repairs().stream().map(repair -> repair.details().performedAt()))
                .min(Comparator.naturalOrder())
                .orElseThrow();
        return file.alerts().stream()
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
