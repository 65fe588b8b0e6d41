package dev.stayfixed.obd;

import static dev.stayfixed.English.words;

import dev.stayfixed.reason.Reason;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** Puts what the real code read into the words that the data files use. */
final class FactReadings {

    private static final Map<MonitorGroup, String> SHORT = Map.ofEntries(
            Map.entry(MonitorGroup.MISFIRE, "misfire"),
            Map.entry(MonitorGroup.FUEL_SYSTEM, "fuel"),
            Map.entry(MonitorGroup.COMPONENTS, "components"),
            Map.entry(MonitorGroup.CATALYST, "catalyst"),
            Map.entry(MonitorGroup.HEATED_CATALYST, "heatedcat"),
            Map.entry(MonitorGroup.EVAPORATIVE_SYSTEM, "evap"),
            Map.entry(MonitorGroup.SECONDARY_AIR, "air"),
            Map.entry(MonitorGroup.GASOLINE_PARTICULATE_FILTER, "gpf"),
            Map.entry(MonitorGroup.OXYGEN_SENSOR, "o2"),
            Map.entry(MonitorGroup.OXYGEN_SENSOR_HEATER, "heater"),
            Map.entry(MonitorGroup.EGR_VVT, "egrvvt"),
            Map.entry(MonitorGroup.NMHC_CATALYST, "nmhc"),
            Map.entry(MonitorGroup.NOX_AFTERTREATMENT, "nox"),
            Map.entry(MonitorGroup.BOOST_PRESSURE, "boost"),
            Map.entry(MonitorGroup.EXHAUST_GAS_SENSOR, "egs"),
            Map.entry(MonitorGroup.PM_FILTER, "pm"));

    /** Bytes C and D name EGR and VVT last, in both layouts. */
    private static final List<MonitorGroup> ORDER = order();

    private FactReadings() {}

    private static List<MonitorGroup> order() {
        List<MonitorGroup> order = new ArrayList<>(EnumSet.allOf(MonitorGroup.class));
        order.remove(MonitorGroup.EGR_VVT);
        order.add(MonitorGroup.EGR_VVT);
        return order;
    }

    static String readiness(Facts.Row row) {
        Scan scan = Scan.read(row.lines());
        boolean thisCycle = scan.sinceClear().isEmpty();
        Readiness readiness = (thisCycle ? scan.thisCycle() : scan.sinceClear()).orElseThrow();
        return (readiness.milCommanded() ? "MIL on; " : "MIL off; ")
                + readiness.confirmedCount() + "; " + readiness.ignition() + "; "
                + names(readiness.supported()) + "; incomplete " + names(readiness.incomplete())
                + (thisCycle ? "; this cycle" : "")
                + (scan.contradictions().isEmpty() ? "" : "; inconsistent");
    }

    private static String names(Set<MonitorGroup> groups) {
        return orNone(ORDER.stream().filter(groups::contains).map(SHORT::get).collect(Collectors.joining(" ")));
    }

    private static String orNone(String text) {
        return text.isEmpty() ? "none" : text;
    }

    static String counters(Facts.Row row) {
        String[] parts = row.input().split(" \\? ", -1);
        Scan scan = Scan.read(parts[0]);
        if (scan.inUse().isEmpty()) {
            return refusal(scan);
        }
        InUseCounters counters = scan.inUse().get();
        if (parts.length == 2) {
            OptionalDouble ratio = counters.ratio(parts[1]);
            return ratio.isEmpty() ? "undefined" : String.format(Locale.ROOT, "%.3f", ratio.getAsDouble());
        }
        return InUseCounters.names(counters.ignition()).stream()
                .filter(counters.counts()::containsKey)
                .map(name -> name + " " + counters.counts().get(name))
                .collect(Collectors.joining("; "));
    }

    private static String refusal(Scan scan) {
        return scan.lines().stream().allMatch(line -> line.outcome() == Scan.Line.Outcome.NOT_UNDERSTOOD)
                ? "not understood"
                : "understood without a value";
    }

    static String testResults(Facts.Row row) {
        Scan scan = Scan.read(row.lines());
        if (scan.testResults().isEmpty()) {
            return refusal(scan);
        }
        return scan.testResults().stream()
                .map(result -> hex(result.monitorId()) + "/" + hex(result.testId()) + " "
                        + words(result.said()).replace(',', ';') + " "
                        + (result.notRunYet() ? "not run" : result.isInsideLimits() ? "inside" : "outside"))
                .collect(Collectors.joining("; "));
    }

    static String scaling(Facts.Row row) {
        String[] parts = row.input().split(" ", -1);
        int raw = Integer.parseInt(parts[1], 16);
        int other = raw == 0 ? 1 : 0;
        TestResult result = new TestResult(1, 0x80, Integer.parseInt(parts[0], 16), raw, other, other);
        String text = words(result.said());
        return text.substring(0, text.indexOf(" ("));
    }

    /** As many decimals as the source prints. */
    static String parameter(Facts.Row row) {
        Answer.Parameter parameter =
                (Answer.Parameter) Scan.read(row.lines()).heard().get(0).answer();
        String number = row.expected().split(" ", -1)[0];
        int decimals = number.contains(".") ? number.length() - number.indexOf('.') - 1 : 0;
        String value = String.format(
                Locale.ROOT, "%." + decimals + "f", parameter.value().orElseThrow());
        return (value + " " + parameter.unit()).strip();
    }

    static String codedParameter(Facts.Row row) {
        Scan scan = Scan.read("41 " + row.input());
        if (row.input().startsWith("1C")) {
            return ObdRequirement.name((int) scan.parameter(0x1C).orElseThrow());
        }
        if (scan.heard().isEmpty()) {
            return refusal(scan);
        }
        return Arrays.stream(row.input().substring(3).split(" ", -1))
                .map(value -> FuelSystemStatus.ofByte(Integer.parseInt(value, 16)))
                .map(status ->
                        status.map(FuelSystemStatus::label).orElse("none").replace(',', ';'))
                .collect(Collectors.joining(" | "));
    }

    static String bitmap(Facts.Row row) {
        String[] parts = row.input().split(" \\? ", -1);
        Scan scan = Scan.read(parts[0]);
        if (parts.length == 2) {
            OptionalDouble value = scan.parameter(Integer.parseInt(parts[1], 16));
            return value.isEmpty() ? "no value" : "value " + value.getAsDouble();
        }
        return supported(scan.heard().get(0).answer());
    }

    private static String supported(Answer answer) {
        return new TreeSet<>(((Answer.SupportedPids) answer).pids())
                .stream().map(FactReadings::hex).collect(Collectors.joining(" "));
    }

    static String codes(Facts.Row row) {
        if (!row.input().startsWith("text ")) {
            return answers(row);
        }
        try {
            TroubleCode code = TroubleCode.parse(row.input().substring(5));
            return code.text() + (code.isManufacturerSpecific() ? " maker" : "");
        } catch (ObdFormatException failure) {
            return "refused at " + failure.position();
        }
    }

    static String groups(Facts.Row row) {
        TroubleCode code = TroubleCode.parse(row.input());
        return MonitorGroup.of(code, Ignition.SPARK) + " " + MonitorGroup.of(code, Ignition.COMPRESSION);
    }

    /** Its nature, and on which engines the readiness of its group reaches it. */
    static String natures(Facts.Row row) {
        TroubleCode code = TroubleCode.parse(row.input());
        String engines = Arrays.stream(Ignition.values())
                .filter(ignition -> MonitorGroup.readinessCovers(code, ignition))
                .map(ignition -> ignition.name().toLowerCase(Locale.ROOT))
                .collect(Collectors.joining(" "));
        return CodeNature.of(code) + "; " + (engines.isEmpty() ? "no" : engines);
    }

    static String monitorIds(Facts.Row row) {
        TroubleCode code = TroubleCode.parse(row.input());
        return ids(TestResult.monitorIdsOf(code, Ignition.SPARK)) + " | "
                + ids(TestResult.monitorIdsOf(code, Ignition.COMPRESSION));
    }

    private static String ids(Set<Integer> ids) {
        return orNone(new TreeSet<>(ids).stream().map(FactReadings::hex).collect(Collectors.joining(" ")));
    }

    static String status(Facts.Row row) {
        String[] parts = row.input().split(" ", -1);
        StatusByte status = new StatusByte(Integer.parseInt(parts[0], 16), Integer.parseInt(parts[1], 16));
        return status.thisCycle().map(Enum::name).orElse("unknown")
                + (status.isPending() ? "; pending" : "")
                + (status.isConfirmed() ? "; confirmed" : "")
                + (status.failedSinceClear() ? "; failed since clear" : "")
                + (status.notCompletedSinceClear() ? "; not completed since clear" : "")
                + (status.warningIndicatorRequested() ? "; MIL" : "")
                + (status.isContradictory() ? "; contradictory" : "");
    }

    static String services(Facts.Row row) {
        Scan scan = Scan.read(row.lines());
        if (row.input().startsWith("42")) {
            return scan.freezeFrameCode()
                    .map(code -> "freeze frame of " + code.text())
                    .orElse("no freeze frame");
        }
        return scan.codesCleared() ? "cleared" : answers(row);
    }

    static String vin(Facts.Row row) {
        try {
            if (row.input().startsWith("year ")) {
                int year = Vin.parse(row.input().substring(5)).modelYear().orElse(0);
                return year == 0 ? "none" : "" + year;
            }
            return Vin.parse(row.input())
                    .warning()
                    .map(FactReadings::shortWarning)
                    .orElse("valid");
        } catch (ObdFormatException failure) {
            return "refused at " + failure.position();
        }
    }

    private static String shortWarning(Reason warning) {
        String[] quoted = words(warning).split("'", -1);
        return "warns: has " + quoted[1] + " needs " + quoted[3];
    }

    static String answers(Facts.Row row) {
        Scan scan = Scan.read(row.lines());
        String text = scan.heard().stream().map(heard -> answer(heard.answer())).collect(Collectors.joining("; "));
        boolean cut =
                scan.lines().stream().anyMatch(line -> words(line.explanation()).contains("cut short"));
        return (text.isEmpty() ? "nothing" : text) + (cut ? " (cut short)" : "");
    }

    private static String answer(Answer answer) {
        if (answer instanceof Answer.CodeList list) {
            String codes = list.codes().stream().map(TroubleCode::text).collect(Collectors.joining(" "));
            return list.kind().name().toLowerCase(Locale.ROOT) + " " + orNone(codes);
        }
        if (answer instanceof Answer.CodeStatuses list) {
            return list.statuses().entrySet().stream()
                    .map(entry ->
                            entry.getKey().text() + "=" + hex(entry.getValue().value()))
                    .collect(Collectors.joining(" "));
        }
        if (answer instanceof Answer.CodeCount count) {
            return count.count() + " codes; availability " + hex(count.availability());
        }
        if (answer instanceof Answer.VehicleIdentification vehicle) {
            return "VIN " + vehicle.vin().text();
        }
        return "supports " + supported(answer);
    }

    private static String hex(int value) {
        return String.format(Locale.ROOT, "%02X", value);
    }
}
