package dev.stayfixed.verification;

import static dev.stayfixed.English.words;
import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.ReferenceRows;
import dev.stayfixed.ReferenceRows.Row;
import dev.stayfixed.drive.DriveRules;
import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.drive.OperatingPoint;
import dev.stayfixed.obd.Ignition;
import dev.stayfixed.obd.TroubleCode;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Whole histories and single status bytes, each with its clause. */
class HistoriesTest {

    static Stream<Row> rows() {
        return ReferenceRows.in(HistoriesTest.class, "histories.csv").stream();
    }

    @ParameterizedTest
    @MethodSource("rows")
    void holdsEveryCheckRow(Row row) {
        switch (row.kind()) {
            case "state" -> assertThat(words(state(row.input()).said())).isEqualTo(row.expected());
            case "outcome" ->
                assertThat(words(History.repaired("P0420")
                                .drive(ScanText.scan().status("P0420", Integer.parseInt(row.input(), 16)))
                                .lastOutcome()))
                        .isEqualTo(row.expected());
            case "masked" ->
                assertThat(words(History.repaired("P0420")
                                .drive(ScanText.scan()
                                        .status(
                                                "P0420",
                                                hex(row.inputs().get(0)),
                                                hex(row.inputs().get(1))))
                                .lastOutcome()))
                        .isEqualTo(row.expected());
            case "mil" -> assertThat(words(memory(row).mil().explanation())).contains(row.expected());
            case "confirmed" ->
                assertThat(words(memory(row).confirmedCode().explanation())).contains(row.expected());
            case "permanent", "permanent-strict" ->
                assertThat(words(memory(row).permanentCode().explanation())).contains(row.expected());
            case "similar" -> assertThat(similar(row.inputs())).hasToString(row.expected());
            default -> throw new IllegalArgumentException("no such kind: " + row);
        }
    }

    @Test
    void ranEveryRowOfItsFile() {
        assertThat(rows().map(Row::id).distinct().sorted().toList())
                .containsExactly(
                        8, 9, 10, 11, 12, 13, 20, 21, 22, 23, 24, 26, 36, 37, 38, 40, 41, 42, 51, 52, 53, 54, 55, 56,
                        62, 77, 290, 291, 292, 293, 294, 295, 296, 297, 298, 299, 300, 301, 302, 303, 304, 305, 306,
                        307, 401);
    }

    private static VerificationState state(String input) {
        String[] parts = input.split(" ", 3);
        Trips trips = Trips.valueOf(parts[0]);
        RepairedFault base = RepairedFault.of(TroubleCode.parse("P0420"), Ignition.SPARK, trips);
        RepairedFault fault = new RepairedFault(
                base.code(),
                base.ignition(),
                base.group(),
                trips,
                Integer.parseInt(parts[1]),
                base.weakestAccepted(),
                List.of(),
                base.freezeFrame());
        return History.of(fault).repair(true).drives(parts[2]).verdict().state();
    }

    private static CodeMemory memory(Row row) {
        String code = row.inputs().get(0);
        String handling = row.inputs().get(1);
        ScanText before = ScanText.scan()
                .pending()
                .confirmed(code)
                .permanent(code)
                .readiness(handling.equals("kept-off") ? "01 07 E5 00" : "81 07 E5 00");
        OperatingPoint frozen = new OperatingPoint(850, 30, 80);
        History history = History.of(History.frozenAt(code, frozen))
                .driving(new DriveSummary(Map.of(), List.of(frozen), Optional.empty()))
                .repair(handling.equals("cleared"), before, null);
        if (row.kind().endsWith("strict")) {
            history.judgedBy(
                    new RuleSet("strict", "1", DriveRules.WHOLE_DEGREES, 375, 20, true, 70, 80, 3, false, 40, true));
        }
        String drives = row.inputs().get(2);
        if (drives.endsWith("W")) {
            int count = Integer.parseInt(drives.replace("W", ""));
            for (int i = 0; i < count; i++) {
                history.drive(History.WARM_UP);
            }
        } else if (drives.endsWith("M")) {
            driven(history, handling, drives.replace("M", "")).drive(History.MINIMUM_CYCLE);
        } else {
            driven(history, handling, drives);
        }
        return history.verdict().memory();
    }

    private static History driven(History history, String handling, String drives) {
        return handling.equals("cleared") ? history.drives(drives) : history.drivesWithStoredCode(drives);
    }

    private static boolean similar(List<String> input) {
        RuleSet standard = RuleSet.STANDARD;
        String load = input.get(0);
        RuleSet rules = new RuleSet(
                "test",
                "1",
                DriveRules.WHOLE_DEGREES,
                standard.similarEngineSpeed(),
                Double.parseDouble(load.replace("%", "")),
                load.endsWith("%"),
                standard.warmFrom(),
                80,
                3,
                false,
                40,
                false);
        return new SimilarConditions(rules).similar(point(input.subList(1, 4)), point(input.subList(4, 7)));
    }

    private static OperatingPoint point(List<String> numbers) {
        return new OperatingPoint(
                Double.parseDouble(numbers.get(0)),
                Double.parseDouble(numbers.get(1)),
                Double.parseDouble(numbers.get(2)));
    }

    private static int hex(String text) {
        return Integer.parseInt(text, 16);
    }
}
