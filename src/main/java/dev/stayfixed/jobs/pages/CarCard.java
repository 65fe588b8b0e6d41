package dev.stayfixed.jobs.pages;

import dev.stayfixed.jobs.Vehicle;
import dev.stayfixed.obd.Answer;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.obd.TroubleCode;
import dev.stayfixed.obd.Vin;
import dev.stayfixed.web.pages.Form;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * The car as a scan shows it, and what nobody has said of it yet.
 *
 * @param name as the shop knows it, or as it was just typed
 * @param modelYear as the VIN says
 * @param codes with what stands behind each
 * @param lamp whether the MIL is on; nothing where it was not read
 * @param wanted fields in which something is missing
 */
public record CarCard(
        Optional<String> name,
        Optional<String> vin,
        OptionalInt modelYear,
        List<Code> codes,
        Optional<Boolean> lamp,
        List<Wanted> wanted) {

    private static final String LIST = "jobs.car.list.";

    /**
     * One code.
     *
     * @param lists that hold it, by the keys of their words
     */
    public record Code(String text, List<String> lists) {}

    /** What is to be asked still, by the name of its field. */
    public enum Wanted {
        description,
        faults
    }

    static CarCard of(Scan scan, Optional<Vehicle> known, Form form) {
        List<Wanted> wanted = new ArrayList<>();
        if (known.isEmpty() && form.isBlank("description")) {
            wanted.add(Wanted.description);
        }
        if (FaultRows.isEmpty(form)) {
            wanted.add(Wanted.faults);
        }
        Optional<Vin> vin = scan.vin();
        return new CarCard(
                known.map(vehicle -> vehicle.details().description())
                        .or(() -> Optional.of(form.value("description")).filter(text -> !text.isBlank())),
                vin.map(Vin::text),
                vin.map(Vin::modelYear).orElse(OptionalInt.empty()),
                codes(scan),
                scan.lamp(),
                List.copyOf(wanted));
    }

    private static List<Code> codes(Scan scan) {
        Map<String, SortedSet<Answer.CodeList.Kind>> found = new LinkedHashMap<>();
        for (Scan.Heard heard : scan.heard()) {
            if (heard.answer() instanceof Answer.CodeList list) {
                list.codes().forEach(code -> add(found, code, list.kind()));
            } else if (heard.answer() instanceof Answer.CodeStatuses bytes) {
                bytes.statuses().forEach((code, status) -> {
                    if (status.isConfirmed()) {
                        add(found, code, Answer.CodeList.Kind.CONFIRMED);
                    }
                    if (status.isPending()) {
                        add(found, code, Answer.CodeList.Kind.PENDING);
                    }
                });
            }
        }
        return found.entrySet().stream()
                .map(code -> new Code(
                        code.getKey(),
                        code.getValue().stream().map(list -> LIST + list.name()).toList()))
                .toList();
    }

    private static void add(
            Map<String, SortedSet<Answer.CodeList.Kind>> found, TroubleCode code, Answer.CodeList.Kind list) {
        found.computeIfAbsent(code.text(), text -> new TreeSet<>()).add(list);
    }
}
