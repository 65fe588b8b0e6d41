package dev.stayfixed.jobs.pages;

import dev.stayfixed.jobs.Job;
import dev.stayfixed.jobs.Jobs;
import dev.stayfixed.jobs.Vehicle;
import dev.stayfixed.jobs.Vehicles;
import dev.stayfixed.platform.Page;
import dev.stayfixed.web.pages.TechnicianPage;
import io.swagger.v3.oas.annotations.Hidden;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** The closed jobs, to find a report again, or to reopen one. */
@Hidden
@TechnicianPage
class ClosedPage {

    private static final int PAGE_SIZE = 25;

    private final Jobs jobs;
    private final Vehicles vehicles;

    ClosedPage(Jobs jobs, Vehicles vehicles) {
        this.jobs = jobs;
        this.vehicles = vehicles;
    }

    /** A job and its vehicle. Public for the templates. */
    public record Entry(Job job, Vehicle.Details vehicle) {}

    @GetMapping("/closed")
    String show(
            @RequestParam(defaultValue = "") String q,
            @RequestParam(required = false) @Nullable String after,
            Model model) {
        String text = q.length() > 100 ? q.substring(0, 100) : q;
        Page<Job> page = jobs.search(Optional.of(Job.State.CLOSED), text, Page.Request.of(PAGE_SIZE, after));
        Map<UUID, Vehicle> ofJobs =
                vehicles.get(page.items().stream().map(Job::vehicleId).collect(Collectors.toSet()));
        model.addAttribute("q", text);
        model.addAttribute(
                "page",
                page.map(job -> new Entry(
                        job, Objects.requireNonNull(ofJobs.get(job.vehicleId())).details())));
        return "closed";
    }
}
