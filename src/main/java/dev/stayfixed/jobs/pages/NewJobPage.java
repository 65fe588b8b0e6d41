package dev.stayfixed.jobs.pages;

import dev.stayfixed.jobs.Job;
import dev.stayfixed.jobs.Jobs;
import dev.stayfixed.jobs.Vehicle;
import dev.stayfixed.jobs.Vehicles;
import dev.stayfixed.obd.Ignition;
import dev.stayfixed.obd.ObdFormatException;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.obd.Vin;
import dev.stayfixed.verification.RepairedFault;
import dev.stayfixed.web.pages.Form;
import dev.stayfixed.web.pages.ScanDigest;
import dev.stayfixed.web.pages.SentOnce;
import dev.stayfixed.web.pages.Show;
import dev.stayfixed.web.pages.TechnicianPage;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
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

    private static final Map<String, String> FIELDS = Map.of(
            "faults", "code0",
            "vin", "vin",
            "description", "description");

    private final Jobs jobs;
    private final Vehicles vehicles;
    private final SentOnce once;
    private final Clock clock;

    NewJobPage(Jobs jobs, Vehicles vehicles, SentOnce once, Clock clock) {
        this.jobs = jobs;
        this.vehicles = vehicles;
        this.once = once;
        this.clock = clock;
    }

    @GetMapping
    String empty(
            @RequestParam(required = false) @org.jspecify.annotations.Nullable UUID vehicle,
            @ModelAttribute("show") Show show,
            Model model) {
        Form form = Form.empty();
        if (vehicle != null) {
            form.put("vehicle", vehicle.toString());
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
        Optional<Scan> scan = scan(form);
        if (FaultRows.isEmpty(form)) {
            scan.ifPresent(s -> FaultRows.fill(form, s));
        }
        Vehicle.Details details = details(form);
        List<RepairedFault> faults = FaultRows.read(form, ignition(form));
        Job.Labels labels = new Job.Labels(
                form.text("reference", "Job number", 100),
                form.text("complaint", "Complaint", 2000),
                form.text("customer", "Customer", 100));
        if (faults.isEmpty() && !form.isWrong()) {
            form.wrong("code0", "Faults: enter at least one code, or paste a scan that holds one");
        }
        return form.answer(
                response,
                () -> once.lead(form, () -> {
                    UUID vehicle = known(form)
                            .map(Vehicle::id)
                            .orElseGet(() -> vehicles.register(details).id());
                    Job job = jobs.open(new Job.Opening(
                            vehicle, labels, clock.instant(), form.text("scan", "Scan", 1_000_000), faults));
                    return "redirect:/jobs/" + job.id() + "?said=job-opened";
                }),
                refused -> form.refused(refused, FIELDS),
                () -> page(form, show, model));
    }

    /** The vehicle as it is described; an empty description is a mistake only where the vehicle is new. */
    private Vehicle.Details details(Form form) {
        Optional<Vin> vin = form.parsed("vin", "VIN", Vin::parse);
        Optional<Integer> year = form.whole("modelYear", "Model year", 1900, 2100);
        String description = known(form).isPresent()
                ? form.text("description", "Vehicle", 200).orElse("")
                : form.required("description", "Vehicle", 200, "say what it is, for example make, model and colour");
        return new Vehicle.Details(
                vin,
                form.text("plate", "Plate", 20),
                description,
                year.map(OptionalInt::of).orElse(OptionalInt.empty()),
                ignition(form));
    }

    private Ignition ignition(Form form) {
        return known(form)
                .map(v -> v.details().ignition())
                .orElse(form.has("ignition", "COMPRESSION") ? Ignition.COMPRESSION : Ignition.SPARK);
    }

    /** The vehicle of the shop that has this VIN, or that the form was opened for. */
    private Optional<Vehicle> known(Form form) {
        String id = form.value("vehicle");
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
        return form.text("scan", "Scan", 1_000_000).filter(t -> !form.isWrong()).map(Scan::read);
    }

    private String page(Form form, Show show, Model model) {
        form.parsed("vin", "VIN", Vin::parse);
        model.addAttribute("form", form);
        model.addAttribute("known", known(form).orElse(null));
        model.addAttribute("vinWarning", vin(form).flatMap(Vin::warning).map(show::words).orElse(null));
        model.addAttribute(
                "digest", scan(form).map(scan -> ScanDigest.of(scan, show)).orElse(null));
        model.addAttribute("rows", FaultRows.numbers(form));
        model.addAttribute("proofs", FaultRows.proofs(form, ignition(form)));
        return "job-new";
    }
}
