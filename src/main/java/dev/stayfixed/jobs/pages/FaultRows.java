package dev.stayfixed.jobs.pages;

import dev.stayfixed.obd.Answer;
import dev.stayfixed.obd.Ignition;
import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.obd.ObdFormatException;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.obd.StatusByte;
import dev.stayfixed.obd.TroubleCode;
import dev.stayfixed.verification.EvidenceGrade;
import dev.stayfixed.verification.RepairedFault;
import dev.stayfixed.verification.Trips;
import dev.stayfixed.web.pages.Form;
import dev.stayfixed.wording.Wording;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.IntStream;

/** The rows of faults in a form: code0, trips0, passes0 and so on. */
final class FaultRows {

    private static final int MOST = 50;
    private static final int AT_FIRST = 3;

    private FaultRows() {}

    /** What will prove a fault fixed. */
    record Proof(String code, String group, String trips, String words, String note) {}

    static boolean isEmpty(Form form) {
        return IntStream.range(0, MOST).allMatch(i -> form.isBlank("code" + i));
    }

    /** As many rows as are filled and one more, three at first. */
    static List<Integer> numbers(Form form) {
        int filled = IntStream.range(0, MOST)
                .filter(i -> !form.isBlank("code" + i))
                .max()
                .orElse(-1);
        return IntStream.range(0, Math.min(MOST, Math.max(AT_FIRST, filled + 2)))
                .boxed()
                .toList();
    }

    /** Adds the codes of a scan that no row has yet: the confirmed ones, or where there are none, the pending ones. */
    static void fill(Form form, Scan scan) {
        Set<TroubleCode> codes = codes(scan, Answer.CodeList.Kind.CONFIRMED, StatusByte::isConfirmed);
        if (codes.isEmpty()) {
            codes = codes(scan, Answer.CodeList.Kind.PENDING, StatusByte::isPending);
        }
        for (TroubleCode code : codes) {
            if (IntStream.range(0, MOST).noneMatch(i -> isSame(form.value("code" + i), code))) {
                IntStream.range(0, MOST)
                        .filter(i -> form.isBlank("code" + i))
                        .findFirst()
                        .ifPresent(i -> form.put("code" + i, code.text()));
            }
        }
    }

    private static boolean isSame(String typed, TroubleCode code) {
        try {
            return !typed.isBlank() && TroubleCode.parse(typed).sameFaultAs(code);
        } catch (ObdFormatException noCode) {
            return false;
        }
    }

    private static Set<TroubleCode> codes(Scan scan, Answer.CodeList.Kind kind, Predicate<StatusByte> wanted) {
        Set<TroubleCode> codes = new LinkedHashSet<>();
        for (Scan.Heard heard : scan.heard()) {
            if (heard.answer() instanceof Answer.CodeList list && list.kind() == kind) {
                codes.addAll(list.codes());
            } else if (heard.answer() instanceof Answer.CodeStatuses statuses) {
                statuses.statuses().entrySet().stream()
                        .filter(entry -> wanted.test(entry.getValue()))
                        .map(Map.Entry::getKey)
                        .forEach(codes::add);
            }
        }
        return codes;
    }

    static List<RepairedFault> read(Form form, Ignition ignition) {
        List<RepairedFault> faults = new ArrayList<>();
        for (int i = 0; i < MOST; i++) {
            fault(form, i, ignition).ifPresent(faults::add);
        }
        return faults;
    }

    private static Optional<RepairedFault> fault(Form form, int row, Ignition ignition) {
        String label = "Fault " + (row + 1);
        Optional<TroubleCode> code = form.parsed("code" + row, label, TroubleCode::parse);
        Trips trips = form.has("trips" + row, "ONE") ? Trips.ONE : Trips.TWO;
        Optional<Integer> passes =
                form.whole("passes" + row, label + ", clean trips wanted", trips.count(), RepairedFault.MOST_PASSES);
        return code.map(c -> new RepairedFault(
                c,
                ignition,
                MonitorGroup.of(c, ignition),
                trips,
                passes.orElse(trips.count()),
                EvidenceGrade.ENABLING_CONDITIONS,
                List.of(),
                Optional.empty()));
    }

    /** For the rows that hold a code; rows with mistakes wait until they are mended. */
    static List<Proof> proofs(Form form, Ignition ignition) {
        Form tried = new Form(form.all());
        return read(tried, ignition).stream()
                .map(fault -> new Proof(
                        fault.code().text(),
                        fault.group().label(),
                        fault.trips() == Trips.ONE ? "one-trip fault" : "two-trip fault",
                        Wording.METRIC.words(VerdictWords.proof(fault)),
                        note(fault.group())))
                .toList();
    }

    private static String note(MonitorGroup group) {
        if (group == MonitorGroup.MISFIRE || group == MonitorGroup.FUEL_SYSTEM) {
            return "A pass counts only under conditions like those of the freeze frame.";
        }
        return group.isContinuous()
                ? "This monitor watches all the time, so readiness proves nothing for it."
                : "It runs once a drive, when its enabling conditions are met.";
    }
}
