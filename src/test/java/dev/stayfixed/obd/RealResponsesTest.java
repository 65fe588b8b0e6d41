package dev.stayfixed.obd;

import static dev.stayfixed.English.words;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/**
 * Real responses and other libraries' test vectors, where a folder with them is there (system property {@code stayfixed.data}). Every
 * difference to what the source says is listed here with its reason.
 */
class RealResponsesTest {

    private static final Path DATA = Path.of(System.getProperty("stayfixed.data", "../shared/data"), "vectors");

    /** OBDb names the readiness bits so; bit 4 of byte C still has its older name, A/C refrigerant. */
    private static final Map<String, MonitorGroup> GROUPS = Map.ofEntries(
            Map.entry("MIS", MonitorGroup.MISFIRE),
            Map.entry("FUEL", MonitorGroup.FUEL_SYSTEM),
            Map.entry("CCM", MonitorGroup.COMPONENTS),
            Map.entry("CAT", MonitorGroup.CATALYST),
            Map.entry("HCAT", MonitorGroup.HEATED_CATALYST),
            Map.entry("EVAP", MonitorGroup.EVAPORATIVE_SYSTEM),
            Map.entry("AIR", MonitorGroup.SECONDARY_AIR),
            Map.entry("ACRF", MonitorGroup.GASOLINE_PARTICULATE_FILTER),
            Map.entry("O2S", MonitorGroup.OXYGEN_SENSOR),
            Map.entry("HTR", MonitorGroup.OXYGEN_SENSOR_HEATER),
            Map.entry("EGR", MonitorGroup.EGR_VVT));

    private static final Pattern FLAG = Pattern.compile("([A-Z0-9]+?)_?(SUP|RDY|ENA|CMPL)");

    /** OBDb's shorter words for the same requirement. */
    private static final Map<String, String> REQUIREMENTS = Map.of(
            "OBD II", "OBD II (CARB)",
            "OBD", "OBD (EPA)",
            "OBD & OBD II", "OBD and OBD II",
            "EOBD", "EOBD",
            "GAS", "1.0");

    /** Responses that say something else to us, and why. */
    private static final Map<String, String> EXPLAINED = Map.ofEntries(
            Map.entry("41 01 9F", "cut short: a readiness answer has four bytes, so nothing is read from one"),
            Map.entry("41 01 0F", "cut short: a readiness answer has four bytes, so nothing is read from one"),
            Map.entry("01 04 80 03 41 23", "bare code bytes without a service are no answer"),
            Map.entry("00 00 01 04 00 00", "bare code bytes without a service are no answer"),
            Map.entry("01 04 80 03 41", "bare code bytes without a service are no answer"),
            Map.entry("BE 1F A8 13", "a bare bitmap without a service is no answer"),
            Map.entry(
                    "7E8 10 20 49 04 00 01 02 03 | 7E8 21 04 05 06 07 08 09 0A | 7E8 22 0B 0C 0D 0E 0F 10 11 | 7E8 23 12 13"
                            + " 14 15 16 17 18",
                    "32 bytes announced, 27 there: not read as whole"),
            Map.entry(
                    "same without any one frame but the last",
                    "no bytes to read; missing frames are tested in ScanFramesTest"),
            Map.entry(
                    "7E8 06 41 00 00 01 02 03 ; 7EB .. ; 7EA ..",
                    "abridged by the source; three units are in our own facts"),
            Map.entry("46 01 .. 05 10 00 48 00 00 00 64", "abridged by the source; both records are in our own facts"),
            Map.entry("46 01 .. 85 24 00 96 00 4B FF FF", "abridged by the source; both records are in our own facts"),
            Map.entry("59 02 FB 12 34 56 20 12 34 57 60 + 1..5 bytes 00", "abridged by the source; in our own facts"),
            Map.entry("59 03 12 34 56 01 12 34 56 02 78 9A BC 03", "sub-function 03 is refused by name"),
            Map.entry("59 04 12 34 56 24 02 01 47 11 A6 66 07 50 20", "sub-function 04 is refused by name"),
            Map.entry("01 03 07 0F 1F 3F 7F FF", "a list of status bytes, tested in the status facts"));

    @Test
    void agreesWithRealServiceOneResponses() throws IOException {
        List<String> differences = new ArrayList<>();
        List<Map<String, String>> rows = rows("obdb_service01.csv");
        for (Map<String, String> row : rows) {
            Scan scan = Scan.read(row.getOrDefault("response_frame", ""));
            for (String pair : row.getOrDefault("decoded", "").split(";", -1)) {
                String[] parts = pair.split("=", -1);
                if (!agrees(scan, parts[0], parts[1], row.getOrDefault("decoded", ""))) {
                    differences.add(row.getOrDefault("response_frame", "") + " " + pair);
                }
            }
        }
        assertEquals(List.of(), differences);
        assertEquals(730, rows.size());
    }

    private static boolean agrees(Scan scan, String name, String expected, String all) {
        Matcher flag = FLAG.matcher(name);
        boolean readiness = scan.sinceClear().isPresent() || scan.thisCycle().isPresent();
        if (readiness) {
            Readiness there = scan.sinceClear().or(scan::thisCycle).orElseThrow();
            return switch (name) {
                case "MIL" -> there.milCommanded() == expected.equals("1");
                case "DTC_CNT" -> there.confirmedCount() == Integer.parseInt(expected);
                case "CIM_SUP", "CIM_SUP_FLAG" -> there.ignition().name().equals(expected);
                default -> flag.matches() && agrees(there, flag, expected, all);
            };
        }
        Answer.Parameter parameter = (Answer.Parameter) scan.heard().get(0).answer();
        double value = parameter.value().orElseThrow();
        if (name.equals("OBDSUP")) {
            return ObdRequirement.name((int) value).equals(REQUIREMENTS.get(expected));
        }
        return name.equals("FUEL_TYP")
                ? ("" + value).equals(REQUIREMENTS.get(expected))
                : Math.abs(value - Double.parseDouble(expected)) < 1e-5;
    }

    /** OBDb reports byte D as it stands; we drop the bits that byte C does not support. */
    private static boolean agrees(Readiness there, Matcher flag, String expected, String all) {
        MonitorGroup group = GROUPS.get(flag.group(1));
        if (group == null) {
            return false;
        }
        boolean supported = Pattern.compile("(^|;)" + flag.group(1) + "_?(SUP|ENA)=1")
                .matcher(all)
                .find();
        boolean set = expected.equals("1");
        return flag.group(2).matches("SUP|ENA")
                ? there.supports(group) == set
                : there.incomplete().contains(group) == (set && supported);
    }

    @Test
    void agreesWithOtherLibrariesVectors() throws IOException {
        Set<String> differences = new TreeSet<>();
        List<Map<String, String>> rows = rows("library_vectors.csv");
        for (Map<String, String> row : rows) {
            Scan scan = Scan.read(paste(row.getOrDefault("request", ""), row.getOrDefault("response", "")));
            if (!agrees(scan, row.getOrDefault("decoded", ""))) {
                differences.add(row.getOrDefault("response", ""));
            }
        }
        assertEquals(new TreeSet<>(EXPLAINED.keySet()), differences);
        assertEquals(92, rows.size());
    }

    /** "length 014: A | B" as the adapter prints it: the length, then numbered lines. */
    private static String paste(String request, String response) {
        String[] lines = response.replaceFirst("length \\w+: ", "").split(" \\| ", -1);
        StringBuilder text = new StringBuilder(request.startsWith("19") ? request + "\n" : "");
        boolean numbered = response.startsWith("length ");
        if (numbered) {
            text.append(response, "length ".length(), response.indexOf(':')).append('\n');
        }
        for (int at = 0; at < lines.length; at++) {
            text.append(numbered ? at + ": " : "").append(lines[at]).append('\n');
        }
        return text.toString();
    }

    private static boolean agrees(Scan scan, String decoded) {
        if (scan.heard().isEmpty()) {
            return decoded.startsWith("no message") || decoded.startsWith("rejected (9");
        }
        Answer answer = scan.heard().get(0).answer();
        if (answer instanceof Answer.Parameter parameter) {
            double expected = Double.parseDouble(decoded.split(" ", -1)[0]);
            return Math.abs(parameter.value().orElseThrow() - expected) < 0.0501;
        }
        if (answer instanceof Answer.VehicleIdentification vehicle) {
            return decoded.startsWith(vehicle.vin().text());
        }
        if (answer instanceof Answer.CodeList) {
            return decoded.replaceAll(" ?\\(.*", "").equals(codes(scan));
        }
        if (answer instanceof Answer.ReadinessReport report) {
            return agrees(report, decoded);
        }
        if (answer instanceof Answer.CodeCount count) {
            return decoded.contains(" = " + count.count()) && decoded.contains("FB");
        }
        if (answer instanceof Answer.CodeStatuses list) {
            return list.statuses().entrySet().stream()
                    .allMatch(entry -> decoded.contains("DTC " + number(entry.getKey()) + " status "
                            + Bytes.hex(entry.getValue().value())));
        }
        return agreesInWords(answer, decoded);
    }

    private static boolean agreesInWords(Answer answer, String decoded) {
        if (answer instanceof Answer.TestResults results) {
            TestResult result = results.results().get(0);
            return decoded.contains("365 mV")
                    && result.isInsideLimits()
                    && words(result.said()).startsWith("365.0");
        }
        Set<Integer> pids = ((Answer.SupportedPids) answer).pids();
        String listed = pids.stream().map(Bytes::hex).collect(Collectors.joining(" "));
        String bits = new TreeSet<>(pids).stream().map(Bytes::hex).collect(Collectors.joining(" "));
        return decoded.equals("PIDs " + bits) || (decoded.startsWith("bits 11110000") && listed.length() == 35);
    }

    private static String codes(Scan scan) {
        String codes = scan.heard().stream()
                .flatMap(heard -> ((Answer.CodeList) heard.answer()).codes().stream())
                .map(TroubleCode::text)
                .collect(Collectors.joining(" "));
        return codes.isEmpty() ? "none" : codes;
    }

    private static String number(TroubleCode code) {
        return "%04X%02X".formatted(code.number(), code.failureType().orElseThrow());
    }

    /** The prose of the vectors: MIL, the count, and for the ones that list them the incomplete monitors. */
    private static boolean agrees(Answer.ReadinessReport report, String decoded) {
        Readiness readiness = report.readiness();
        if (report.thisCycle() != decoded.startsWith("this drive")) {
            return false;
        }
        Matcher count = Pattern.compile("(\\d+) codes").matcher(decoded);
        boolean mil = report.thisCycle() || readiness.milCommanded() == decoded.contains("MIL on");
        boolean counted = !count.find() || readiness.confirmedCount() == Integer.parseInt(count.group(1));
        boolean complete = !decoded.contains("all 8")
                || (readiness.supported().size() == 11 && readiness.incomplete().isEmpty());
        boolean diesel = !decoded.contains("compression") || readiness.ignition() == Ignition.COMPRESSION;
        boolean air = !decoded.contains("D=C8")
                || readiness
                        .incomplete()
                        .equals(Set.of(
                                MonitorGroup.SECONDARY_AIR, MonitorGroup.OXYGEN_SENSOR_HEATER, MonitorGroup.EGR_VVT));
        boolean nmhc = !decoded.contains("NMHC") || readiness.incomplete().contains(MonitorGroup.NMHC_CATALYST);
        return mil && counted && complete && diesel && air && nmhc;
    }

    private static List<Map<String, String>> rows(String file) throws IOException {
        Path path = DATA.resolve(file);
        assumeTrue(
                Files.exists(path),
                "no folder of real responses here; name it with -Dstayfixed.data=... to run this check");
        List<String> lines = Files.readAllLines(path);
        List<String> names = fields(lines.get(0));
        return lines.stream().skip(1).map(line -> row(names, fields(line))).toList();
    }

    private static Map<String, String> row(List<String> names, List<String> fields) {
        Map<String, String> row = new HashMap<>();
        for (int at = 0; at < names.size(); at++) {
            row.put(names.get(at), fields.get(at));
        }
        return row;
    }

    /** Commas between fields; a field with a comma stands in quotation marks. */
    private static List<String> fields(String line) {
        Matcher field = Pattern.compile("(?:^|,)(?:\"([^\"]*)\"|([^,]*))").matcher(line);
        List<String> fields = new ArrayList<>();
        while (field.find()) {
            fields.add(field.group(1) == null ? field.group(2) : field.group(1));
        }
        return fields;
    }
}
