package dev.stayfixed.judging.pages;

import dev.stayfixed.drive.running.EngineState;
import dev.stayfixed.drive.running.RunCaution;
import dev.stayfixed.drive.running.RunningPreset;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.jobs.EngineCheck;
import dev.stayfixed.jobs.EngineChecks;
import dev.stayfixed.jobs.Fault;
import dev.stayfixed.jobs.Job;
import dev.stayfixed.jobs.Jobs;
import dev.stayfixed.jobs.entry.EngineCheckEntry;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.web.pages.Form;
import dev.stayfixed.web.pages.FormReader;
import dev.stayfixed.web.pages.SentOnce;
import dev.stayfixed.web.pages.Show;
import dev.stayfixed.web.pages.TechnicianPage;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
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

/** Stating a check with the engine running: first what is checked, then its figures. */
@Hidden
@TechnicianPage
@RequestMapping("/jobs/{jobId}/checks/new")
class NewCheckPage {

    private final EngineChecks checks;
    private final Jobs jobs;
    private final FormReader reader;
    private final SentOnce once;

    NewCheckPage(EngineChecks checks, Jobs jobs, FormReader reader, SentOnce once) {
        this.checks = checks;
        this.jobs = jobs;
        this.reader = reader;
        this.once = once;
    }

    @GetMapping
    String empty(
            @PathVariable UUID jobId,
            @RequestParam UUID fault,
            @RequestParam(required = false) @Nullable String preset,
            @ModelAttribute("show") Show show,
            Model model) {
        Form form = CheckForm.preset(preset)
                .map(chosen -> CheckForm.of(fault, chosen, show))
                .orElseGet(() -> Form.empty().put("faultId", fault.toString()));
        return page(jobId, form, show, model);
    }

    @PostMapping
    String state(
            @PathVariable UUID jobId,
            @RequestParam MultiValueMap<String, String> typed,
            @ModelAttribute("show") Show show,
            Model model,
            HttpServletResponse response) {
        Form form = new Form(typed);
        Optional<EngineCheck.Stated> stated = reader.read(
                        form, EngineCheckEntry.class, show, path -> CheckForm.scale(form, path, show))
                .flatMap(entry -> reader.made(form, EngineCheckEntry.class, entry::stated));
        return form.answer(
                response,
                () -> once.lead(
                        form,
                        () -> "redirect:/jobs/" + jobId + "/checks/"
                                + checks.state(jobId, stated.orElseThrow()).id()),
                refused -> reader.refuse(form, EngineCheckEntry.class, refused),
                () -> page(jobId, form, show, model));
    }

    private String page(UUID jobId, Form form, Show show, Model model) {
        Job job = jobs.get(jobId);
        Optional<RunningPreset> preset = CheckForm.preset(form.value("preset"));
        model.addAttribute("job", job);
        model.addAttribute("form", form);
        model.addAttribute("code", code(job, form.value("faultId")));
        model.addAttribute("preset", preset.orElse(null));
        model.addAttribute("presets", RunningPreset.values());
        model.addAttribute("states", EngineState.values());
        model.addAttribute("signals", signals(show));
        model.addAttribute("degrees", show.unit(Signal.COOLANT));
        model.addAttribute("rpm", show.unit(Signal.ENGINE_SPEED));
        model.addAttribute("cautions", RunCaution.values());
        return "check-new";
    }

    private static String code(Job job, String faultId) {
        return job.faults().stream()
                .filter(fault -> fault.id().toString().equals(faultId))
                .map(Fault::terms)
                .map(terms -> terms.code().text())
                .findFirst()
                .orElse("");
    }

    /** With the unit in which this shop writes each. */
    private static Map<String, String> signals(Show show) {
        Map<String, String> signals = new LinkedHashMap<>();
        Stream.of(Signal.values())
                .forEach(signal -> signals.put(
                        signal.name(),
                        show.words(Reason.of(ConditionsWord.SIGNAL_IN, signal, Part.verbatim(show.unit(signal))))));
        return signals;
    }
}
