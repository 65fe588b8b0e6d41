package dev.stayfixed.jobs.pages;

import dev.stayfixed.jobs.Job;
import dev.stayfixed.jobs.Jobs;
import dev.stayfixed.jobs.Vehicle;
import dev.stayfixed.jobs.Vehicles;
import dev.stayfixed.jobs.entry.JobEntry;
import dev.stayfixed.jobs.entry.VehicleEntry;
import dev.stayfixed.obd.Ignition;
import dev.stayfixed.obd.ObdFormatException;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.obd.Vin;
import dev.stayfixed.platform.Given;
import dev.stayfixed.platform.PlainText;
import dev.stayfixed.platform.Texts;
import dev.stayfixed.web.pages.Form;
import dev.stayfixed.web.pages.FormReader;
import dev.stayfixed.web.pages.ScanDigest;
import dev.stayfixed.web.pages.SentOnce;
import dev.stayfixed.web.pages.Show;
import dev.stayfixed.web.pages.TechnicianPage;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Clock;
import java.util.Optional;
import java.util.UUID;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** Opening a job: a pasted scan fills the faults, and the page says at once what will prove each of them fixed. */
@Hidden
@TechnicianPage
@RequestMapping("/jobs/new")
class NewJobPage {

    private final Jobs jobs;
    private final Vehicles vehicles;
    private final FormReader reader;
    private final SentOnce once;
    private final Texts texts;
    private final Clock clock;

    NewJobPage(Jobs jobs, Vehicles vehicles, FormReader reader, SentOnce once, Texts texts, Clock clock) {
        this.jobs = jobs;
        this.vehicles = vehicles;
        this.reader = reader;
        this.once = once;
        this.texts = texts;
        this.clock = clock;
    }

    @GetMapping
    String empty(
            @RequestParam(required = false) @org.jspecify.annotations.Nullable UUID vehicle,
            @ModelAttribute("show") Show show,
            Model model) {
        Form form = Form.empty();
        if (vehicle != null) {
            form.put("vehicleId", vehicle.toString());
            describe(form, vehicles.get(vehicle));
        }
        return page(form, show, model);
    }

    /** Reads what was typed so far and stores nothing. */
    @PostMapping(params = "do=read")
    String read(@RequestParam MultiValueMap<String, String> typed, @ModelAttribute("show") Show show, Model model) {
        Form form = new Form(typed);
        scan(form).ifPresent(scan -> {
            FaultRows.fill(form, scan);
            scan.vin().ifPresent(vin -> form.putIfBlank("vin", vin.text()));
        });
        known(form).ifPresent(vehicle -> describe(form, vehicle));
        return page(form, show, model);
    }

    @PostMapping
    String open(
            @RequestParam MultiValueMap<String, String> typed,
            @ModelAttribute("show") Show show,
            Model model,
            HttpServletResponse response) {
        Form form = new Form(typed);
        if (FaultRows.isEmpty(form)) {
            scan(form).ifPresent(scan -> FaultRows.fill(form, scan));
        }
        Optional<Vehicle.Details> details = details(form, show);
        Optional<JobEntry> job = reader.read(form, JobEntry.class, show, "vehicleId");
        job.ifPresent(entry -> reader.made(form, JobEntry.class, () -> entry.terms(ignition(form))));
        return form.answer(
                response,
                () -> once.lead(form, () -> {
                    Vehicle vehicle = known(form).orElseGet(() -> vehicles.register(details.orElseThrow()));
                    Job opened = jobs.open(job.orElseThrow().opening(vehicle, clock.instant()));
                    return "redirect:/jobs/" + opened.id() + "?said=job-opened";
                }),
                refused -> reader.refuse(form, JobEntry.class, refused),
                () -> page(form, show, model));
    }

    /** The vehicle as it is described; an empty description is a mistake only where the vehicle is new. */
    private Optional<Vehicle.Details> details(Form form, Show show) {
        Optional<VehicleEntry> entry = known(form).isPresent()
                ? reader.read(form, VehicleEntry.class, show, "description")
                : reader.read(form, VehicleEntry.class, show);
        return known(form).isPresent()
                ? Optional.empty()
                : entry.flatMap(vehicle -> reader.made(form, VehicleEntry.class, vehicle::details));
    }

    private Ignition ignition(Form form) {
        return known(form)
                .map(v -> v.details().ignition())
                .orElse(form.has("ignition", "COMPRESSION") ? Ignition.COMPRESSION : Ignition.SPARK);
    }

    /** The vehicle of the shop that has this VIN, or that the form was opened for. */
    private Optional<Vehicle> known(Form form) {
        String id = form.value("vehicleId");
        if (id.matches("[0-9a-fA-F]{8}(-[0-9a-fA-F]{4}){3}-[0-9a-fA-F]{12}")) {
            return Optional.of(vehicles.get(UUID.fromString(id)));
        }
        return vin(form).flatMap(vehicles::withVin);
    }

    private static Optional<Vin> vin(Form form) {
        try {
            return form.value("vin").isBlank() ? Optional.empty() : Optional.of(Vin.parse(form.value("vin")));
        } catch (ObdFormatException noVin) {
            return Optional.empty();
        }
    }

    private static void describe(Form form, Vehicle vehicle) {
        Vehicle.Details details = vehicle.details();
        details.vin().ifPresent(vin -> form.putIfBlank("vin", vin.text()));
        details.plate().ifPresent(plate -> form.putIfBlank("plate", plate));
        form.putIfBlank("description", details.description());
        form.put("ignition", details.ignition().name());
    }

    private static Optional<Scan> scan(Form form) {
        return Optional.of(form.value("scan").strip())
                .filter(text -> !text.isEmpty() && PlainText.flaw(text).isEmpty())
                .map(Scan::read);
    }

    private String page(Form form, Show show, Model model) {
        if (!form.isBlank("vin")) {
            reader.made(form, VehicleEntry.class, () -> Given.parse("vin", form.value("vin"), Vin::parse));
        }
        Optional<Scan> scan = scan(form);
        Optional<Vehicle> known = known(form);
        model.addAttribute("form", form);
        model.addAttribute("known", known.orElse(null));
        model.addAttribute(
                "vinWarning", vin(form).flatMap(Vin::warning).map(show::words).orElse(null));
        model.addAttribute("digest", scan.map(read -> ScanDigest.of(read, show)).orElse(null));
        model.addAttribute(
                "car", scan.map(read -> CarCard.of(read, known, form)).orElse(null));
        model.addAttribute("rows", FaultRows.numbers(form));
        model.addAttribute("proofs", FaultRows.proofs(form, reader, ignition(form), scan, show, texts));
        return "job-new";
    }
}
