package dev.stayfixed.web.api;

import dev.stayfixed.obd.Answer;
import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.obd.Readiness;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.obd.StatusByte;
import dev.stayfixed.obd.TroubleCode;
import dev.stayfixed.obd.Vin;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** What a scan says, line by line and as a whole. */
record ScanAnswer(List<ScanLines.Line> lines, Understood understood) {

    /**
     * The scan as a whole, all control units together.
     *
     * @param confirmed codes of service $03; likewise pending ($07) and permanent ($0A)
     * @param statuses ISO 14229-1 status bytes in hex, by code
     * @param lamp whether the MIL is on, by PID $01 or in words; missing where not read or contradicted
     * @param readiness since the codes were cleared (PID $01)
     * @param thisCycle monitors of this driving cycle (PID $41)
     * @param contradictions where the record disagrees with itself; likewise {@code contradictionFacts}, for machines
     */
    record Understood(
            List<String> confirmed,
            List<String> pending,
            List<String> permanent,
            Map<String, String> statuses,
            @Nullable Boolean lamp,
            @Nullable Monitors readiness,
            @Nullable Monitors thisCycle,
            List<String> testResults,
            @Nullable Map<String, Integer> inUseCounters,
            @Nullable String vin,
            @Nullable String freezeFrameCode,
            boolean codesCleared,
            List<String> contradictions,
            List<ReasonAnswer> contradictionFacts) {}

    /** Readiness of the monitors. */
    record Monitors(
            boolean milCommanded, int confirmedCount, List<MonitorGroup> complete, List<MonitorGroup> incomplete) {
        static Monitors of(Readiness readiness) {
            return new Monitors(
                    readiness.milCommanded(),
                    readiness.confirmedCount(),
                    readiness.supported().stream()
                            .filter(readiness::isComplete)
                            .sorted()
                            .toList(),
                    readiness.incomplete().stream().sorted().toList());
        }
    }

    static ScanAnswer of(Scan scan) {
        return new ScanAnswer(
                ScanLines.of(scan).lines(),
                new Understood(
                        codes(scan, Answer.CodeList.Kind.CONFIRMED),
                        codes(scan, Answer.CodeList.Kind.PENDING),
                        codes(scan, Answer.CodeList.Kind.PERMANENT),
                        statuses(scan),
                        scan.lamp().orElse(null),
                        scan.sinceClear().map(Monitors::of).orElse(null),
                        scan.thisCycle().map(Monitors::of).orElse(null),
                        scan.testResults().stream()
                                .map(result -> ReasonAnswer.text(result.said()))
                                .toList(),
                        scan.inUse().map(c -> c.counts()).orElse(null),
                        scan.vin().map(Vin::text).orElse(null),
                        scan.freezeFrameCode().map(TroubleCode::text).orElse(null),
                        scan.codesCleared(),
                        scan.contradictions().stream().map(ReasonAnswer::text).toList(),
                        scan.contradictions().stream().map(ReasonAnswer::of).toList()));
    }

    private static List<String> codes(Scan scan, Answer.CodeList.Kind kind) {
        return scan.heard().stream()
                .flatMap(h -> h.answer() instanceof Answer.CodeList list && list.kind() == kind
                        ? list.codes().stream()
                        : Stream.empty())
                .map(TroubleCode::text)
                .distinct()
                .toList();
    }

    private static Map<String, String> statuses(Scan scan) {
        Map<String, String> statuses = new LinkedHashMap<>();
        scan.heard().forEach(h -> {
            if (h.answer() instanceof Answer.CodeStatuses heard) {
                heard.statuses().forEach((code, status) -> statuses.put(code.text(), hex(status)));
            }
        });
        return statuses;
    }

    private static String hex(StatusByte status) {
        return "%02X".formatted(status.value());
    }
}
