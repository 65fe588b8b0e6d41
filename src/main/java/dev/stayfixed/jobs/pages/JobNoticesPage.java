package dev.stayfixed.jobs.pages;

import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.telling.EventKind;
import dev.stayfixed.telling.FollowUps;
import dev.stayfixed.telling.JobNotices;
import dev.stayfixed.telling.Notices;
import dev.stayfixed.web.pages.Form;
import dev.stayfixed.web.pages.SentOnce;
import dev.stayfixed.web.pages.Show;
import dev.stayfixed.web.pages.TechnicianPage;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.UUID;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** Who is told about one job, and what was promised in it. */
@Hidden
@TechnicianPage
@RequestMapping("/jobs/{id}")
class JobNoticesPage {

    private final Notices notices;
    private final FollowUps followUps;
    private final JobView view;
    private final SentOnce once;

    JobNoticesPage(Notices notices, FollowUps followUps, JobView view, SentOnce once) {
        this.once = once;
        this.notices = notices;
        this.followUps = followUps;
        this.view = view;
    }

    @PostMapping("/notices")
    String change(
            @PathVariable UUID id,
            @RequestParam MultiValueMap<String, String> typed,
            @ModelAttribute("show") Show show,
            Model model,
            HttpServletResponse response) {
        Form form = new Form(typed);
        JobNotices now = notices.ofJob(id);
        JobNotices wanted = wanted(form, now);
        return form.answer(
                response,
                () -> {
                    notices.change(id, form.version(), wanted);
                    return "redirect:/jobs/" + id + "?said=settings-saved#told";
                },
                refused -> {
                    if (refused.type() != ProblemType.VERSION_CHANGED) {
                        throw refused;
                    }
                    form.changedMeanwhile(now.version());
                },
                () -> view.page(id, form, show, model));
    }

    private static JobNotices wanted(Form form, JobNotices now) {
        Optional<Integer> days = form.whole("silentDays", "Days without a drive", 1, 365);
        return new JobNotices(
                0,
                form.email("technicianEmail", "Technician’s mail address"),
                form.email("driverEmail", "Driver’s mail address"),
                muted(form.has("mute", "technician"), now.technicianKinds()),
                muted(form.has("mute", "driver"), now.driverKinds()),
                days.map(OptionalInt::of).orElse(OptionalInt.empty()),
                false);
    }

    /** Muted is told of nothing; not muted any more follows the shop again. A choice made by a program stays. */
    private static Optional<Set<EventKind>> muted(boolean mute, Optional<Set<EventKind>> now) {
        return mute ? Optional.of(Set.of()) : now.filter(kinds -> !kinds.isEmpty());
    }

    @PostMapping("/follow-ups")
    String promise(
            @PathVariable UUID id,
            @RequestParam MultiValueMap<String, String> typed,
            @ModelAttribute("show") Show show,
            Model model,
            HttpServletResponse response) {
        Form form = new Form(typed);
        Optional<Instant> due = form.coming("dueAt", "Promised for", show.zone(), show.now());
        String note = form.required("promise", "What was promised", 500, "say it in a few words");
        return form.answer(
                response,
                () -> once.lead(form, () -> {
                    followUps.promise(id, due.get(), note);
                    return "redirect:/jobs/" + id + "?said=promised#promises";
                }),
                refused -> form.refused(refused, Map.of()),
                () -> view.page(id, form, show, model));
    }

    @PostMapping("/follow-ups/{promiseId}/done")
    String done(@PathVariable UUID id, @PathVariable UUID promiseId) {
        followUps.done(id, promiseId);
        return "redirect:/jobs/" + id + "?said=promise-kept#promises";
    }

    /** What is known, into the fields. */
    static void show(JobNotices now, Form form) {
        form.putIfMissing("technicianEmail", now.technicianEmail().orElse(""));
        form.putIfMissing("driverEmail", now.driverEmail().orElse(""));
        form.putIfMissing(
                "silentDays",
                now.silentDays().isPresent() ? String.valueOf(now.silentDays().getAsInt()) : "");
    }
}
