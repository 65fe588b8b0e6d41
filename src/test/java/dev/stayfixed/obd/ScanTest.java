package dev.stayfixed.obd;

import static dev.stayfixed.English.words;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.stayfixed.English;
import dev.stayfixed.obd.Scan.Line.Outcome;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What a technician pastes, and what becomes of each line. */
class ScanTest {

    private static final TroubleCode P0420 = TroubleCode.parse("P0420");

    private static String outcomes(String pasted) {
        return Scan.read(pasted).lines().stream()
                .map(line -> line.outcome().name())
                .collect(Collectors.joining(" "));
    }

    @Test
    void readsAWholePasteInAnyOrder() {
        Scan scan = Scan.read("""
                > 03
                43 01 04 20

                >0101
                7E8 06 41 01 81 07 65 04
                7E9 06 41 01 00 04 00 00
                # after the repair
                0x41 0x0C 0x1A 0xF8
                some words
                """.replace("\n", "\r\n"));
        assertEquals(
                "IGNORED UNDERSTOOD IGNORED IGNORED UNDERSTOOD UNDERSTOOD IGNORED UNDERSTOOD NOT_UNDERSTOOD",
                scan.lines().stream().map(line -> line.outcome().name()).collect(Collectors.joining(" ")));
        assertEquals(
                List.of(1, 2, 3, 4, 5, 6, 7, 8, 9),
                scan.lines().stream().map(Scan.Line::number).toList());
        assertEquals("some words", scan.lines().get(8).text());
        assertEquals(
                List.of("", "7E8", "7E9", ""),
                scan.heard().stream().map(Scan.Heard::unit).toList());
        assertEquals(OptionalDouble.of(1726), scan.parameter(0x0C));
        assertEquals(OptionalDouble.empty(), scan.parameter(0x0D));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "7E8 06 41 01 00 07 65 00",
                "7E8 06 41 01 00 07 65 00 AA",
                "7e8064101000765 00",
                "7E806410100076500",
                "7E8: 06 41 01 00 07 65 00",
                "18DAF110: 06 41 01 00 07 65 00",
                "ECM: 41 01 00 07 65 00",
                "CAFE: 41 01 00 07 65 00",
                "7E8 41 01 00 07 65 00",
                "18DAF110 06 41 01 00 07 65 00",
                "18 DA F1 10 06 41 01 00 07 65 00",
                "18DAF11006410100076500",
                "18DA F110 0641 0100 0765 00",
                "48 6B 10 41 01 00 07 65 00 71",
                "86 F1 10 41 01 00 07 65 00 35",
                "41 6B 10 41 01 00 07 65 00 6A",
                "06 41 01 00 07 65 00",
                "06 41 01 00 07 65 00 00",
                "41 01 00 07 65 00",
                "410100076500",
                ">41 01 00 07 65 00",
                "41,01,00,07,65,00",
                "$41 $01 $00 $07 $65 $00",
                "0x41 0X01 0x00 0x07 0x65 0x00",
                "Readiness: 41 01 00 07 65 00",
                "Readiness = 41 01 00 07 65 00",
                "41 01 00 07 65 00 # engine",
                "41 01 00 07 65 00 // engine",
                "41 01 00 07 65 00 ; engine",
                "SEARCHING...41 01 00 07 65 00",
                "BUS INIT: ...OK 41 01 00 07 65 00",
                "41\u00A001\u00A000 07 65 00",
                "41 01 00 07 65 00 00 00",
                "41 01 00 07 65 00 0D 28",
            })
    void readsTheSameReadinessInEveryForm(String line) {
        Readiness expected = Readiness.ofBytes(0x00, 0x07, 0x65, 0x00);
        Scan scan = Scan.read(line);
        assertEquals(Optional.of(expected), scan.sinceClear());
        assertEquals("UNDERSTOOD", outcomes(line));
    }

    @ParameterizedTest
    @CsvSource({
        "48 6B 10 41 01 00 07 65 00 71, 486B10",
        "86 F1 10 41 01 00 07 65 00 35, 86F110",
        "18 DA F1 10 06 41 01 00 07 65 00, 18DAF110",
        "7EA 06 41 01 00 07 65 00, 7EA",
    })
    void namesTheControlUnitByItsHeader(String line, String unit) {
        assertEquals(unit, Scan.read(line).heard().get(0).unit());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "NO DATA",
                "SEARCHING...",
                "OK",
                "?",
                "UNABLE TO CONNECT",
                "BUS INIT: ...OK",
                "BUFFER FULL",
                "STOPPED",
                "CAN ERROR",
                "ATZ",
                "AT SP 0",
                "12.4V",
                "AUTO, ISO 15765-4 (CAN 11/500)",
                "Adapter v1.5",
                "LV RESET",
                "> ",
                "",
                "   ",
                "-----",
                "=== before ===",
                "# comment",
                "Stored codes:",
                "Mode 03",
                "Service $07 pending",
                "> 01 0C",
                "01 0C 1",
                "010C1",
                "0101",
                "19 02 5A",
                "22 F4 0D",
                "14 FF FF 33",
                "7DF 02 01 0C",
                "7E0 03 19 02 5A",
                "7E7 02 01 0C",
                "7E0 01 03",
                "7E0 07 01 0C 0D 05 11 0F 10",
                "61 6A F1 01 00 29",
                "C2 33 F1 01 00 E7",
                "02 43 00",
                "07",
                "0A",
                "7E0 30 00 00",
                "18DB33F1 02 01 00",
                "68 6A F1 01 00 C4",
                "7E8 30 00 00",
                "7E8 00",
                "49 04 01 41 42 43",
                "45 01 02 03",
            })
    void setsAsideWhatTheVehicleDidNotSay(String line) {
        Scan scan = Scan.read(line + "\n");
        assertEquals(Outcome.IGNORED, scan.lines().get(0).outcome());
        assertEquals(List.of(), scan.heard());
        assertFalse(words(scan.lines().get(0).explanation()).isBlank());
    }

    @Test
    void anEmptyPasteHasNoLines() {
        assertEquals(List.of(), Scan.read("").lines());
        assertEquals(2, Scan.read("\n\n").lines().size());
        assertEquals(2, Scan.read("0101\r0101\r").lines().size());
    }

    @Test
    void readsSeveralParametersInOneAnswer() {
        Scan scan = Scan.read("7E8 07 41 0C 1A F8 0D 28 00");
        assertEquals("NOT_UNDERSTOOD", outcomes("7E8 07 41 0C 1A F8 0D 28 00"), "PID 00 without its bitmap");
        assertEquals(List.of(), scan.heard());
        Scan fits = Scan.read("7E8 06 41 0C 1A F8 0D 28");
        assertEquals(OptionalDouble.of(1726), fits.parameter(0x0C));
        assertEquals(OptionalDouble.of(40), fits.parameter(0x0D));
        assertEquals(
                "engine speed 1726 rpm; vehicle speed 40 km/h",
                words(fits.lines().get(0).explanation()));
    }

    @Test
    void saysInOneLineWhatAnAnswerHolds() {
        assertEquals(
                List.of(
                        "throttle position 14.9 %",
                        "fuel type 1",
                        "readiness since the last clear",
                        "readiness of this driving cycle",
                        "test results: 1; 2 bytes behind the last test left out",
                        "test results: 1",
                        "supported tests",
                        "supported infotypes",
                        "4 in-use counters",
                        "the control unit cleared its codes",
                        "codes with status: none",
                        "codes with status: P0420-00=2F; the list is cut short",
                        "codes with status: none; not the emissions group, so it says nothing about codes that it does not list",
                        "1 codes match the mask of the request",
                        "no permanent codes",
                        "service $05 is not used here"),
                Scan.read("""
                                41 11 26
                                41 51 01
                                41 01 00 07 65 00
                                41 41 00 07 65 00
                                46 01 05 10 00 48 00 00 00 64 AA AA
                                46 01 05 10 00 48 00 00 00 64
                                46 20 80 00 00 01
                                49 00 50 00 00 00
                                49 08 04 00 01 00 02 00 03 00 04
                                54
                                59 02 FF
                                59 02 FF 04 20 00 2F 01 71
                                59 42 D0 FF FF 04
                                59 01 2F 01 00 01
                                4A 00
                                45 01
                                """).lines().stream()
                        .map(line -> words(line.explanation()))
                        .toList());
    }

    @Test
    void keepsTheBytesOfAParameterWithoutFormula() {
        Scan scan = Scan.read("41 9A 01 02 03");
        assertEquals(
                new Answer.Parameter(0x9A, "01 02 03", OptionalDouble.empty(), ""),
                scan.heard().get(0).answer());
        assertEquals("PID 9A kept as bytes 01 02 03", words(scan.lines().get(0).explanation()));
        assertEquals(OptionalDouble.empty(), scan.parameter(0x9A));
    }

    @Test
    void takesTheFirstControlUnitHeardForAParameter() {
        assertEquals(
                OptionalDouble.of(40),
                Scan.read("7E9 03 41 0D 28\n7E8 03 41 0D 29").parameter(0x0D));
    }

    @Test
    void mergesReadinessOverControlUnitsAndTakesTheLastOfEach() {
        Scan scan = Scan.read("7E8 06 41 01 81 07 65 04\n7E9 06 41 01 00 04 00 00\n7E8 06 41 01 00 07 65 00");
        Readiness readiness = scan.sinceClear().orElseThrow();
        assertFalse(readiness.milCommanded());
        assertEquals(Set.of(), readiness.incomplete());
        Readiness headerless =
                Scan.read("41 01 81 07 65 04\n41 01 00 04 00 00").sinceClear().orElseThrow();
        assertTrue(headerless.milCommanded());
        assertEquals(Set.of(MonitorGroup.EVAPORATIVE_SYSTEM), headerless.incomplete());
        assertTrue(headerless.isComplete(MonitorGroup.CATALYST));
        assertFalse(headerless.isComplete(MonitorGroup.EVAPORATIVE_SYSTEM));
        assertFalse(headerless.isComplete(MonitorGroup.SECONDARY_AIR));
        assertFalse(headerless.supports(MonitorGroup.SECONDARY_AIR));
        assertTrue(headerless.supports(MonitorGroup.EVAPORATIVE_SYSTEM));
    }

    @Test
    void mergedReadinessHasTheIgnitionOfTheEngine() {
        Readiness gearbox = Readiness.ofBytes(1, 0x04, 0, 0);
        Readiness engine = Readiness.ofBytes(2, 0x0E, 0xEB, 0);
        assertEquals(Ignition.COMPRESSION, gearbox.merge(engine).ignition());
        assertEquals(Ignition.COMPRESSION, engine.merge(gearbox).ignition());
        assertEquals(3, engine.merge(gearbox).confirmedCount());
        assertEquals(
                Ignition.SPARK, gearbox.merge(Readiness.ofBytes(0, 0x0C, 0, 0)).ignition());
    }

    @Test
    void readinessOfThisCycleCommandsNoLamp() {
        Readiness readiness = Scan.read("41 41 80 07 65 00").thisCycle().orElseThrow();
        assertFalse(readiness.milCommanded());
        assertEquals(0, readiness.confirmedCount());
        assertEquals(List.of(), Scan.read("41 41 80 07 65 00").contradictions());
        assertTrue(Scan.read("41 41 80 07 65 00").sinceClear().isEmpty());
    }

    @Test
    void readsTheFreezeFrame() {
        Scan scan = Scan.read(
                "42 02 00 04 20\n42 05 00 7B\n42 05 01 28\n42 9A 00 11\n42 01 00 81 07 65 04\n42 00 00 7E 1F 00 01");
        assertEquals(Optional.of(P0420), scan.freezeFrameCode());
        assertEquals(OptionalDouble.of(83), scan.freezeFrame(5));
        assertEquals(OptionalDouble.empty(), scan.freezeFrame(0x9A));
        assertEquals(OptionalDouble.empty(), scan.parameter(5));
        assertTrue(scan.sinceClear().isEmpty());
        assertEquals(
                List.of(
                        "freeze frame 0, PID 02 kept as bytes 04 20",
                        "freeze frame 0, engine coolant temperature 83 °C",
                        "freeze frame 1, engine coolant temperature 0 °C",
                        "freeze frame 0, PID 9A kept as bytes 11",
                        "freeze frame 0, PID 01 kept as bytes 81 07 65 04",
                        "supported parameters"),
                scan.lines().stream().map(line -> words(line.explanation())).toList());
        assertEquals(
                new Answer.SupportedIds(2, 0, Set.of(2, 3, 4, 5, 6, 7, 0x0C, 0x0D, 0x0E, 0x0F, 0x10, 0x20)),
                scan.heard().get(5).answer());
    }

    @Test
    void onlyFrameZeroIsTheFreezeFrame() {
        Scan scan = Scan.read("42 02 01 04 20\n42 05 01 7B");
        assertTrue(scan.freezeFrameCode().isEmpty());
        assertTrue(scan.freezeFrame(5).isEmpty());
        assertEquals(2, scan.heard().size());
    }

    @Test
    void readsIdentifiersOfService22() {
        Scan scan = Scan.read(
                "62 F4 0D 28\n62 F1 90 31 47 31 4A 43 35 34 34 34 52 37 32 35 32 33 36 37\n62 F4 01 00 07 65 00");
        assertEquals(OptionalDouble.of(40), scan.parameter(0x0D));
        assertEquals("1G1JC5444R7252367", scan.vin().orElseThrow().text());
        assertTrue(scan.sinceClear().isPresent());
        assertEquals(
                "2FMPK4J92GBC00001".length(),
                Scan.read("62 F8 02 32 46 4D 50 4B 34 4A 39 32 47 42 43 30 30 30 30 31")
                        .vin()
                        .orElseThrow()
                        .text()
                        .length());
        assertEquals("NOT_UNDERSTOOD", outcomes("62 F6 01 00"));
        assertEquals("NOT_UNDERSTOOD", outcomes("62 F4 9A 01 02"));
        assertEquals("NOT_UNDERSTOOD", outcomes("62 F4 0C 1A"));
        assertEquals("NOT_UNDERSTOOD", outcomes("62 F4"));
    }

    @Test
    void readsRefusals() {
        Scan scan = Scan.read("7F 22 31\n7E8 03 7F 03 78\n7F 01 01 00 00 11\n7F 22");
        assertEquals(new Answer.Refused(0x22, 0x31), scan.heard().get(0).answer());
        assertEquals(new Answer.Refused(0x03, 0x78), scan.heard().get(1).answer());
        assertEquals(new Answer.Refused(0x01, 0x11), scan.heard().get(2).answer());
        assertEquals("refused service $22, reason 31", words(scan.lines().get(0).explanation()));
        assertEquals(Outcome.NOT_UNDERSTOOD, scan.lines().get(3).outcome());
    }

    @Test
    void readsSupportBitmapsOfTestsAndInfotypes() {
        assertEquals(
                new Answer.SupportedIds(6, 0x20, Set.of(0x21, 0x40)),
                Scan.read("46 20 80 00 00 01").heard().get(0).answer());
        assertEquals(
                new Answer.SupportedIds(6, 0x00, Set.of(0x01)),
                Scan.read("46 00 FF 80 00 00 00").heard().get(0).answer());
        assertEquals(
                new Answer.SupportedIds(9, 0x00, Set.of(2, 4, 6, 8, 10)),
                Scan.read("7E8 07 49 00 01 55 40 00 00").heard().get(0).answer());
        assertEquals(
                new Answer.SupportedIds(9, 0x00, Set.of(2, 4)),
                Scan.read("49 00 50 00 00 00").heard().get(0).answer());
        assertEquals("NOT_UNDERSTOOD", outcomes("49 00 50 00 00"));
    }

    @Test
    void readsTestResultsOfTheOlderLayout() {
        Scan scan = Scan.read("46 05 81 00 10 00 20\n46 05 01 00 10 00 20");
        Answer.OlderTestResult minimum =
                (Answer.OlderTestResult) scan.heard().get(0).answer();
        assertEquals(new Answer.OlderTestResult(5, 1, 0x10, 0x20, true), minimum);
        assertFalse(minimum.isInsideLimit());
        assertTrue(new Answer.OlderTestResult(5, 1, 0x20, 0x20, true).isInsideLimit());
        Answer.OlderTestResult maximum =
                (Answer.OlderTestResult) scan.heard().get(1).answer();
        assertTrue(maximum.isInsideLimit());
        assertTrue(new Answer.OlderTestResult(5, 1, 0x20, 0x20, false).isInsideLimit());
        assertFalse(new Answer.OlderTestResult(5, 1, 0x21, 0x20, false).isInsideLimit());
        assertEquals(List.of(), scan.testResults());
    }

    @Test
    void skipsTestRecordsWithoutMonitor() {
        List<TestResult> results = Scan.read("46 01 05 10 00 48 00 00 00 64 00 00 00 00 00 00 00 00 00")
                .testResults();
        assertEquals(List.of(new TestResult(1, 5, 0x10, 0x48, 0, 0x64)), results);
    }

    @Test
    void readsCodesInWordsOnlyWithTheirList() {
        Scan scan = Scan.read("P0420 pending\nPermanent: P0442, P0455-00\nstored p0171 (bank 1 lean)\nConfirmed U0100");
        assertEquals(
                List.of(
                        new Answer.CodeList(Answer.CodeList.Kind.PENDING, List.of(P0420)),
                        new Answer.CodeList(
                                Answer.CodeList.Kind.PERMANENT,
                                List.of(TroubleCode.parse("P0442"), TroubleCode.parse("P0455-00"))),
                        new Answer.CodeList(Answer.CodeList.Kind.CONFIRMED, List.of(TroubleCode.parse("P0171"))),
                        new Answer.CodeList(Answer.CodeList.Kind.CONFIRMED, List.of(TroubleCode.parse("U0100")))),
                scan.heard().stream().map(Scan.Heard::answer).toList());
        assertEquals(
                "pending: P0420 (in words, so other codes may stand in that list)",
                words(scan.lines().get(0).explanation()));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "P0420",
                "C0420",
                "P0420 pending and stored",
                "no pending P0420",
                "P0420 not confirmed",
                "P0420 pending?",
                "pending P0420 cleared",
                "P0420 isn't pending",
                "P0420 catalyst",
                "P0000 pending",
            })
    void leavesCodesInDoubtfulWordsAlone(String line) {
        assertEquals("NOT_UNDERSTOOD", outcomes(line));
    }

    @Test
    void noticesWhereTheRecordDisagreesWithItself() {
        assertEquals(
                List.of(
                        "the MIL is commanded on, but no confirmed code is counted (control unit 7E8)",
                        "P0420-00: status 42 says failed and not completed in the same cycle"),
                Scan.read("7E8 06 41 01 80 07 65 00\n7E9 06 41 01 00 04 00 00\n59 02 FF 04 20 00 42 04 42 00 02")
                        .contradictions()
                        .stream()
                        .map(English::words)
                        .toList());
        assertEquals(
                List.of(), Scan.read("41 01 81 07 65 00\n41 01 00 07 65 00").contradictions());
    }

    @Test
    void takesTheStatusThatSpeaksMostAgainstTheRepair() {
        String list = "59 02 FF 04 20 00 00 04 20 1F 40 04 42 00 02";
        assertEquals(0x40, Scan.read(list).status(P0420).orElseThrow().value());
        assertEquals(
                0x00,
                Scan.read(list)
                        .status(TroubleCode.parse("P0420-00"))
                        .orElseThrow()
                        .value());
        assertEquals(
                0x02,
                Scan.read(list + "\n59 02 FF 04 20 00 02")
                        .status(P0420)
                        .orElseThrow()
                        .value());
        assertEquals(
                0x42,
                Scan.read("59 02 FF 04 20 00 42 04 20 00 02")
                        .status(P0420)
                        .orElseThrow()
                        .value());
        assertEquals(
                0x00,
                Scan.read("59 02 BF 04 20 00 00\n59 02 FF 04 20 00 00")
                        .status(P0420)
                        .orElseThrow()
                        .value());
        assertTrue(Scan.read(list).status(TroubleCode.parse("P0171")).isEmpty());
        assertEquals(
                0x20,
                Scan.read("59 02 FF 04 20 00 20\n59 02 FF 04 20 00 00")
                        .status(P0420)
                        .orElseThrow()
                        .value(),
                "of two passes the first heard");
    }

    @Test
    void readsTheFormsOfSaeJ1979Dash2() {
        Scan scan = Scan.read("19 42 33 FF 1E\n59 42 33 FB 1E 04 20 04 20 00 2F\n19 55 33\n59 55 33 FB 04 03 00 00 28");
        assertEquals(
                new Answer.CodeStatuses(
                        OptionalInt.of(0xFF),
                        0xFB,
                        java.util.Map.of(TroubleCode.parse("P0420-00"), new StatusByte(0x2F, 0xFB))),
                scan.heard().get(0).answer());
        assertEquals(Scan.Presence.PRESENT, scan.permanent(TroubleCode.parse("P0300")));
        assertEquals(Scan.Presence.ABSENT, scan.permanent(P0420));
        assertEquals(Scan.Presence.PRESENT, scan.confirmed(P0420));
        assertEquals(
                "permanent codes with status: P0300-00=28",
                words(scan.lines().get(3).explanation()));
    }

    @Test
    void readsPermanentAndSupportedCodesOfPlainUds() {
        Scan scan = Scan.read("59 15 FF 03 00 00 28\n59 0A FF 04 20 00 50 01 71 00 2F");
        assertEquals(Scan.Presence.PRESENT, scan.permanent(TroubleCode.parse("P0300")));
        assertEquals(Scan.Presence.ABSENT, scan.permanent(P0420));
        assertEquals(Scan.Presence.ABSENT, scan.confirmed(P0420), "its own status byte says so");
        assertEquals(Scan.Presence.UNKNOWN, scan.confirmed(TroubleCode.parse("P0442")), "not among the supported");
    }

    @Test
    void linesAndPasteHaveALimitAndLoseNothing() {
        String longLine = "41 0D 28 " + " ".repeat(Scan.MAX_LINE_LENGTH);
        Scan scan = Scan.read(longLine + "\n43 00");
        assertEquals(Outcome.NOT_UNDERSTOOD, scan.lines().get(0).outcome());
        assertEquals(longLine, scan.lines().get(0).text());
        assertEquals(
                "found a line of 16393 characters, expected at most 16384",
                words(scan.lines().get(0).explanation()));
        assertEquals(Scan.Presence.UNKNOWN, scan.confirmed(P0420));
        Scan longest = Scan.read("41 0D 28" + " ".repeat(Scan.MAX_LINE_LENGTH - 8));
        assertEquals(OptionalDouble.of(40), longest.parameter(0x0D));

        Scan many = Scan.read("43 00\n" + "0101\n".repeat(Scan.MAX_LINES - 1) + "41 0D 28\n");
        assertEquals(Scan.MAX_LINES + 1, many.lines().size());
        assertEquals(OptionalDouble.empty(), many.parameter(0x0D));
        assertEquals(
                "found line 10001, expected at most 10000 lines; paste the rest as another scan",
                words(many.lines().get(Scan.MAX_LINES).explanation()));
        assertEquals(Outcome.IGNORED, many.lines().get(Scan.MAX_LINES - 1).outcome());
        assertEquals(Scan.Presence.UNKNOWN, many.confirmed(P0420));
    }
}
