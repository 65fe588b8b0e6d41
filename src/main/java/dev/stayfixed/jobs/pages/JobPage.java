package dev.stayfixed.jobs.pages;

import dev.stayfixed.jobs.Jobs;
import dev.stayfixed.jobs.entry.CloseReason;
import dev.stayfixed.jobs.entry.ReopenReason;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.web.pages.Form;
import dev.stayfixed.web.pages.FormReader;
import dev.stayfixed.web.pages.Show;
import dev.stayfixed.web.pages.TechnicianPage;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Optional;
import java.util.UUID;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** One job: where each fault stands and why, what the next drive must bring, and the close. */
@Hidden
@TechnicianPage
@RequestMapping("/jobs/{id}")
class JobPage {

    private final Jobs jobs;
    private final JobView view;
    private final FormReader reader;

    JobPage(Jobs jobs, JobView view, FormReader reader) {
        this.jobs = jobs;
        this.view = view;
        this.reader = reader;
    }

    @GetMapping
    String show(@PathVariable UUID id, @ModelAttribute("show") Show show, Model model) {
        return view.page(id, Form.empty(), show, model);
    }

    @PostMapping("/close")
    String close(
            @PathVariable UUID id,
            @RequestParam MultiValueMap<String, String> typed,
            @ModelAttribute("show") Show show,
            Model model,
            HttpServletResponse response) {
        Form form = new Form(typed);
        Optional<CloseReason> reason = reader.read(form, CloseReason.class, show);
        return form.answer(
                response,
                () -> {
                    jobs.close(id, form.version(), reason.orElseThrow().given());
                    return "redirect:/jobs/" + id + "?said=job-closed";
                },
                refused -> told(form, CloseReason.class, refused),
                () -> view.page(id, form, show, model));
    }

    @PostMapping("/reopen")
    String reopen(
            @PathVariable UUID id,
            @RequestParam MultiValueMap<String, String> typed,
            @ModelAttribute("show") Show show,
            Model model,
            HttpServletResponse response) {
        Form form = new Form(typed);
        Optional<ReopenReason> reason = reader.read(form, ReopenReason.class, show);
        return form.answer(
                response,
                () -> {
                    jobs.reopen(id, form.version(), reason.orElseThrow().reason());
                    return "redirect:/jobs/" + id + "?said=job-reopened";
                },
                refused -> told(form, ReopenReason.class, refused),
                () -> view.page(id, form, show, model));
    }

    private void told(Form form, Class<?> record, Refused refused) {
        switch (refused.type()) {
            case VERSION_CHANGED -> reader.wrong(form, "form", "jobs.job.changed-meanwhile");
            case FAULT_UNDECIDED ->
                reader.wrong(form, "reason", "jobs.entry.close-reason.undecided", String.valueOf(refused.getMessage()));
            case NOT_FOUND -> throw refused;
            default -> reader.refuse(form, record, refused);
        }
    }
}
