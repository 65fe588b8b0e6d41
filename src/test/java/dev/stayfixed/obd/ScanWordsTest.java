package dev.stayfixed.obd;

import static dev.stayfixed.English.words;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTimeout;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.stayfixed.English;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A tool that shows words only. The gravest error is a "none" that nobody read. */
class ScanWordsTest {

    private static final TroubleCode P0420 = TroubleCode.parse("P0420");

    @ParameterizedTest
    @CsvFileSource(
            resources = "words.csv",
            delimiter = '|',
            numLinesToSkip = 1,
            quoteCharacter = '~',
            commentCharacter = '^')
    void understandsAWholeLineOrNothing(String line, String expected) {
        Scan scan = Scan.read(line);
        Scan.Line read = scan.lines().get(0);
        if (expected.equals("-")) {
            assertNotEquals(Scan.Line.Outcome.UNDERSTOOD, read.outcome(), words(read.explanation()));
            assertEquals(List.of(), scan.heard());
        } else {
            assertEquals(expected, words(read.explanation()));
        }
    }

    /** Confirmed, pending and permanent presence of P0420; " / " separates lines. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Stored codes: none / Pending codes: none | ABSENT | ABSENT | UNKNOWN",
                "No DTCs | ABSENT | UNKNOWN | UNKNOWN",
                "Permanent codes: 0 | UNKNOWN | UNKNOWN | ABSENT",
                "Pending: P0420 / MIL: ON | UNKNOWN | PRESENT | UNKNOWN",
                "Pending codes: P0171 | UNKNOWN | ABSENT | UNKNOWN",
                "Pending: P0171 | UNKNOWN | UNKNOWN | UNKNOWN",
                "Pending codes: none / Pending: P0420 | UNKNOWN | PRESENT | UNKNOWN",
                "Pending codes: none / P0171 pending | UNKNOWN | UNKNOWN | UNKNOWN",
                "Pending codes: P0171 / P0171 pending | UNKNOWN | ABSENT | UNKNOWN",
                "Pending codes: P0171 / Pending codes: P0300 | UNKNOWN | UNKNOWN | UNKNOWN",
                "Pending codes: none / Pending codes: none | UNKNOWN | ABSENT | UNKNOWN",
                "Pending codes: none / Pending codes: error | UNKNOWN | UNKNOWN | UNKNOWN",
                "Pending codes: none / no pending codes could be read | UNKNOWN | UNKNOWN | UNKNOWN",
                "Stored codes: none / no pending codes could be read | ABSENT | UNKNOWN | UNKNOWN",
                "Pending codes: none / P0420 | UNKNOWN | UNKNOWN | UNKNOWN",
                "Pending codes: none / free words | UNKNOWN | ABSENT | UNKNOWN",
                "Transmission: / Pending codes: none | UNKNOWN | UNKNOWN | UNKNOWN",
                "=== ABS === / Stored codes: none | UNKNOWN | UNKNOWN | UNKNOWN",
                "Pending codes: none # gearbox | UNKNOWN | UNKNOWN | UNKNOWN",
                "47 00 # gearbox | UNKNOWN | ABSENT | UNKNOWN",
                "Engine: / Pending codes: none | UNKNOWN | ABSENT | UNKNOWN",
                "Pending codes: none / 07 / NO DATA | UNKNOWN | UNKNOWN | UNKNOWN",
                "Pending codes: none / 7F 07 22 | UNKNOWN | UNKNOWN | UNKNOWN",
                "Pending codes: none / 47 01 04 20 | UNKNOWN | PRESENT | UNKNOWN",
                "47 00 / Pending codes: error | UNKNOWN | ABSENT | UNKNOWN",
                "P0420: test passed in this drive | UNKNOWN | UNKNOWN | UNKNOWN",
            })
    void readsThePresenceOfP0420(
            String pasted, Scan.Presence confirmed, Scan.Presence pending, Scan.Presence permanent) {
        Scan scan = Scan.read(pasted.replace(" / ", "\n"));
        assertEquals(confirmed, scan.confirmed(P0420), "confirmed");
        assertEquals(pending, scan.pending(P0420), "pending");
        assertEquals(permanent, scan.permanent(P0420), "permanent");
    }

    @Test
    void saysWhichLineTookItBack() {
        assertEquals(
                List.of(
                        "no pending codes (in words; line 2 says otherwise, so that list is not known)",
                        "pending: P0420 (in words, so other codes may stand in that list)"),
                Scan.read("Pending codes: none\nPending: P0420").lines().stream()
                        .map(line -> words(line.explanation()))
                        .toList());
        assertEquals(
                "no pending codes (in words; another line speaks of codes or of another control unit, so that list is not known)",
                words(Scan.read("Pending codes: none\nP0420").lines().get(0).explanation()));
    }

    @Test
    void theLampIsKnownFromWordsOrBytes() {
        assertEquals(Optional.of(true), Scan.read("MIL: on").lamp());
        assertEquals(Optional.of(false), Scan.read("MIL: off").lamp());
        assertEquals(Optional.of(true), Scan.read("41 01 81 07 65 00").lamp());
        assertEquals(Optional.of(true), Scan.read("41 01 81 07 65 00\nMIL: on").lamp());
        assertEquals(Optional.empty(), Scan.read("41 01 00 07 65 00\nMIL: on").lamp());
        assertEquals(Optional.empty(), Scan.read("47 00").lamp());
        Scan both = Scan.read("MIL: on\nMIL: off");
        assertEquals(Optional.empty(), both.lamp());
        assertEquals(
                List.of("the MIL is said to be on and to be off"),
                both.contradictions().stream().map(English::words).toList());
        assertEquals(List.of(), Scan.read("MIL: on\nPending: P0420").contradictions());
        assertEquals(List.of(), Scan.read("Pending codes: none\nP0420").heard(), "a list taken back says nothing");
    }

    @Test
    void aMonitorInWordsSaysNothingOfTheOthers() {
        Scan scan =
                Scan.read("Catalyst: ready\nEVAP: incomplete this drive cycle\nO2 sensor: ready\nO2 sensor: not ready");
        assertEquals(Optional.of(MonitorState.COMPLETE), scan.sinceClear(MonitorGroup.CATALYST));
        assertEquals(Optional.empty(), scan.thisCycle(MonitorGroup.CATALYST));
        assertEquals(Optional.of(MonitorState.INCOMPLETE), scan.thisCycle(MonitorGroup.EVAPORATIVE_SYSTEM));
        assertEquals(Optional.empty(), scan.sinceClear(MonitorGroup.EVAPORATIVE_SYSTEM));
        assertEquals(Optional.empty(), scan.sinceClear(MonitorGroup.OXYGEN_SENSOR), "contradictory");
        assertEquals(Optional.empty(), scan.sinceClear(MonitorGroup.EGR_VVT), "not named");
        assertEquals(Optional.empty(), scan.sinceClear(), "a part is no report of PID $01");
        assertEquals(Optional.empty(), scan.thisCycle());
    }

    private static final String SCREEN = """
            Misfire: ready
            Fuel system: ready
            Components: ready
            Catalyst: not ready
            Heated catalyst: n/a
            EVAP: ready
            Secondary air: n/a
            O2 sensor: ready
            O2 sensor heater: ready
            EGR/VVT: n/a
            """;

    @Test
    void aWholeScreenIsWhatPidOneReports() {
        Scan scan = Scan.read(SCREEN + "MIL: on\nStored codes: P0420");
        Readiness readiness = scan.sinceClear().orElseThrow();
        assertTrue(readiness.milCommanded());
        assertEquals(1, readiness.confirmedCount());
        assertEquals(Ignition.SPARK, readiness.ignition());
        assertEquals(Set.of(MonitorGroup.CATALYST), readiness.incomplete());
        assertEquals(
                Set.of(MonitorGroup.HEATED_CATALYST, MonitorGroup.SECONDARY_AIR, MonitorGroup.EGR_VVT),
                Set.of(MonitorGroup.HEATED_CATALYST, MonitorGroup.SECONDARY_AIR, MonitorGroup.EGR_VVT).stream()
                        .filter(group -> !readiness.supports(group))
                        .collect(Collectors.toSet()));
        assertEquals(Optional.empty(), Scan.read(SCREEN + "MIL: off").sinceClear(), "the stored codes are not known");
        assertEquals(Optional.empty(), Scan.read(SCREEN + "Stored codes: none").sinceClear(), "nor the lamp");
        assertEquals(Optional.empty(), scan.thisCycle(), "never of this cycle unless the words say so");
        assertEquals(
                Set.of(MonitorGroup.CATALYST),
                Scan.read(SCREEN.replace("\n", " this drive cycle\n"))
                        .thisCycle()
                        .orElseThrow()
                        .incomplete());
        assertEquals(
                Optional.of(Readiness.ofBytes(0, 7, 0x65, 0)),
                Scan.read(SCREEN + "MIL: off\nStored codes: none\n41 01 00 07 65 00")
                        .sinceClear(),
                "bytes go first");
    }

    @Test
    void theStatusOfACodeInWordsStatesTwoBits() {
        StatusByte passed =
                Scan.read("P0420: test passed in this drive").status(P0420).orElseThrow();
        assertEquals(new StatusByte(0x00, 0x42), passed);
        assertEquals(Optional.of(StatusByte.CycleResult.PASSED), passed.thisCycle());
        Scan failed = Scan.read("P0420: test failed in this drive\nP0420: test passed in this drive");
        assertEquals(
                Optional.of(StatusByte.CycleResult.FAILED),
                failed.status(P0420).orElseThrow().thisCycle());
        assertEquals(Optional.empty(), failed.unlistedStatus(TroubleCode.parse("P0171")));
    }

    /** Presence of P0420 in the confirmed list. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "03 / 43 00 / NO DATA | UNKNOWN",
                "03 / NO DATA / 43 00 | UNKNOWN",
                "43 00 / NO DATA | ABSENT",
                "43 00 / 0A / NO DATA | ABSENT",
                "43 00 / 01 41 / NO DATA | ABSENT",
                "43 00 / STOPPED | UNKNOWN",
                "03 / 43 00 / 07 / STOPPED | ABSENT",
                "43 00 / 00 00 <RX ERROR | UNKNOWN",
                "03 / 43 00 / 07 / 00 00 <RX ERROR | ABSENT",
                "43 00 / < DATA ERROR | UNKNOWN",
                "03 / 43 00 / 43000 | UNKNOWN",
                "43 01 04 20 AA AA AA | PRESENT",
                "43 01 01 71 AA AA AA | ABSENT",
                "43 00 AA AA AA AA AA | ABSENT",
                "43 00 55 55 55 55 55 | ABSENT",
                "43 01 04 20 00 00 00 | UNKNOWN",
                "43 01 01 71 00 00 00 | ABSENT",
                "43 02 01 71 04 20 AA | PRESENT",
                "43 02 01 71 00 00 | UNKNOWN",
                "43 02 01 71 AA AA AA | UNKNOWN",
                "43 02 04 20 AA AA AA | PRESENT",
                "7E8 06 43 02 01 71 00 00 | UNKNOWN",
                "7E8 06 43 02 01 71 55 55 | UNKNOWN",
                "7E8 04 43 00 01 71 | UNKNOWN",
                "7E8 02 43 00 AA AA AA AA AA | ABSENT",
            })
    void aListThatCouldHideCodesLeavesThemOpen(String pasted, Scan.Presence confirmed) {
        assertEquals(confirmed, Scan.read(pasted.replace(" / ", "\n")).confirmed(P0420));
    }

    /** Each took quadratic time once, or could: 16,384 characters in well under a second. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "=",
                "a=",
                "<",
                "< ",
                "a v1.",
                "a 1",
                "1",
                "un",
                "x n't ",
                "SEARCHING.",
                "..",
                "P0420 ",
                "-",
                "\u2028="
            })
    void aHostileLineTakesLinearTime(String part) {
        String line = ("A v1." + part.repeat(Scan.MAX_LINE_LENGTH)).substring(0, Scan.MAX_LINE_LENGTH - 1) + "\u2028";
        String labelled =
                "=".repeat(1) + part.repeat(Scan.MAX_LINE_LENGTH).substring(0, Scan.MAX_LINE_LENGTH - 3) + "!";
        assertTimeout(Duration.ofSeconds(5), () -> Scan.read((line + "\n").repeat(20) + labelled));
    }
}
