package dev.stayfixed.jobs.pages;

import dev.stayfixed.jobs.Fault;
import dev.stayfixed.jobs.Job;
import dev.stayfixed.jobs.Jobs;
import dev.stayfixed.jobs.Repair;
import dev.stayfixed.jobs.Vehicles;
import dev.stayfixed.verification.bench.BenchCheck;
import dev.stayfixed.web.pages.Form;
import dev.stayfixed.web.pages.SentOnce;
import dev.stayfixed.web.pages.Show;
import dev.stayfixed.web.pages.TechnicianPage;
import dev.stayfixed.web.pages.TickedScan;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** Recording a repair, with what was measured at the bench before and after it. */
@Hidden
@TechnicianPage
@RequestMapping("/jobs/{id}/repairs/new")
class NewRepairPage {

    private static final int LONGEST_SCAN = 1_000_000;

    static final String BEFORE = "before";
    static final String AFTER = "after";

    private final Jobs jobs;
    private final Vehicles vehicles;
    private final SentOnce once;

    NewRepairPage(Jobs jobs, Vehicles vehicles, SentOnce once) {
        this.once = once;
        this.jobs = jobs;
        this.vehicles = vehicles;
    }

    @GetMapping
    String empty(@PathVariable UUID id, @ModelAttribute("show") Show show, Model model) {
        Form form = Form.empty().put("performedAt", show.field(show.now()));
        form.putAll(
                "fault",
                jobs.get(id).faults().stream().map(f -> f.id().toString()).toList());
        return page(id, form, model);
    }

    /** One more row of measurements; stores nothing. */
    @PostMapping(params = "do=row")
    String moreRows(@PathVariable UUID id, @RequestParam MultiValueMap<String, String> typed, Model model) {
        Form form = new Form(typed);
        MeasurementRows.addRow(form);
        return page(id, form, model);
    }

    @PostMapping
    String record(
            @PathVariable UUID id,
            @RequestParam MultiValueMap<String, String> typed,
            @ModelAttribute("show") Show show,
            Model model,
            HttpServletResponse response) {
        Form form = new Form(typed);
        Set<UUID> faults = faults(form, jobs.get(id));
        Repair.Details details = details(form, show, jobs.get(id));
        return form.answer(
                response,
                () -> once.lead(form, () -> {
                    jobs.recordRepair(id, faults, details);
                    return "redirect:/jobs/" + id + "?said=repair-recorded";
                }),
                refused -> form.refused(refused, Map.of("faultIds", "fault")),
                () -> page(id, form, model));
    }

    private static Set<UUID> faults(Form form, Job job) {
        Set<UUID> chosen = new HashSet<>();
        for (Fault fault : job.faults()) {
            if (form.has("fault", fault.id().toString())) {
                chosen.add(fault.id());
            }
        }
        if (chosen.isEmpty()) {
            form.wrong("fault", "Faults: choose at least one that this repair was meant to cure");
        }
        return chosen;
    }

    static Repair.Details details(Form form, Show show, Job job) {
        String description =
                form.required("description", "What was done", 2000, "say what was repaired, replaced or cleaned");
        Instant at =
                form.past("performedAt", "Done at", show.zone(), show.now()).orElse(show.now());
        List<String> parts = form.text("parts", "Parts", 10_000).stream()
                .flatMap(String::lines)
                .map(String::strip)
                .filter(line -> !line.isEmpty())
                .toList();
        if (parts.size() > 100 || parts.stream().anyMatch(part -> part.length() > 200)) {
            form.wrong("parts", "Parts: at most 100 lines of at most 200 characters fit");
        }
        return new Repair.Details(
                at,
                description,
                parts,
                form.text("technician", "Technician", 100),
                form.has("codesCleared", "yes"),
                ticks(BEFORE, job).below(scan(form, "scanBefore", "Scan before"), form),
                ticks(AFTER, job).below(scan(form, "scanAfter", "Scan after"), form),
                MeasurementRows.read(form));
    }

    static TickedScan ticks(String prefix, Job job) {
        return TickedScan.of(prefix, job.faults());
    }

    private static Optional<String> scan(Form form, String field, String label) {
        return form.text(field, label, LONGEST_SCAN);
    }

    private String page(UUID id, Form form, Model model) {
        Job job = jobs.get(id);
        model.addAttribute("job", job);
        model.addAttribute("vehicle", vehicles.get(job.vehicleId()));
        model.addAttribute("form", form);
        model.addAttribute("ticksBefore", ticks(BEFORE, job));
        model.addAttribute("ticksAfter", ticks(AFTER, job));
        model.addAttribute("checks", BenchCheck.values());
        model.addAttribute("rows", MeasurementRows.numbers(form));
        return "repair-new";
    }
}
