package dev.stayfixed.judging.pages;

import dev.stayfixed.drive.Finding;
import dev.stayfixed.drive.running.RunCaution;
import dev.stayfixed.jobs.EngineCheck;
import dev.stayfixed.jobs.EngineCheck.Side;
import dev.stayfixed.jobs.EngineChecks;
import dev.stayfixed.jobs.Fault;
import dev.stayfixed.jobs.Job;
import dev.stayfixed.jobs.entry.EngineRunEntry;
import dev.stayfixed.jobs.entry.WithdrawalEntry;
import dev.stayfixed.judging.CaseFile;
import dev.stayfixed.judging.CaseFiles;
import dev.stayfixed.judging.CheckRuns;
import dev.stayfixed.judging.FaultCheck;
import dev.stayfixed.judging.RunPicture;
import dev.stayfixed.web.pages.Form;
import dev.stayfixed.web.pages.FormReader;
import dev.stayfixed.web.pages.Show;
import dev.stayfixed.web.pages.TechnicianPage;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** One check with the engine running: both runs in a sentence and as curves on one band, and which drives they are. */
@Hidden
@TechnicianPage
@RequestMapping("/jobs/{jobId}/checks/{checkId}")
class CheckPage {

    private final CaseFiles files;
    private final CheckRuns runs;
    private final EngineChecks checks;
    private final FormReader reader;

    CheckPage(CaseFiles files, CheckRuns runs, EngineChecks checks, FormReader reader) {
        this.files = files;
        this.runs = runs;
        this.checks = checks;
        this.reader = reader;
    }

    /** A run as it is read. */
    record Told(
            Side side,
            CheckWord word,
            String tone,
            @Nullable String reason,
            @Nullable UUID driveId,
            @Nullable Instant start) {

        static Told of(EngineCheck.Chosen run, Finding found, Show show) {
            CheckWord word =
                    found.isYes() ? CheckWord.INSIDE : found.isNo() ? CheckWord.OUTSIDE : CheckWord.DOES_NOT_TELL;
            return new Told(
                    run.side(),
                    word,
                    found.isYes() ? "good" : found.isNo() ? "bad" : "warn",
                    Show.capital(show.words(found.reason())),
                    run.driveId(),
                    run.start());
        }

        static Told none(Side side) {
            return new Told(side, CheckWord.NOT_CHOSEN, "quiet", null, null, null);
        }
    }

    /**
     * The drives of one side to choose from.
     *
     * @param chosen that is proposed; null where there is none
     */
    record Choice(
            Side side,
            List<CheckRuns.Candidate> drives,
            @Nullable UUID chosen,
            boolean isPrimary) {}

    @GetMapping
    String show(@PathVariable UUID jobId, @PathVariable UUID checkId, @ModelAttribute("show") Show show, Model model) {
        return page(jobId, checkId, Form.empty(), show, model);
    }

    @PostMapping("/runs")
    String choose(
            @PathVariable UUID jobId,
            @PathVariable UUID checkId,
            @RequestParam MultiValueMap<String, String> typed,
            @ModelAttribute("show") Show show,
            Model model,
            HttpServletResponse response) {
        Form form = new Form(typed);
        Optional<EngineRunEntry> entry = reader.read(form, EngineRunEntry.class, show);
        return form.answer(
                response,
                () -> {
                    EngineRunEntry run = entry.orElseThrow();
                    runs.choose(jobId, checkId, run.side(), run.driveId());
                    return "redirect:/jobs/" + jobId + "/checks/" + checkId;
                },
                refused -> reader.refuse(form, EngineRunEntry.class, refused),
                () -> page(jobId, checkId, form, show, model));
    }

    @PostMapping("/withdrawn")
    String withdraw(
            @PathVariable UUID jobId,
            @PathVariable UUID checkId,
            @RequestParam MultiValueMap<String, String> typed,
            @ModelAttribute("show") Show show,
            Model model,
            HttpServletResponse response) {
        Form form = new Form(typed);
        Optional<WithdrawalEntry> entry = reader.read(form, WithdrawalEntry.class, show);
        return form.answer(
                response,
                () -> {
                    checks.withdraw(jobId, checkId, entry.orElseThrow().reason().strip());
                    return "redirect:/jobs/" + jobId + "/checks/" + checkId;
                },
                refused -> reader.refuse(form, WithdrawalEntry.class, refused),
                () -> page(jobId, checkId, form, show, model));
    }

    private String page(UUID jobId, UUID checkId, Form form, Show show, Model model) {
        CaseFile file = files.ofJob(jobId);
        Job job = file.job(jobId);
        FaultCheck check = file.check(jobId, checkId);
        boolean isOpen = job.state() == Job.State.OPEN && check.counts();
        model.addAttribute("job", job);
        model.addAttribute("form", form);
        model.addAttribute("check", check);
        model.addAttribute("code", code(job, check.stated().faultId()));
        model.addAttribute(
                "told",
                List.of(
                        told(check, Side.BEFORE, check.runs().foundBefore(), show),
                        told(check, Side.AFTER, check.runs().foundAfter(), show)));
        model.addAttribute("drawn", RunPicture.of(check.runs()).orElse(null));
        model.addAttribute(
                "replaced",
                check.stated().replaced().stream()
                        .map(run -> Told.of(run, check.stated().check().judge(run.run()), show))
                        .toList());
        model.addAttribute("choices", isOpen ? choices(jobId, check) : List.of());
        model.addAttribute("isOpen", isOpen);
        model.addAttribute("cautions", RunCaution.values());
        return "check";
    }

    private static Told told(FaultCheck check, Side side, Optional<Finding> found, Show show) {
        return found.flatMap(finding -> check.stated().latest(side).map(run -> Told.of(run, finding, show)))
                .orElseGet(() -> Told.none(side));
    }

    /** The first side that still lacks a run is the thing to do. */
    private List<Choice> choices(UUID jobId, FaultCheck check) {
        List<Choice> choices = new ArrayList<>();
        for (Side side : Side.values()) {
            if (side == Side.BEFORE || check.repaired().isPresent()) {
                List<CheckRuns.Candidate> drives = runs.candidates(jobId, check, side);
                boolean isPrimary = isLacking(check, side)
                        && !drives.isEmpty()
                        && choices.stream().noneMatch(Choice::isPrimary);
                choices.add(new Choice(side, drives, proposed(check, side, drives), isPrimary));
            }
        }
        return choices;
    }

    /** What was chosen, or the suited drive that lies nearest to the repair. */
    private static @Nullable UUID proposed(FaultCheck check, Side side, List<CheckRuns.Candidate> drives) {
        return check.stated()
                .latest(side)
                .map(EngineCheck.Chosen::driveId)
                .or(() -> drives.stream()
                        .filter(CheckRuns.Candidate::isSuited)
                        .map(CheckRuns.Candidate::driveId)
                        .findFirst())
                .orElse(null);
    }

    private static boolean isLacking(FaultCheck check, Side side) {
        return (side == Side.BEFORE ? check.runs().before() : check.runs().after()).isEmpty();
    }

    private static String code(Job job, UUID faultId) {
        return job.faults().stream()
                .filter(fault -> fault.id().equals(faultId))
                .map(Fault::terms)
                .map(terms -> terms.code().text())
                .findFirst()
                .orElse("");
    }
}
