package dev.stayfixed.web.pages;

import dev.stayfixed.obd.Answer;
import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.obd.Readiness;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.obd.TroubleCode;
import dev.stayfixed.obd.Vin;
import dev.stayfixed.reason.Quantity;
import dev.stayfixed.reason.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/**
 * What a scan says, in a few lines, and what became of each line of it.
 *
 * @param understood how many lines were understood, parts of longer answers included
 * @param not how many were not
 */
public record ScanDigest(int understood, int not, List<Said> says, List<Scan.Line> lines) {

    /** One thing that the scan says. */
    public record Said(String what, String words) {}

    public static ScanDigest of(String text, Show show) {
        return of(Scan.read(text), show);
    }

    public static ScanDigest of(Scan scan, Show show) {
        List<Said> says = new ArrayList<>();
        for (Answer.CodeList.Kind kind : Answer.CodeList.Kind.values()) {
            codes(scan, kind).ifPresent(codes -> says.add(new Said(heading(kind), codes)));
        }
        statuses(scan).ifPresent(text -> says.add(new Said("Status bytes", text)));
        scan.lamp().ifPresent(on -> says.add(new Said("MIL", on ? "on" : "off")));
        scan.sinceClear().ifPresent(r -> says.add(new Said("Readiness since the clear", readiness(r))));
        scan.thisCycle().ifPresent(r -> says.add(new Said("Monitors in this driving cycle", readiness(r))));
        stated(scan, show).ifPresent(monitors -> says.add(new Said("Monitors in words", monitors)));
        counter(scan, 0x30, "Warm-ups since the clear", "").ifPresent(says::add);
        distance(scan, show).ifPresent(says::add);
        counter(scan, 0x4E, "Engine time since the clear", " min").ifPresent(says::add);
        counter(scan, 0x1F, "Run time since engine start", " s").ifPresent(says::add);
        scan.freezeFrameCode().ifPresent(code -> says.add(new Said("Freeze frame", "stored by " + code.text())));
        scan.vin().map(Vin::text).ifPresent(vin -> says.add(new Said("VIN", vin)));
        scan.contradictions().forEach(words -> says.add(new Said("Contradiction", show.words(words))));
        return new ScanDigest(
                count(scan, Scan.Line.Outcome.UNDERSTOOD) + count(scan, Scan.Line.Outcome.PART_OF_MESSAGE),
                count(scan, Scan.Line.Outcome.NOT_UNDERSTOOD),
                says,
                scan.lines());
    }

    private static int count(Scan scan, Scan.Line.Outcome outcome) {
        return (int) scan.lines().stream().filter(l -> l.outcome() == outcome).count();
    }

    private static String heading(Answer.CodeList.Kind kind) {
        return switch (kind) {
            case CONFIRMED -> "Confirmed codes";
            case PENDING -> "Pending codes";
            case PERMANENT -> "Permanent codes";
        };
    }

    private static Optional<String> codes(Scan scan, Answer.CodeList.Kind kind) {
        List<Answer.CodeList> lists = scan.heard().stream()
                .filter(h -> h.answer() instanceof Answer.CodeList list && list.kind() == kind)
                .map(h -> (Answer.CodeList) h.answer())
                .toList();
        String codes = lists.stream()
                .flatMap(list -> list.codes().stream())
                .map(TroubleCode::text)
                .distinct()
                .collect(Collectors.joining(", "));
        return lists.isEmpty() ? Optional.empty() : Optional.of(codes.isEmpty() ? "none" : codes);
    }

    private static Optional<String> statuses(Scan scan) {
        String text = scan.heard().stream()
                .filter(h -> h.answer() instanceof Answer.CodeStatuses)
                .flatMap(h -> ((Answer.CodeStatuses) h.answer()).statuses().entrySet().stream())
                .map(e -> "%s %02X".formatted(e.getKey().text(), e.getValue().value()))
                .collect(Collectors.joining(", "));
        return Optional.of(text).filter(t -> !t.isEmpty());
    }

    private static String readiness(Readiness readiness) {
        String incomplete = readiness.incomplete().stream()
                .sorted()
                .map(MonitorGroup::label)
                .collect(Collectors.joining(", "));
        if (readiness.supported().isEmpty()) {
            return "no monitor is enabled";
        }
        return incomplete.isEmpty() ? "all complete" : "not complete: " + incomplete;
    }

    /** Monitors that a tool names one by one; as part of a full report they are among the readiness above. */
    private static Optional<String> stated(Scan scan, Show show) {
        String text = scan.heard().stream()
                .filter(h -> h.answer() instanceof Answer.MonitorStatement)
                .map(h -> (Answer.MonitorStatement) h.answer())
                .map(s -> show.words(s.group()) + " " + show.words(s.state()) + (s.thisCycle() ? " in this driving cycle" : ""))
                .distinct()
                .collect(Collectors.joining(", "));
        return Optional.of(text).filter(t -> !t.isEmpty());
    }

    private static Optional<Said> distance(Scan scan, Show show) {
        OptionalDouble value = scan.parameter(0x31);
        return value.isPresent()
                ? Optional.of(new Said(
                        "Distance since the clear", show.words(Quantity.whole(value.getAsDouble(), Unit.KILOMETRE))))
                : Optional.empty();
    }

    private static Optional<Said> counter(Scan scan, int pid, String what, String unit) {
        OptionalDouble value = scan.parameter(pid);
        return value.isPresent()
                ? Optional.of(new Said(what, Math.round(value.getAsDouble()) + unit))
                : Optional.empty();
    }
}
