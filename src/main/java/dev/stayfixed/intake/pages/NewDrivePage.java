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

    /** What a person typed beside a log, carried through the page on which its columns are confirmed. */
    private static final List<String> KEPT = Stream.concat(
                    Stream.of(DriveQuantity.values()).map(DriveForm::field),
                    Stream.of(
                            DriveForm.SCAN,
                            DriveForm.MOMENT,
                            "start",
                            "end",
                            "summary.milOn",
                            "codesClearedBefore",
                            "sameVehicleConfirmed",
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
    private final DriveForm drives;
    private final FormReader reader;

    NewDrivePage(
            Intake intake,
            Logs logs,
            LogStep logStep,
            Vehicles vehicles,
            Jobs jobs,
            StrictJson json,
            DriveForm drives,
            FormReader reader) {
        this.drives = drives;
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
        logStep.log(form).ifPresent(log -> logStep.confirm(log, id, form, show));
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
        Optional<DriveSubmission> submission = drives.read(form, ticks(id), show);
        if (submission.isPresent()) {
            try {
                Received received = receive(id, form, submission.get());
                logStep.forget(form);
                return "redirect:/drives/" + received.drive().id()
                        + (received.isNew() ? "?said=drive-added" : "?said=drive-known");
            } catch (Refused refused) {
                if (refused.type() == ProblemType.LOG_MAPPING_NEEDED) {
                    return mapping(id, doubts(refused), form, show, model);
                }
                reader.refuse(form, DriveSubmission.class, refused);
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
                .orElseThrow(() -> new Refused(ProblemType.LOG_NOT_UNDERSTOOD, reader.text("intake.file.gone")));
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
            } else if (!form.isBlank(DriveForm.SCAN)) {
                reader.wrong(form, "file", "intake.file.scan-as-well");
            } else if (file.getSize() > LARGEST_SCAN) {
                reader.wrong(form, "file", "intake.file.too-long");
            } else {
                form.put(
                        DriveForm.SCAN,
                        StandardCharsets.UTF_8
                                .newDecoder()
                                .decode(ByteBuffer.wrap(file.getBytes()))
                                .toString());
            }
        } catch (CharacterCodingException e) {
            reader.wrong(form, "file", "intake.file.no-text");
        } catch (IOException e) {
            reader.wrong(form, "file", "intake.file.not-whole");
        }
    }

    private String page(UUID id, Form form, Show show, Model model) {
        model.addAttribute("inputs", drives.inputs(show));
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
                ticks.below(Optional.of(form.value(DriveForm.SCAN).strip()), form, reader)
                        .filter(text -> PlainText.flaw(text).isEmpty())
                        .map(text -> ScanDigest.of(text, show))
                        .orElse(null));
        return "drive-new";
    }
}
