package dev.stayfixed.jobs.pages;

import dev.stayfixed.platform.Texts;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.telling.EventKind;
import dev.stayfixed.telling.FollowUps;
import dev.stayfixed.telling.JobNotices;
import dev.stayfixed.telling.Notices;
import dev.stayfixed.telling.entry.FollowUpEntry;
import dev.stayfixed.telling.entry.JobNoticesEntry;
import dev.stayfixed.telling.entry.MailAddressField;
import dev.stayfixed.web.pages.Form;
import dev.stayfixed.web.pages.FormReader;
import dev.stayfixed.web.pages.SentOnce;
import dev.stayfixed.web.pages.Show;
import dev.stayfixed.web.pages.TechnicianPage;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
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

    /** Nobody promises anything for later; it is a slip of the pen. */
    private static final Duration FARTHEST = Duration.ofDays(5 * 365);

    private final Notices notices;
    private final FollowUps followUps;
    private final JobView view;
    private final SentOnce once;
    private final FormReader reader;
    private final Texts texts;

    JobNoticesPage(Notices notices, FollowUps followUps, JobView view, SentOnce once, FormReader reader, Texts texts) {
        this.once = once;
        this.reader = reader;
        this.texts = texts;
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
        Optional<JobNotices> wanted = wanted(form, now, show);
        return form.answer(
                response,
                () -> {
                    notices.change(id, form.version(), wanted.orElseThrow());
                    return "redirect:/jobs/" + id + "?said=settings-saved#told";
                },
                refused -> {
                    if (refused.type() != ProblemType.VERSION_CHANGED) {
                        throw refused;
                    }
                    reader.changedMeanwhile(form, now.version());
                },
                () -> view.page(id, form, show, model));
    }

    private Optional<JobNotices> wanted(Form form, JobNotices now, Show show) {
        for (String field : List.of("technicianEmail", "driverEmail")) {
            reader.made(form, JobNoticesEntry.class, () -> MailAddressField.optional(field, form.value(field)));
        }
        return reader.read(form, JobNoticesEntry.class, show)
                .flatMap(entry -> reader.made(form, JobNoticesEntry.class, entry::notices))
                .map(typed -> new JobNotices(
                        0,
                        typed.technicianEmail(),
                        typed.driverEmail(),
                        typed.driverLanguage(),
                        muted(form.has("mute", "technician"), now.technicianKinds()),
                        muted(form.has("mute", "driver"), now.driverKinds()),
                        typed.silentDays(),
                        false));
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
        Optional<FollowUpEntry> promise = reader.read(form, FollowUpEntry.class, show);
        promise.filter(p -> !isToCome(p.dueAt(), show.now()))
                .ifPresent(p -> reader.wrongAt(form, FollowUpEntry.class, "dueAt", texts.of("jobs.job.to-come")));
        return form.answer(
                response,
                () -> once.lead(form, () -> {
                    followUps.promise(
                            id,
                            promise.orElseThrow().dueAt(),
                            promise.orElseThrow().note());
                    return "redirect:/jobs/" + id + "?said=promised#promises";
                }),
                refused -> reader.refuse(form, FollowUpEntry.class, refused),
                () -> view.page(id, form, show, model));
    }

    private static boolean isToCome(Instant due, Instant now) {
        return !due.isBefore(now.minus(Duration.ofDays(1))) && due.isBefore(now.plus(FARTHEST));
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
        form.putIfMissing("driverLanguage", now.driverLanguage().orElse(""));
        form.putIfMissing(
                "silentDays",
                now.silentDays().isPresent() ? String.valueOf(now.silentDays().getAsInt()) : "");
    }
}
