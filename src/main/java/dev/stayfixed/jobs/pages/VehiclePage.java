package dev.stayfixed.jobs.pages;

import dev.stayfixed.intake.Intake;
import dev.stayfixed.jobs.Jobs;
import dev.stayfixed.jobs.Vehicles;
import dev.stayfixed.platform.Page;
import dev.stayfixed.web.pages.TechnicianPage;
import io.swagger.v3.oas.annotations.Hidden;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;

/** One vehicle: its jobs and its drives. */
@Hidden
@TechnicianPage
class VehiclePage {

    private final Vehicles vehicles;
    private final Jobs jobs;
    private final Intake intake;

    VehiclePage(Vehicles vehicles, Jobs jobs, Intake intake) {
        this.vehicles = vehicles;
        this.jobs = jobs;
        this.intake = intake;
    }

    @GetMapping("/vehicles/{id}")
    String show(@PathVariable UUID id, @RequestParam(required = false) @Nullable String after, Model model) {
        model.addAttribute("vehicle", vehicles.get(id));
        model.addAttribute("jobs", jobs.ofVehicle(id));
        model.addAttribute("drives", intake.ofVehicle(id, Page.Request.of(20, after)));
        return "vehicle";
    }
}
