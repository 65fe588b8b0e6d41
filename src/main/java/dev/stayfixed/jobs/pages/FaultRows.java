package dev.stayfixed.jobs.pages;

import dev.stayfixed.jobs.entry.FaultEntry;
import dev.stayfixed.obd.Answer;
import dev.stayfixed.obd.Ignition;
import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.obd.ObdFormatException;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.obd.StatusByte;
import dev.stayfixed.obd.TroubleCode;
import dev.stayfixed.platform.Texts;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.verification.RepairedFault;
import dev.stayfixed.web.pages.Form;
import dev.stayfixed.web.pages.FormReader;
import dev.stayfixed.web.pages.Show;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.IntStream;

/** The rows of faults in a form: faults[0].code and so on. */
final class FaultRows {

    private static final int MOST = 50;
    private static final int AT_FIRST = 3;

    private FaultRows() {}

    /** What will prove a fault fixed. */
    record Proof(String code, String group, String trips, String words, String note) {}

    private static String code(int row) {
        return "faults[" + row + "].code";
    }

    static boolean isEmpty(Form form) {
        return IntStream.range(0, MOST).allMatch(i -> form.isBlank(code(i)));
    }

    /** As many rows as are filled and one more, three at first. */
    static List<Integer> numbers(Form form) {
        int filled = IntStream.range(0, MOST)
                .filter(i -> !form.isBlank(code(i)))
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
            if (IntStream.range(0, MOST).noneMatch(i -> isSame(form.value(code(i)), code))) {
                IntStream.range(0, MOST)
                        .filter(i -> form.isBlank(code(i)))
                        .findFirst()
                        .ifPresent(i -> form.put(code(i), code.text()));
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

    /** For the rows that hold a code; rows with mistakes wait until they are mended. */
    static List<Proof> proofs(
            Form form, FormReader reader, Ignition ignition, Optional<Scan> read, Show show, Texts texts) {
        return IntStream.range(0, MOST)
                .mapToObj(row -> reader.within(form, FaultEntry.class, "faults[" + row + "]", show))
                .flatMap(Optional::stream)
                .flatMap(entry -> terms(entry, ignition).stream())
                .map(fault -> new Proof(
                        fault.code().text(),
                        show.words(fault.group()),
                        texts.choice("jobs.proof.trips", fault.trips()),
                        show.words(VerdictWords.proof(fault, read)),
                        note(fault.group(), texts)))
                .toList();
    }

    private static Optional<RepairedFault> terms(FaultEntry entry, Ignition ignition) {
        try {
            return Optional.of(entry.terms("", ignition));
        } catch (Refused notYetRight) {
            return Optional.empty();
        }
    }

    private static String note(MonitorGroup group, Texts texts) {
        if (group == MonitorGroup.MISFIRE || group == MonitorGroup.FUEL_SYSTEM) {
            return texts.of("jobs.proof.similar-conditions");
        }
        return group.isContinuous() ? texts.of("jobs.proof.watches-always") : texts.of("jobs.proof.runs-once");
    }
}
