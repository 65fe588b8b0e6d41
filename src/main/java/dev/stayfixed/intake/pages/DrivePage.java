package dev.stayfixed.intake.pages;

import dev.stayfixed.archive.LeftOutReason;
import dev.stayfixed.archive.RecordedSignals;
import dev.stayfixed.drive.DriveFacts;
import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.drive.Finding;
import dev.stayfixed.intake.BeforeRepair;
import dev.stayfixed.intake.Drive;
import dev.stayfixed.intake.Intake;
import dev.stayfixed.jobs.Vehicles;
import dev.stayfixed.jobs.pages.FaultView;
import dev.stayfixed.jobs.pages.LaneMark;
import dev.stayfixed.judging.CaseFiles;
import dev.stayfixed.judging.FaultVerdict;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.verification.Judgement;
import dev.stayfixed.verification.Verdict;
import dev.stayfixed.verification.VerificationState;
import dev.stayfixed.web.pages.Form;
import dev.stayfixed.web.pages.FormReader;
import dev.stayfixed.web.pages.PageWord;
import dev.stayfixed.web.pages.ScanDigest;
import dev.stayfixed.web.pages.Show;
import dev.stayfixed.web.pages.TechnicianPage;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** One drive: what it was, what it says about each fault, and its scans line by line. */
@Hidden
@TechnicianPage
class DrivePage {

    private final Intake intake;
    private final Vehicles vehicles;
    private final CaseFiles files;
    private final RecordedSignals signals;
    private final FormReader reader;

    DrivePage(Intake intake, Vehicles vehicles, CaseFiles files, RecordedSignals signals, FormReader reader) {
        this.reader = reader;
        this.signals = signals;
        this.intake = intake;
        this.vehicles = vehicles;
        this.files = files;
    }

    /** A question about the drive and its answer. */
    record Fact(String question, String answer, String tone, String reason) {}

    /** A number of the drive. */
    record Figure(String what, String value) {}

    /** A scan of the drive. */
    record TakenScan(String when, ScanDigest digest) {}

    /** What the drive says about a fault. */
    record OnFault(UUID jobId, String code, LaneMark mark, String reason, String after) {}

    @GetMapping("/drives/{id}")
    String show(
            @PathVariable UUID id,
            @RequestParam(defaultValue = "") String from,
            @RequestParam(defaultValue = "") String to,
            @ModelAttribute("show") Show show,
            Model model) {
        return page(id, from, to, Form.empty(), show, model);
    }

    /** Another stretch of the picture alone, for the script of the page. */
    @GetMapping("/drives/{id}/plot")
    String plot(
            @PathVariable UUID id,
            @RequestParam(defaultValue = "") String from,
            @RequestParam(defaultValue = "") String to,
            @ModelAttribute("show") Show show,
            Model model) {
        model.addAttribute(
                "plot",
                plot(intake.get(id), seconds(from), seconds(to), show)
                        .orElseThrow(() -> Refused.notFound("recorded drive", id)));
        return "plot :: plot(plot=${plot})";
    }

    @PostMapping("/drives/{id}/left-out")
    String leaveOut(
            @PathVariable UUID id,
            @RequestParam MultiValueMap<String, String> typed,
            @ModelAttribute("show") Show show,
            Model model,
            HttpServletResponse response) {
        Form form = new Form(typed);
        Optional<LeftOutReason> reason = reader.read(form, LeftOutReason.class, show);
        if (reason.isEmpty()) {
            form.notTaken(response);
            return page(id, "", "", form, show, model);
        }
        intake.leaveOut(id, reason.get().reason());
        return "redirect:/drives/" + id + "?said=drive-left-out";
    }

    @PostMapping("/drives/{id}/taken-in")
    String takeIn(@PathVariable UUID id, @ModelAttribute("show") Show show, Model model, HttpServletResponse response) {
        try {
            intake.takeIn(id);
            return "redirect:/drives/" + id + "?said=drive-taken-in";
        } catch (Refused refused) {
            if (refused.type() != ProblemType.DRIVE_OVERLAPS) {
                throw refused;
            }
            Form form = Form.empty();
            reader.wrong(form, "form", "intake.drive.time-taken");
            form.notTaken(response);
            return page(id, "", "", form, show, model);
        }
    }

    private String page(UUID id, String from, String to, Form form, Show show, Model model) {
        Drive drive = intake.get(id);
        model.addAttribute("form", form);
        drive.log().ifPresent(log -> {
            model.addAttribute("log", log.report());
            model.addAttribute(
                    "conditions", RecordedDrivePlot.rows(drive, show.settings().units()));
        });
        plot(drive, seconds(from), seconds(to), show).ifPresent(plot -> model.addAttribute("plot", plot));
        model.addAttribute("drive", drive);
        model.addAttribute("vehicle", vehicles.get(drive.vehicleId()));
        model.addAttribute("facts", facts(drive.facts(), show));
        model.addAttribute("numbers", numbers(drive.record(), show));
        model.addAttribute(
                "scans",
                drive.record().scans().stream().map(scan -> scan(scan, show)).toList());
        List<FaultVerdict> judged = files.ofVehicle(drive.vehicleId()).verdicts();
        model.addAttribute("effects", onFaults(judged, drive, show));
        model.addAttribute("tooEarly", tooEarly(judged, drive));
        return "drive";
    }

    /** A repair that the drive comes too early for. */
    record EarlierThan(UUID jobId, UUID repairId, Instant at) {}

    private static List<EarlierThan> tooEarly(List<FaultVerdict> judged, Drive drive) {
        List<EarlierThan> found = new ArrayList<>();
        for (FaultVerdict verdict : judged) {
            BeforeRepair.repair(drive.id().toString(), verdict)
                    .flatMap(at -> verdict.faultCase().repairs().stream()
                            .filter(repair -> repair.at().equals(at))
                            .findFirst())
                    .map(repair ->
                            new EarlierThan(verdict.faultCase().jobId(), UUID.fromString(repair.id()), repair.at()))
                    .filter(earlier -> !found.contains(earlier))
                    .ifPresent(found::add);
        }
        return found;
    }

    /** Empty where nothing was recorded that is drawn. */
    private Optional<PlotView> plot(Drive drive, double from, double to, Show show) {
        return drive.log()
                .map(log -> RecordedDrivePlot.of(
                        drive,
                        log,
                        signals.picture(drive.id(), drive.revision()),
                        show.settings().units()))
                .filter(recording -> !recording.signals().isEmpty())
                .map(recording -> PlotView.of(recording, "/drives/" + drive.id(), from, to));
    }

    /** NaN, which is the whole drive, for anything that is no number of seconds. */
    private static double seconds(String text) {
        return text.matches("\\d{1,9}(\\.\\d{1,3})?") ? Double.parseDouble(text) : Double.NaN;
    }

    private List<Fact> facts(DriveFacts facts, Show show) {
        return List.of(
                fact(DriveWord.DRIVING_CYCLE, facts.drivingCycle(), show),
                fact(DriveWord.WARM_UP_CYCLE, facts.warmUpCycle(), show),
                fact(DriveWord.MINIMUM_CYCLE, facts.minimumCycle(), show),
                fact(DriveWord.GENERAL_DENOMINATOR, facts.generalDenominator(), show));
    }

    private static Fact fact(DriveWord asked, Finding finding, Show show) {
        String question = show.words(asked);
        String reason = Show.capital(show.words(finding.reason()));
        return switch (finding.held()) {
            case YES -> new Fact(question, show.words(PageWord.YES), "good", reason);
            case NO -> new Fact(question, show.words(PageWord.NO), "bad", reason);
            case UNKNOWN -> new Fact(question, show.words(PageWord.NOT_KNOWN), "quiet", reason);
        };
    }

    private List<Figure> numbers(DriveRecord record, Show show) {
        List<Figure> numbers = new ArrayList<>();
        Arrays.stream(DriveQuantity.values())
                .forEach(q -> record.summary()
                        .value(q)
                        .ifPresent(value -> numbers.add(new Figure(
                                Show.capital(show.words(q)),
                                record.summary().atMost(q).isPresent()
                                        ? show.words(Reason.of(
                                                PageWord.NO_LESS_THAN, Part.verbatim(show.quantity(q, value))))
                                        : show.quantity(q, value)))));
        record.summary()
                .milOn()
                .ifPresent(on -> numbers.add(
                        new Figure(show.words(DriveWord.MIL_SEEN), show.words(on ? PageWord.ON : PageWord.OFF))));
        return numbers;
    }

    private TakenScan scan(DriveRecord.TimedScan scan, Show show) {
        return new TakenScan(
                show.words(scan.moment() == DriveRecord.Moment.BEFORE ? DriveWord.READ_AT_START : DriveWord.READ_LATER),
                ScanDigest.of(scan.scan(), show));
    }

    private static List<OnFault> onFaults(List<FaultVerdict> judged, Drive drive, Show show) {
        List<OnFault> found = new ArrayList<>();
        for (FaultVerdict verdict : judged) {
            for (Verdict.Attempt attempt : verdict.verdict().attempts()) {
                attempt.steps().stream()
                        .filter(s -> s.driveId().equals(drive.id().toString()))
                        .forEach(step -> step.judged()
                                .ifPresent(judgement -> found.add(onFault(verdict, judgement, step.after(), show))));
            }
        }
        return found;
    }

    private static OnFault onFault(FaultVerdict verdict, Judgement judgement, VerificationState after, Show show) {
        return new OnFault(
                verdict.faultCase().jobId(),
                verdict.faultCase().fault().code().text(),
                FaultView.mark(judgement.outcome()),
                show.words(judgement.reason()),
                show.words(after.said()));
    }
}
