package dev.stayfixed.intake;

import dev.stayfixed.obd.Answer;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Shape;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Where the scans of a drive disagree with themselves, for whoever took them to look again. */
final class ScanDoubts {

    private ScanDoubts() {}

    /** Each names the scan, counted from 1. */
    static List<Reason> of(List<Scan> scans) {
        List<Reason> doubts = new ArrayList<>();
        for (int i = 0; i < scans.size(); i++) {
            Set<Reason> found = new LinkedHashSet<>(scans.get(i).contradictions());
            found.addAll(counts(scans.get(i)));
            for (Reason doubt : found) {
                doubts.add(Reason.of(ScanDoubt.IN_SCAN, Part.count(i + 1), doubt));
            }
        }
        return doubts;
    }

    /** A control unit counts its confirmed codes in PID $01, and lists them in service $03 (SAE J1979). */
    private static List<Reason> counts(Scan scan) {
        Map<String, Integer> counted = new LinkedHashMap<>();
        Map<String, Set<String>> listed = new LinkedHashMap<>();
        for (Scan.Heard heard : scan.heard()) {
            if (heard.answer() instanceof Answer.ReadinessReport report && !report.thisCycle()) {
                counted.put(heard.unit(), report.readiness().confirmedCount());
            } else if (heard.answer() instanceof Answer.CodeList list
                    && list.kind() == Answer.CodeList.Kind.CONFIRMED) {
                Set<String> codes = listed.computeIfAbsent(heard.unit(), unit -> new LinkedHashSet<>());
                list.codes().forEach(code -> codes.add(code.text()));
            }
        }
        List<Reason> doubts = new ArrayList<>();
        counted.forEach((unit, count) -> {
            Set<String> codes = listed.get(unit);
            if (codes != null && codes.size() != count) {
                doubts.add(against(unit, Part.count(count), list(codes)));
            }
        });
        return doubts;
    }

    private static Reason against(String unit, Part count, Part codes) {
        return unit.isEmpty()
                ? Reason.of(ScanDoubt.COUNT_AGAINST_CODES, count, codes)
                : Reason.of(ScanDoubt.COUNT_OF_UNIT_AGAINST_CODES, count, Part.verbatim(unit), codes);
    }

    private static Part list(Set<String> codes) {
        return codes.isEmpty()
                ? ScanDoubt.NO_CODE
                : Shape.LIST.of(codes.stream().map(Part::verbatim).toList());
    }
}
