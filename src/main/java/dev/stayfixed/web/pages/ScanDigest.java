package dev.stayfixed.web.pages;

import dev.stayfixed.obd.Answer;
import dev.stayfixed.obd.Readiness;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.obd.TroubleCode;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Quantity;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Shape;
import dev.stayfixed.reason.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * What a scan says, in a few lines, and what became of each line of it.
 *
 * @param understood how many lines were understood, parts of longer answers included
 * @param not how many were not
 */
public record ScanDigest(int understood, int not, List<Saying> says, List<Scan.Line> lines) {

    /** One thing that the scan says. */
    public record Saying(String what, String words) {}

    public static ScanDigest of(String text, Show show) {
        return of(Scan.read(text), show);
    }

    public static ScanDigest of(Scan scan, Show show) {
        Says says = new Says(show, new ArrayList<>());
        for (Answer.CodeList.Kind kind : Answer.CodeList.Kind.values()) {
            codes(scan, kind).ifPresent(codes -> says.add(heading(kind), codes));
        }
        statuses(scan).ifPresent(bytes -> says.add(DigestWord.STATUS_BYTES, bytes));
        scan.lamp().ifPresent(on -> says.add(DigestWord.MIL, on ? PageWord.ON : PageWord.OFF));
        scan.sinceClear().ifPresent(r -> says.add(DigestWord.READINESS_SINCE_CLEAR, readiness(r)));
        scan.thisCycle().ifPresent(r -> says.add(DigestWord.MONITORS_OF_CYCLE, readiness(r)));
        stated(scan).ifPresent(monitors -> says.add(DigestWord.MONITORS_IN_WORDS, monitors));
        parameter(scan, 0x30, Unit.ONE).ifPresent(count -> says.add(DigestWord.WARM_UPS, count));
        parameter(scan, 0x31, Unit.KILOMETRE).ifPresent(distance -> says.add(DigestWord.DISTANCE, distance));
        parameter(scan, 0x4E, Unit.MINUTE).ifPresent(time -> says.add(DigestWord.ENGINE_TIME, time));
        parameter(scan, 0x1F, Unit.SECOND).ifPresent(time -> says.add(DigestWord.RUN_TIME, time));
        scan.freezeFrameCode()
                .ifPresent(code ->
                        says.add(DigestWord.FREEZE_FRAME, Reason.of(DigestWord.STORED_BY, Part.verbatim(code.text()))));
        scan.vin().ifPresent(vin -> says.add(DigestWord.VIN, Part.verbatim(vin.text())));
        scan.contradictions().forEach(found -> says.add(DigestWord.CONTRADICTION, found));
        return new ScanDigest(
                count(scan, Scan.Line.Outcome.UNDERSTOOD) + count(scan, Scan.Line.Outcome.PART_OF_MESSAGE),
                count(scan, Scan.Line.Outcome.NOT_UNDERSTOOD),
                List.copyOf(says.said()),
                scan.lines());
    }

    private record Says(Show show, List<Saying> said) {
        void add(DigestWord what, Part says) {
            said.add(new Saying(show.words(what), show.words(says)));
        }
    }

    private static int count(Scan scan, Scan.Line.Outcome outcome) {
        return (int) scan.lines().stream().filter(l -> l.outcome() == outcome).count();
    }

    private static DigestWord heading(Answer.CodeList.Kind kind) {
        return switch (kind) {
            case CONFIRMED -> DigestWord.CONFIRMED_CODES;
            case PENDING -> DigestWord.PENDING_CODES;
            case PERMANENT -> DigestWord.PERMANENT_CODES;
        };
    }

    private static Optional<Part> codes(Scan scan, Answer.CodeList.Kind kind) {
        List<Answer.CodeList> lists = scan.heard().stream()
                .filter(h -> h.answer() instanceof Answer.CodeList list && list.kind() == kind)
                .map(h -> (Answer.CodeList) h.answer())
                .toList();
        List<Part> codes = lists.stream()
                .flatMap(list -> list.codes().stream())
                .map(TroubleCode::text)
                .distinct()
                .map(Part::verbatim)
                .toList();
        return lists.isEmpty()
                ? Optional.empty()
                : Optional.of(codes.isEmpty() ? DigestWord.NONE : Shape.LIST.of(codes));
    }

    private static Optional<Part> statuses(Scan scan) {
        return list(scan.heard().stream()
                .filter(h -> h.answer() instanceof Answer.CodeStatuses)
                .flatMap(h -> ((Answer.CodeStatuses) h.answer()).statuses().entrySet().stream())
                .map(e -> Part.verbatim(
                        "%s %02X".formatted(e.getKey().text(), e.getValue().value()))));
    }

    private static Optional<Part> list(Stream<? extends Part> parts) {
        List<Part> all = parts.<Part>map(part -> part).toList();
        return all.isEmpty() ? Optional.empty() : Optional.of(Shape.LIST.of(all));
    }

    private static Part readiness(Readiness readiness) {
        if (readiness.supported().isEmpty()) {
            return DigestWord.NO_MONITOR;
        }
        return list(readiness.incomplete().stream().sorted())
                .<Part>map(monitors -> Reason.of(DigestWord.INCOMPLETE, monitors))
                .orElse(DigestWord.ALL_COMPLETE);
    }

    /** Monitors that a tool names one by one; as part of a full report they are among the readiness above. */
    private static Optional<Part> stated(Scan scan) {
        return list(scan.heard().stream()
                .filter(h -> h.answer() instanceof Answer.MonitorStatement)
                .map(h -> (Answer.MonitorStatement) h.answer())
                .map(s ->
                        Reason.of(s.thisCycle() ? DigestWord.STATED_OF_CYCLE : DigestWord.STATED, s.group(), s.state()))
                .distinct());
    }

    private static Optional<Part> parameter(Scan scan, int pid, Unit unit) {
        OptionalDouble value = scan.parameter(pid);
        return value.isPresent() ? Optional.of(Quantity.whole(value.getAsDouble(), unit)) : Optional.empty();
    }
}
