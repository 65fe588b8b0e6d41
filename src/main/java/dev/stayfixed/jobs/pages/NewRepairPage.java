package dev.stayfixed.jobs.pages;

import dev.stayfixed.customer.DriverLinks;
import dev.stayfixed.jobs.Job;
import dev.stayfixed.jobs.Jobs;
import dev.stayfixed.jobs.Repair;
import dev.stayfixed.jobs.Vehicles;
import dev.stayfixed.jobs.entry.RepairEntry;
import dev.stayfixed.web.pages.Form;
import dev.stayfixed.web.pages.SentOnce;
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

/** Recording a repair, with what was measured at the bench before and after it. The next step is to hand the drive over. */
@Hidden
@TechnicianPage
@RequestMapping("/jobs/{id}/repairs/new")
class NewRepairPage {

    private final Jobs jobs;
    private final Vehicles vehicles;
    private final RepairForm repairs;
    private final DriverLinks links;
    private final SentOnce once;

    NewRepairPage(Jobs jobs, Vehicles vehicles, RepairForm repairs, DriverLinks links, SentOnce once) {
        this.links = links;
        this.jobs = jobs;
        this.vehicles = vehicles;
        this.repairs = repairs;
        this.once = once;
    }

    @GetMapping
    String empty(@PathVariable UUID id, @ModelAttribute("show") Show show, Model model) {
        Form form = Form.empty().put("performedAt", show.field(show.now()));
        form.putAll(
                "faultIds",
                jobs.get(id).faults().stream().map(f -> f.id().toString()).toList());
        return page(id, form, show, model);
    }

    /** Other rows of measurements; stores nothing. */
    @PostMapping(params = "do")
    String otherRows(
            @PathVariable UUID id,
            @RequestParam MultiValueMap<String, String> typed,
            @ModelAttribute("show") Show show,
            Model model,
            HttpServletResponse response) {
        Form form = new Form(typed);
        repairs.arrange(form, show, response);
        return page(id, form, show, model);
    }

    @PostMapping
    String record(
            @PathVariable UUID id,
            @RequestParam MultiValueMap<String, String> typed,
            @ModelAttribute("show") Show show,
            Model model,
            HttpServletResponse response) {
        Form form = new Form(typed);
        Optional<RepairEntry> entry = repairs.read(form, jobs.get(id), show);
        repairs.refuseWithoutFault(form);
        Optional<Repair.Details> details = entry.flatMap(repair -> repairs.details(form, repair, show));
        return form.answer(
                response,
                () -> once.lead(form, () -> {
                    jobs.recordRepair(id, entry.orElseThrow().faultIdsOrAll(), details.orElseThrow());
                    return "redirect:/jobs/" + id + (links.handedOver(id).isPresent() ? "" : "/sheet")
                            + "?said=repair-recorded";
                }),
                refused -> repairs.refuse(form, refused),
                () -> page(id, form, show, model));
    }

    private String page(UUID id, Form form, Show show, Model model) {
        Job job = jobs.get(id);
        model.addAttribute("job", job);
        model.addAttribute("vehicle", vehicles.get(job.vehicleId()));
        repairs.show(form, job, show, model);
        return "repair-new";
    }
}
