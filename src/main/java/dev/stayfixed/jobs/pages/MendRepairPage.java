package dev.stayfixed.jobs.pages;

import dev.stayfixed.jobs.Job;
import dev.stayfixed.jobs.Jobs;
import dev.stayfixed.jobs.Repair;
import dev.stayfixed.jobs.Vehicles;
import dev.stayfixed.jobs.entry.RepairCorrection;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.web.pages.Form;
import dev.stayfixed.web.pages.FormReader;
import dev.stayfixed.web.pages.Show;
import dev.stayfixed.web.pages.TechnicianPage;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Instant;
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

/** Putting the record of a repair right: the form of a repair, filled in with what stands in it. */
@Hidden
@TechnicianPage
@RequestMapping("/jobs/{id}/repairs/{repairId}/mend")
class MendRepairPage {

    private final Jobs jobs;
    private final Vehicles vehicles;
    private final RepairForm repairs;
    private final FormReader reader;

    MendRepairPage(Jobs jobs, Vehicles vehicles, RepairForm repairs, FormReader reader) {
        this.jobs = jobs;
        this.vehicles = vehicles;
        this.repairs = repairs;
        this.reader = reader;
    }

    @GetMapping
    String asItStands(
            @PathVariable UUID id, @PathVariable UUID repairId, @ModelAttribute("show") Show show, Model model) {
        Job job = jobs.get(id);
        Repair.Details stands = repair(job, repairId).details();
        Form form = Form.empty()
                .put("version", String.valueOf(job.version()))
                .put("performedAt", show.field(stands.performedAt()))
                .put("description", stands.description())
                .put("parts", String.join("\n", stands.parts()))
                .put("technician", stands.technician().orElse(""))
                .put("codesCleared", stands.codesCleared() ? "yes" : "")
                .put("scanBefore", stands.scanBefore().orElse(""))
                .put("scanAfter", stands.scanAfter().orElse(""));
        MeasurementRows.show(form, stands.measurements());
        return page(job, repairId, form, show, model);
    }

    /** Other rows of measurements; stores nothing. */
    @PostMapping(params = "do")
    String otherRows(
            @PathVariable UUID id,
            @PathVariable UUID repairId,
            @RequestParam MultiValueMap<String, String> typed,
            @ModelAttribute("show") Show show,
            Model model,
            HttpServletResponse response) {
        Form form = new Form(typed);
        repairs.arrange(form, show, response);
        return page(jobs.get(id), repairId, form, show, model);
    }

    @PostMapping
    String mend(
            @PathVariable UUID id,
            @PathVariable UUID repairId,
            @RequestParam MultiValueMap<String, String> typed,
            @ModelAttribute("show") Show show,
            Model model,
            HttpServletResponse response) {
        Form form = new Form(typed);
        repairs.refuseWithoutTime(form);
        Optional<Repair.Details> typedIn =
                repairs.read(form, jobs.get(id), show).flatMap(entry -> repairs.details(form, entry, show));
        Optional<Repair.Correction> correction = reader.read(
                        MeasurementRows.withWords(form), RepairCorrection.class, show)
                .map(RepairCorrection::correction);
        return form.answer(
                response,
                () -> {
                    jobs.correctRepair(
                            id,
                            repairId,
                            form.version(),
                            correction.orElseThrow(),
                            stands -> asMeant(stands, typedIn.orElseThrow(), form, show));
                    return "redirect:/jobs/" + id + "?said=repair-mended";
                },
                refused -> refused(form, refused, jobs.get(id)),
                () -> page(jobs.get(id), repairId, form, show, model));
    }

    private void refused(Form form, Refused refused, Job present) {
        switch (refused.type()) {
            case VERSION_CHANGED -> reader.changedMeanwhile(form, present.version());
            case NOT_FOUND -> throw refused;
            default -> repairs.refuse(form, refused);
        }
    }

    /** What a form cannot say stays: the seconds of a time, the line ends of a scan. */
    private static Repair.Details asMeant(Repair.Details stands, Repair.Details typed, Form form, Show show) {
        Instant at = show.field(stands.performedAt()).equals(form.value("performedAt"))
                ? stands.performedAt()
                : typed.performedAt();
        return new Repair.Details(
                at,
                typed.description(),
                typed.parts(),
                typed.technician(),
                typed.codesCleared(),
                sameLines(stands.scanBefore(), typed.scanBefore()),
                sameLines(stands.scanAfter(), typed.scanAfter()),
                typed.measurements());
    }

    private static Optional<String> sameLines(Optional<String> stands, Optional<String> typed) {
        boolean same = stands.map(String::strip)
                .map(text -> text.lines().toList())
                .equals(typed.map(String::strip).map(text -> text.lines().toList()));
        return same ? stands : typed;
    }

    private static Repair repair(Job job, UUID repairId) {
        return job.repairs().stream()
                .filter(repair -> repair.id().equals(repairId))
                .findFirst()
                .orElseThrow(() -> Refused.notFound("repair of this job", repairId));
    }

    private String page(Job job, UUID repairId, Form form, Show show, Model model) {
        model.addAttribute("job", job);
        model.addAttribute("mended", repair(job, repairId));
        model.addAttribute("vehicle", vehicles.get(job.vehicleId()));
        repairs.show(form, job, show, model);
        return "repair-new";
    }
}
