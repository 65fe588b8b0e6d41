package dev.stayfixed.jobs.pages;

import dev.stayfixed.jobs.Jobs;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.web.pages.Form;
import dev.stayfixed.web.pages.Show;
import dev.stayfixed.web.pages.TechnicianPage;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Map;
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

    JobPage(Jobs jobs, JobView view) {
        this.jobs = jobs;
        this.view = view;
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
        Optional<String> reason = form.text("reason", "Reason", 2000);
        return form.answer(
                response,
                () -> {
                    jobs.close(id, form.version(), reason);
                    return "redirect:/jobs/" + id + "?said=job-closed";
                },
                refused -> told(form, "reason", refused),
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
        String reason = form.required("reopenReason", "Reason", 2000, "say why the job is opened again");
        return form.answer(
                response,
                () -> {
                    jobs.reopen(id, form.version(), reason);
                    return "redirect:/jobs/" + id + "?said=job-reopened";
                },
                refused -> told(form, "reopenReason", refused),
                () -> view.page(id, form, show, model));
    }

    private static void told(Form form, String field, Refused refused) {
        switch (refused.type()) {
            case VERSION_CHANGED ->
                form.wrong(
                        "form",
                        "Something in this job changed while you had it open, and nothing was done. Look at it again below, then"
                                + " repeat what you wanted.");
            case FAULT_UNDECIDED ->
                form.wrong(
                        field,
                        "Reason: " + refused.getMessage()
                                + ". It stands in the report, so that everybody sees what was not" + " proven.");
            case NOT_FOUND -> throw refused;
            default -> form.refused(refused, Map.of());
        }
    }
}
