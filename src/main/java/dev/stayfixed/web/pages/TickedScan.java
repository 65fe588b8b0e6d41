package dev.stayfixed.web.pages;

import dev.stayfixed.jobs.Fault;
import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.obd.ObdFormatException;
import dev.stayfixed.obd.TroubleCode;
import dev.stayfixed.verification.RepairedFault;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What a tool that shows words only says, ticked by a technician. The ticks become lines of a scan as somebody might type them, so
 * that the stored original, the REST interface and every later judging need nothing of their own for them.
 *
 * @param prefix of the names of its fields: one form may hold two scans
 * @param faults whose monitors and tests are asked for
 */
public record TickedScan(String prefix, List<Row> faults) {

    private static final Map<String, String> MONITOR = Map.of(
            "complete", "complete this drive cycle",
            "incomplete", "not complete this drive cycle",
            "ready", "complete since clear",
            "not-ready", "not complete since clear");

    private static final Map<String, String> TEST = Map.of(
            "passed", "test passed in this drive",
            "failed", "test failed in this drive",
            "not-run", "test not run in this drive");

    /**
     * A fault that is asked for.
     *
     * @param group whose readiness monitor it is
     * @param field the end of the names of its fields
     */
    public record Row(String code, MonitorGroup group, String field) {}

    public static TickedScan of(String prefix, List<Fault> faults) {
        return new TickedScan(
                prefix,
                faults.stream()
                        .map(Fault::terms)
                        .map(TickedScan::row)
                        .distinct()
                        .toList());
    }

    private static Row row(RepairedFault fault) {
        String code = fault.code().text();
        return new Row(code, fault.group(), code.replace("-", ""));
    }

    /** Something is ticked, so the ticks are shown. */
    public boolean isTouched(Form form) {
        return fields().stream().anyMatch(field -> !form.isBlank(field));
    }

    /** The names of all its fields. */
    public List<String> fields() {
        Stream<String> fixed = Stream.of("Stored", "StoredCodes", "Pending", "PendingCodes", "Lamp");
        Stream<String> ofFaults =
                faults.stream().flatMap(row -> Stream.of("Monitor" + row.field(), "Test" + row.field()));
        return Stream.concat(fixed, ofFaults).map(name -> prefix + name).toList();
    }

    /** The pasted text, and what was ticked below it; empty where there is neither. */
    public Optional<String> below(Optional<String> pasted, Form form, FormReader reader) {
        String ticked = lines(form, reader).stream().collect(Collectors.joining("\n"));
        String text = Stream.of(pasted.orElse(""), ticked)
                .filter(part -> !part.isEmpty())
                .collect(Collectors.joining("\n"));
        return Optional.of(text).filter(t -> !t.isEmpty());
    }

    private List<String> lines(Form form, FormReader reader) {
        List<String> lines = new ArrayList<>();
        list(form, reader, "Stored", "Stored codes", "web.parts.stored-codes").ifPresent(lines::add);
        list(form, reader, "Pending", "Pending codes", "web.parts.pending-codes")
                .ifPresent(lines::add);
        if (form.has(prefix + "Lamp", "on") || form.has(prefix + "Lamp", "off")) {
            lines.add("MIL: " + form.value(prefix + "Lamp"));
        }
        for (Row row : faults) {
            Optional.ofNullable(MONITOR.get(form.value(prefix + "Monitor" + row.field())))
                    .map(said -> row.group().label() + ": " + said)
                    .filter(line -> !lines.contains(line))
                    .ifPresent(lines::add);
            Optional.ofNullable(TEST.get(form.value(prefix + "Test" + row.field())))
                    .map(said -> row.code() + ": " + said)
                    .ifPresent(lines::add);
        }
        return lines;
    }

    private Optional<String> list(Form form, FormReader reader, String field, String said, String label) {
        String codes = prefix + field + "Codes";
        if (form.has(prefix + field, "none")) {
            if (!form.isBlank(codes)) {
                reader.wrong(form, codes, "web.ticks.both", reader.text(label));
            }
            return Optional.of(said + ": none");
        }
        if (!form.has(prefix + field, "these")) {
            if (!form.isBlank(codes)) {
                reader.wrong(form, codes, "web.ticks.unchosen", reader.text(label));
            }
            return Optional.empty();
        }
        if (form.isBlank(codes)) {
            reader.wrong(form, codes, "web.ticks.no-codes", reader.text(label));
            return Optional.empty();
        }
        List<String> read = new ArrayList<>();
        for (String word : form.value(codes).toUpperCase(Locale.ROOT).strip().split("[\\s,;]+", -1)) {
            try {
                read.add(TroubleCode.parse(word).text());
            } catch (ObdFormatException e) {
                reader.wrong(form, codes, "web.ticks.no-code", reader.text(label), word);
                return Optional.empty();
            }
        }
        return Optional.of(said + ": " + String.join(", ", read));
    }
}
