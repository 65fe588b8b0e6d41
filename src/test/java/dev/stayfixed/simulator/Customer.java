package dev.stayfixed.simulator;

import static dev.stayfixed.simulator.Workshop.at;
import static dev.stayfixed.simulator.Workshop.step;
import static dev.stayfixed.simulator.Workshop.told;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.UnaryOperator;

/** One car, its job and its drives, as the shop sends them in. */
final class Customer {

    private final Workshop shop;
    private final String name;
    private final String words;
    private final Car car;
    private final Layout layout;
    private final Set<Ask> asked;

    /**
     * A car comes in.
     *
     * @param name folder of its scans, and what its vehicle and job are saved as
     * @param asked what the shop's scan tool reads on this car
     */
    Customer(Workshop shop, String name, String words, Car car, Layout layout, Set<Ask> asked) {
        this.shop = shop;
        this.name = name;
        this.words = words;
        this.car = car;
        this.layout = layout;
        this.asked = asked;
    }

    Car car() {
        return car;
    }

    void registered(String plate, int modelYear) {
        Map<String, Object> body = new LinkedHashMap<>();
        body.put("vin", car.vin());
        body.put("plate", plate);
        body.put("description", words);
        body.put("modelYear", modelYear);
        body.put("ignition", car.combustion().name());
        shop.play(saved(step("POST", "/vehicles", body, 201), name + "Vehicle"));
    }

    /** Drives every morning of the week before the job, until the code is confirmed and the day has come. */
    void falls(String code, Repair fault, int jobDaysAgo) {
        car.fault(code, fault);
        for (int daysAgo = jobDaysAgo + 7; daysAgo > jobDaysAgo; daysAgo--) {
            car.drive(DrivePlan.longDrive(at(daysAgo, "06:50")));
        }
        if (!car.confirmed().contains(code)) {
            throw new IllegalStateException(code + " was not confirmed in a week: choose another seed");
        }
    }

    /** A scan with the key on and the engine off, saved with a heading. */
    String scan(String file, String heading, Instant when) {
        return save(file, heading, car.scanAt(when, layout, asked));
    }

    private String save(String file, String heading, String scan) {
        String head = "# %s. %s%n# Demonstration data of an invented shop.%n".formatted(words, heading);
        return shop.save(name + "/" + file + ".txt", head.replace("\r\n", "\n") + scan);
    }

    void job(String reference, String complaint, Instant opened, String scan, List<Map<String, Object>> faults) {
        Map<String, Object> body = new LinkedHashMap<>();
        body.put("vehicleId", "${" + name + "Vehicle}");
        body.put("reference", reference);
        body.put("complaint", complaint);
        body.put("openedAt", told(opened));
        body.put("scan", scan);
        if (!faults.isEmpty()) {
            body.put("faults", faults);
        }
        shop.play(saved(step("POST", "/jobs", body, 201), name + "Job"));
    }

    /**
     * A repair with a clear of the codes, scanned before and after.
     *
     * @param repair what it really does to the car
     */
    void repaired(
            String file,
            Instant when,
            String code,
            Repair repair,
            String technician,
            String description,
            List<String> parts,
            List<Map<String, Object>> measurements) {
        String before = scan(file + "-before", "Before the repair, engine off", when);
        car.fault(code, repair);
        car.clearCodes();
        String after = scan(file + "-after", "After the repair and after clearing the codes, engine off", when);
        Map<String, Object> body = new LinkedHashMap<>();
        body.put("performedAt", told(when));
        body.put("description", description);
        body.put("parts", parts);
        body.put("technician", technician);
        body.put("codesCleared", true);
        body.put("scanBefore", before);
        body.put("scanAfter", after);
        body.put("measurements", measurements);
        shop.play(step("POST", "/jobs/${" + name + "Job}/repairs", body, 201));
    }

    static Map<String, Object> measured(
            String quantity, String point, String unit, double min, double max, Object before, Object after) {
        Map<String, Object> measurement = new LinkedHashMap<>();
        measurement.put("quantity", quantity);
        measurement.put("point", point);
        measurement.put("unit", unit);
        measurement.put("expectedMin", min);
        measurement.put("expectedMax", max);
        measurement.put("before", before);
        measurement.put("after", after);
        measurement.put("testLeadsVerified", true);
        return measurement;
    }

    /** Drives, scans at the end, and sends the drive in. */
    CycleTruth drives(String file, String heading, DrivePlan plan) {
        return drives(file, heading, plan, body -> body);
    }

    /**
     * Likewise.
     *
     * @param change what the shop writes differently
     */
    CycleTruth drives(String file, String heading, DrivePlan plan, UnaryOperator<Map<String, Object>> change) {
        Driven driven = driven(file, heading, plan, change);
        shop.play(driven.step());
        return driven.truth();
    }

    /** A drive and the step that sends it in, whenever that is played. */
    record Driven(CycleTruth truth, Map<String, Object> step) {}

    Driven driven(String file, String heading, DrivePlan plan, UnaryOperator<Map<String, Object>> change) {
        Underway underway = car.begin(plan).runToEnd();
        String scan = underway.scan(layout, asked);
        List<Map<String, Object>> points = points(underway);
        CycleTruth truth = underway.keyOff();
        Map<String, Object> summary = truth.summary().asMap();
        if (!points.isEmpty()) {
            summary.put("operatingPoints", points);
        }
        Map<String, Object> body = new LinkedHashMap<>();
        body.put("start", told(plan.start()));
        body.put("summary", summary);
        body.put("scans", List.of(Map.of("text", scan)));
        Map<String, Object> changed = change.apply(body);
        changed.computeIfPresent("scans", (key, scans) -> List.of(afterScan(file, heading, scans)));
        return new Driven(truth, step("POST", "/vehicles/${" + name + "Vehicle}/drives", changed, 201));
    }

    private Map<String, Object> afterScan(String file, String heading, Object scans) {
        Map<?, ?> only = (Map<?, ?>) ((List<?>) scans).get(0);
        Map<String, Object> scan = new LinkedHashMap<>();
        scan.put("moment", "AFTER");
        scan.put("text", save(file, heading, String.valueOf(only.get("text"))));
        return scan;
    }

    /** Steady moments matter for codes with similar conditions only. */
    private List<Map<String, Object>> points(Underway underway) {
        List<Sample> samples = new ArrayList<>();
        car.lastStored("P0302").ifPresent(stored -> {
            underway.nearestTo(stored).ifPresent(samples::add);
            samples.addAll(underway.operatingPoints().stream().limit(4).toList());
        });
        return samples.stream().map(Customer::point).toList();
    }

    private static Map<String, Object> point(Sample sample) {
        Map<String, Object> point = new LinkedHashMap<>();
        point.put("engineSpeed", sample.rpm());
        point.put("load", sample.load());
        point.put("coolant", sample.coolant());
        return point;
    }

    void closed() {
        Map<String, Object> step = step("POST", "/jobs/${" + name + "Job}/close", Map.of(), 200);
        step.put("ifMatch", "latest");
        shop.play(step);
    }

    private static Map<String, Object> saved(Map<String, Object> step, String as) {
        step.put("saveAs", as);
        return step;
    }
}
