package dev.stayfixed.judging.pages;

import dev.stayfixed.drive.condition.Condition;
import dev.stayfixed.drive.condition.ConditionSet;
import dev.stayfixed.drive.condition.TypicalCondition;
import dev.stayfixed.drive.condition.TypicalConditions;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.jobs.AgreedConditions;
import dev.stayfixed.jobs.ConditionsOfFaults;
import dev.stayfixed.jobs.FaultConditions;
import dev.stayfixed.jobs.Job;
import dev.stayfixed.jobs.Jobs;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Unit;
import dev.stayfixed.verification.RecordedConditions.Origin;
import dev.stayfixed.web.pages.Form;
import dev.stayfixed.web.pages.Show;
import dev.stayfixed.web.pages.TechnicianPage;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** What the monitor of a fault needs before it runs, taken from the service information of the vehicle. */
@Hidden
@TechnicianPage
@RequestMapping("/jobs/{jobId}/faults/{faultId}/conditions")
class ConditionsPage {

    private static final int MOST = 30;

    private final ConditionsOfFaults conditions;
    private final Jobs jobs;

    ConditionsPage(ConditionsOfFaults conditions, Jobs jobs) {
        this.conditions = conditions;
        this.jobs = jobs;
    }

    /** A signal to choose, with the unit in which this shop writes it. */
    record Choice(String name, String words, boolean temperature) {}

    /** Where the figures are from, and what they are. */
    record Told(String source, List<String> words) {

        static Told of(AgreedConditions agreed, Show show) {
            Part origin = agreed.origin() == Origin.SERVICE_INFORMATION
                    ? ConditionsWord.FROM_SERVICE_INFORMATION
                    : ConditionsWord.FROM_TYPICAL;
            Part from = agreed.source().isEmpty()
                    ? origin
                    : Reason.of(ConditionsWord.FROM_SOURCE, origin, Part.verbatim(agreed.source()));
            return new Told(show.words(from), words(agreed.set(), show));
        }

        static Told of(TypicalCondition typical, Show show) {
            return new Told(show.words(typical.source()), words(typical.set(), show));
        }

        private static List<String> words(ConditionSet set, Show show) {
            return set.conditions().stream()
                    .map(condition -> show.words(condition.said()))
                    .toList();
        }
    }

    @GetMapping
    String show(@PathVariable UUID jobId, @PathVariable UUID faultId, @ModelAttribute("show") Show show, Model model) {
        FaultConditions fault = conditions.get(jobId, faultId);
        Form form = Form.empty().put("version", String.valueOf(fault.jobVersion()));
        fault.agreed().ifPresent(agreed -> {
            ConditionRows.fill(form, agreed.set(), show);
            form.put("source", agreed.origin() == Origin.SERVICE_INFORMATION ? agreed.source() : "");
        });
        return page(fault, form, show, model);
    }

    /** One more row; stores nothing. */
    @PostMapping(params = "do=row")
    String moreRows(
            @PathVariable UUID jobId,
            @PathVariable UUID faultId,
            @RequestParam MultiValueMap<String, String> typed,
            @ModelAttribute("show") Show show,
            Model model) {
        Form form = new Form(typed);
        ConditionRows.addRow(form);
        return page(conditions.get(jobId, faultId), form, show, model);
    }

    /** Puts the typical figures into the rows, to be corrected; stores nothing. */
    @PostMapping(params = "do=typical")
    String fromTypical(
            @PathVariable UUID jobId,
            @PathVariable UUID faultId,
            @RequestParam MultiValueMap<String, String> typed,
            @ModelAttribute("show") Show show,
            Model model) {
        Form form = new Form(typed);
        FaultConditions fault = conditions.get(jobId, faultId);
        typical(fault).ifPresent(typical -> ConditionRows.fill(form, typical.set(), show));
        return page(fault, form, show, model);
    }

    @PostMapping(params = "do=adopt")
    String adopt(
            @PathVariable UUID jobId,
            @PathVariable UUID faultId,
            @RequestParam MultiValueMap<String, String> typed,
            @ModelAttribute("show") Show show,
            Model model,
            HttpServletResponse response) {
        Form form = new Form(typed);
        Optional<AgreedConditions> adopted = typical(conditions.get(jobId, faultId))
                .map(typical ->
                        new AgreedConditions(typical.set(), Origin.TYPICAL_ADOPTED, show.words(typical.source())));
        if (adopted.isEmpty()) {
            form.wrong("form", "There are no typical figures for this monitor; enter those of the service information");
        }
        return keep(jobId, faultId, adopted, form, show, model, response);
    }

    @PostMapping
    String save(
            @PathVariable UUID jobId,
            @PathVariable UUID faultId,
            @RequestParam MultiValueMap<String, String> typed,
            @ModelAttribute("show") Show show,
            Model model,
            HttpServletResponse response) {
        Form form = new Form(typed);
        String code = conditions.get(jobId, faultId).code().text();
        String source =
                form.required("source", "Service information", 300, "say which, for example its title and section");
        List<Condition> each = ConditionRows.read(form, show);
        if (!form.isWrong() && (each.isEmpty() || each.size() > MOST)) {
            form.wrong("kind0", "Conditions: found " + each.size() + ", 1 to " + MOST + " are wanted");
        }
        Optional<AgreedConditions> agreed = form.isWrong()
                ? Optional.empty()
                : Optional.of(new AgreedConditions(
                        new ConditionSet(code, form.has("inOrder", "yes"), each), Origin.SERVICE_INFORMATION, source));
        return keep(jobId, faultId, agreed, form, show, model, response);
    }

    private String keep(
            UUID jobId,
            UUID faultId,
            Optional<AgreedConditions> agreed,
            Form form,
            Show show,
            Model model,
            HttpServletResponse response) {
        return form.answer(
                response,
                () -> {
                    conditions.replace(jobId, faultId, form.version(), agreed.get());
                    return "redirect:/jobs/" + jobId + "?said=conditions-saved";
                },
                refused -> {
                    if (refused.type() == ProblemType.VERSION_CHANGED) {
                        form.changedMeanwhile(conditions.get(jobId, faultId).jobVersion());
                    } else {
                        form.refused(refused, Map.of());
                    }
                },
                () -> page(conditions.get(jobId, faultId), form, show, model));
    }

    private static Optional<TypicalCondition> typical(FaultConditions fault) {
        return TypicalConditions.of(fault.code(), fault.group());
    }

    private String page(FaultConditions fault, Form form, Show show, Model model) {
        Job job = jobs.get(fault.jobId());
        model.addAttribute("job", job);
        model.addAttribute("fault", fault);
        model.addAttribute("code", fault.code().text());
        model.addAttribute("group", show.words(fault.group()));
        model.addAttribute("isOpen", job.state() == Job.State.OPEN);
        model.addAttribute("form", form);
        model.addAttribute("withFault", statedWithFault(job, fault.faultId(), show));
        model.addAttribute("rows", ConditionRows.numbers(form));
        model.addAttribute("kinds", ConditionKind.values());
        model.addAttribute("signals", signals(show));
        model.addAttribute(
                "agreed", fault.agreed().map(agreed -> Told.of(agreed, show)).orElse(null));
        model.addAttribute(
                "typical", typical(fault).map(typical -> Told.of(typical, show)).orElse(null));
        return "conditions";
    }

    /** Limits that came with the fault: a summary of a drive can meet them. */
    private static List<String> statedWithFault(Job job, UUID faultId, Show show) {
        return job.faults().stream()
                .filter(fault -> fault.id().equals(faultId))
                .flatMap(fault -> fault.terms().enablingConditions().stream())
                .map(condition -> show.words(condition.said()))
                .toList();
    }

    private static List<Choice> signals(Show show) {
        return Stream.of(Signal.values())
                .map(signal -> new Choice(
                        signal.name(),
                        show.words(Reason.of(ConditionsWord.SIGNAL_IN, signal, Part.verbatim(show.unit(signal)))),
                        Unit.of(signal.unit()) == Unit.CELSIUS))
                .toList();
    }
}
