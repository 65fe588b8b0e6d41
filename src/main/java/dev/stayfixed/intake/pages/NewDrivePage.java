package dev.stayfixed.intake.pages;

import dev.stayfixed.archive.DriveSubmission;
import dev.stayfixed.archive.Original;
import dev.stayfixed.archive.UploadedLog;
import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.intake.Intake;
import dev.stayfixed.intake.Logs;
import dev.stayfixed.intake.Received;
import dev.stayfixed.jobs.Job;
import dev.stayfixed.jobs.Jobs;
import dev.stayfixed.jobs.Vehicles;
import dev.stayfixed.platform.PlainText;
import dev.stayfixed.platform.StrictJson;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.web.pages.Form;
import dev.stayfixed.web.pages.FormReader;
import dev.stayfixed.web.pages.ScanDigest;
import dev.stayfixed.web.pages.Show;
import dev.stayfixed.web.pages.TechnicianPage;
import dev.stayfixed.web.pages.TickedScan;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.multipart.MultipartFile;

/** Adding a drive: a pasted scan, a file with one, a few numbers, or any of them together. */
@Hidden
@TechnicianPage
@RequestMapping("/vehicles/{id}/drives/new")
class NewDrivePage {

    private static final Map<String, String> FIELDS = Map.of(
            "", "scan", "start", "start", "end", "end", "summary", "form", "scans[0].text", "scan", "date", "date");

    /** What a person typed beside a log, carried through the page on which its columns are confirmed. */
    private static final List<String> KEPT = Stream.concat(
                    Stream.of(DriveQuantity.values()).map(DriveForm::field),
                    Stream.of(
                            "scan",
                            "moment",
                            "start",
                            "end",
                            "mil",
                            "cleared",
                            "sameVehicle",
                            "date",
                            "held",
                            "heldName"))
            .toList();

    private static final long LARGEST_SCAN = 2 << 20;

    private final Intake intake;
    private final Logs logs;
    private final LogStep logStep;
    private final Vehicles vehicles;
    private final Jobs jobs;
    private final StrictJson json;
    private final FormReader reader;

    NewDrivePage(
            Intake intake,
            Logs logs,
            LogStep logStep,
            Vehicles vehicles,
            Jobs jobs,
            StrictJson json,
            FormReader reader) {
        this.reader = reader;
        this.intake = intake;
        this.logs = logs;
        this.logStep = logStep;
        this.vehicles = vehicles;
        this.jobs = jobs;
        this.json = json;
    }

    @GetMapping
    String empty(@PathVariable UUID id, @ModelAttribute("show") Show show, Model model) {
        return page(id, Form.empty(), show, model);
    }

    /** Shows what is understood, and stores nothing. A scan comes back as text in the field and a log is held, so that neither is lost. */
    @PostMapping(params = "do=read")
    String read(
            @PathVariable UUID id,
            @RequestParam MultiValueMap<String, String> typed,
            @RequestParam(required = false) @Nullable MultipartFile file,
            @ModelAttribute("show") Show show,
            Model model) {
        Form form = new Form(typed);
        takeFile(form, file);
        return !form.isWrong() && LogStep.isHeld(form)
                ? mapping(id, List.of(), form, show, model)
                : page(id, form, show, model);
    }

    /** Keeps how the columns of the log are read, and adds the drive. */
    @PostMapping(params = "do=confirm")
    String confirm(
            @PathVariable UUID id,
            @RequestParam MultiValueMap<String, String> typed,
            @ModelAttribute("show") Show show,
            Model model,
            HttpServletResponse response) {
        Form form = new Form(typed);
        logStep.log(form).ifPresent(log -> logStep.confirm(log, id, form));
        if (form.isWrong()) {
            form.notTaken(response);
            return mapping(id, List.of(), form, show, model);
        }
        typed.set(LogStep.MAPPING, form.value(LogStep.MAPPING));
        return add(id, typed, null, show, model, response);
    }

    @PostMapping
    String add(
            @PathVariable UUID id,
            @RequestParam MultiValueMap<String, String> typed,
            @RequestParam(required = false) @Nullable MultipartFile file,
            @ModelAttribute("show") Show show,
            Model model,
            HttpServletResponse response) {
        Form form = new Form(typed);
        takeFile(form, file);
        DriveSubmission submission = new DriveForm(form, reader, show, ticks(id)).submission();
        if (!form.isWrong() && !LogStep.isHeld(form) && submission.summary() == null && submission.scans() == null) {
            form.wrong("scan", "Scan: paste a scan, choose a file, or fill in what you know of the drive");
        }
        if (!form.isWrong()) {
            try {
                Received received = receive(id, form, submission);
                logStep.forget(form);
                return "redirect:/drives/" + received.drive().id()
                        + (received.isNew() ? "?said=drive-added" : "?said=drive-known");
            } catch (Refused refused) {
                if (refused.type() == ProblemType.LOG_MAPPING_NEEDED) {
                    return mapping(id, doubts(refused), form, show, model);
                }
                form.refused(refused, FIELDS);
                model.addAttribute("other", refused.properties().get("existingId"));
            }
        }
        form.notTaken(response);
        return page(id, form, show, model);
    }

    private Received receive(UUID id, Form form, DriveSubmission submission) {
        Original said = new Original(Original.JSON, new String(json.canonical(submission), StandardCharsets.UTF_8));
        if (!LogStep.isHeld(form)) {
            return intake.receive(id, said);
        }
        UploadedLog log = logStep.log(form)
                .orElseThrow(() -> new Refused(
                        ProblemType.LOG_NOT_UNDERSTOOD, "File: the log is no longer here; choose it again"));
        return logs.receive(id, log, said);
    }

    private static List<String> doubts(Refused refused) {
        return refused.properties().get("doubts") instanceof List<?> doubts
                ? doubts.stream().map(String::valueOf).toList()
                : List.of();
    }

    private String mapping(UUID id, List<String> doubts, Form form, Show show, Model model) {
        if (logStep.log(form)
                .filter(log -> logStep.show(log, id, doubts, form, model))
                .isEmpty()) {
            return page(id, form, show, model);
        }
        model.addAttribute("vehicle", vehicles.get(id));
        model.addAttribute("form", form);
        model.addAttribute(
                "kept",
                Stream.concat(KEPT.stream(), ticks(id).fields().stream()).toList());
        return "drive-log";
    }

    /** The faults of the vehicle's open jobs. */
    private TickedScan ticks(UUID vehicleId) {
        return TickedScan.of(
                "tick",
                jobs.ofVehicle(vehicleId).stream()
                        .filter(job -> job.state() == Job.State.OPEN)
                        .flatMap(job -> job.faults().stream())
                        .toList());
    }

    private void takeFile(Form form, @Nullable MultipartFile file) {
        if (file == null || file.isEmpty()) {
            return;
        }
        try {
            if (new UploadedLog(file).isLikely(String.valueOf(file.getOriginalFilename()))) {
                logStep.hold(form, file);
            } else if (!form.isBlank("scan")) {
                form.wrong(
                        "file",
                        "File: a scan is pasted as well; keep one of the two and send the other as its own drive");
            } else if (file.getSize() > LARGEST_SCAN) {
                form.wrong(
                        "file", "File: found more than 2 MB, which is too long for a scan; logs are CSV, gzip or zip");
            } else {
                form.put(
                        "scan",
                        StandardCharsets.UTF_8
                                .newDecoder()
                                .decode(ByteBuffer.wrap(file.getBytes()))
                                .toString());
            }
        } catch (CharacterCodingException e) {
            form.wrong(
                    "file",
                    "File: found bytes that are not UTF-8 text; a text file with the answers of the scan, or a log as CSV, gzip or"
                            + " zip, is wanted");
        } catch (IOException e) {
            form.wrong("file", "File: it did not arrive whole; choose it again");
        }
    }

    private String page(UUID id, Form form, Show show, Model model) {
        model.addAttribute("inputs", DriveForm.inputs(show));
        model.addAttribute("vehicle", vehicles.get(id));
        model.addAttribute(
                "jobs",
                jobs.ofVehicle(id).stream()
                        .filter(job -> job.state() == Job.State.OPEN)
                        .toList());
        model.addAttribute("form", form);
        TickedScan ticks = ticks(id);
        model.addAttribute("ticks", ticks);
        model.addAttribute(
                "digest",
                ticks.below(Optional.of(form.value("scan").strip()), form, reader)
                        .filter(text -> PlainText.flaw(text).isEmpty())
                        .map(text -> ScanDigest.of(text, show))
                        .orElse(null));
        return "drive-new";
    }
}
