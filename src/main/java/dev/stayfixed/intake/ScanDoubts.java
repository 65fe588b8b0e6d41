package dev.stayfixed.intake;

import dev.stayfixed.obd.Answer;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.wording.Wording;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** Where the scans of a drive disagree with themselves, for whoever took them to look again. */
final class ScanDoubts {

    private ScanDoubts() {}

    /** Each in a sentence that names the scan, counted from 1. */
    static List<String> of(List<Scan> scans) {
        List<String> doubts = new ArrayList<>();
        for (int i = 0; i < scans.size(); i++) {
            Set<String> found = scans.get(i).contradictions().stream()
                    .map(Wording.METRIC::words)
                    .collect(Collectors.toCollection(LinkedHashSet::new));
            found.addAll(counts(scans.get(i)));
            for (String doubt : found) {
                doubts.add("scan " + (i + 1) + ": " + doubt);
            }
        }
        return doubts;
    }

    /** A control unit counts its confirmed codes in PID $01, and lists them in service $03 (SAE J1979). */
    private static List<String> counts(Scan scan) {
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
        List<String> doubts = new ArrayList<>();
        counted.forEach((unit, count) -> {
            Set<String> codes = listed.get(unit);
            if (codes != null && codes.size() != count) {
                doubts.add("the count of confirmed codes beside the MIL (PID $01) is %d%s, but service $03 lists %s"
                        .formatted(
                                count,
                                unit.isEmpty() ? "" : " (control unit " + unit + ")",
                                codes.isEmpty() ? "none" : String.join(", ", codes)));
            }
        });
        return doubts;
    }
}
