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
import dev.stayfixed.judging.entry.ConditionsEntry;
import dev.stayfixed.platform.Given;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Unit;
import dev.stayfixed.verification.RecordedConditions.Origin;
import dev.stayfixed.web.pages.Form;
import dev.stayfixed.web.pages.FormReader;
import dev.stayfixed.web.pages.Show;
import dev.stayfixed.web.pages.TechnicianPage;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
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

    private final ConditionsOfFaults conditions;
    private final Jobs jobs;
    private final FormReader reader;

    ConditionsPage(ConditionsOfFaults conditions, Jobs jobs, FormReader reader) {
        this.reader = reader;
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

    private Told told(AgreedConditions agreed, Show show) {
        String key = agreed.origin() == Origin.SERVICE_INFORMATION
                ? "judging.conditions.by-service-information"
                : "judging.conditions.by-typical-figures";
        String source = agreed.source().isEmpty() ? "" : ": " + agreed.source();
        return new Told(reader.text(key) + source, Told.words(agreed.set(), show));
    }

    @GetMapping
    String show(@PathVariable UUID jobId, @PathVariable UUID faultId, @ModelAttribute("show") Show show, Model model) {
        FaultConditions fault = conditions.get(jobId, faultId);
        Form form = Form.empty().put("version", String.valueOf(fault.jobVersion()));
        fault.agreed().ifPresent(agreed -> {
            ConditionRows.fill(form, reader, agreed.set(), show);
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
        typical(fault).ifPresent(typical -> ConditionRows.fill(form, reader, typical.set(), show));
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
            reader.wrong(form, "form", "judging.conditions.no-typical-figures");
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
        Optional<ConditionsEntry> entry = reader.read(form, ConditionsEntry.class, show);
        if (form.isBlank("source")) {
            reader.wrong(form, "source", "judging.entry.conditions.source.none");
        }
        List<Condition> each = ConditionRows.read(form, reader, show);
        if (!form.isWrong() && (each.isEmpty() || each.size() > ConditionsEntry.MOST)) {
            reader.wrong(form, "kind0", "judging.conditions.so-many", each.size(), ConditionsEntry.MOST);
        }
        Optional<AgreedConditions> agreed = entry.filter(said -> !form.isWrong())
                .map(said -> new AgreedConditions(
                        new ConditionSet(code, Boolean.TRUE.equals(said.inOrder()), each),
                        Origin.SERVICE_INFORMATION,
                        Given.optional(said.source()).orElse("")));
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
                    conditions.replace(jobId, faultId, form.version(), agreed.orElseThrow());
                    return "redirect:/jobs/" + jobId + "?said=conditions-saved";
                },
                refused -> {
                    if (refused.type() == ProblemType.VERSION_CHANGED) {
                        reader.changedMeanwhile(
                                form, conditions.get(jobId, faultId).jobVersion());
                    } else {
                        reader.refuse(form, ConditionsEntry.class, refused);
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
                "agreed", fault.agreed().map(agreed -> told(agreed, show)).orElse(null));
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
