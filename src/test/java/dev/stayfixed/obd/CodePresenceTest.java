package dev.stayfixed.obd;

import static dev.stayfixed.English.words;
import static dev.stayfixed.obd.Scan.Presence.ABSENT;
import static dev.stayfixed.obd.Scan.Presence.PRESENT;
import static dev.stayfixed.obd.Scan.Presence.UNKNOWN;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Present, absent, or unknown: a code is absent only where its list was read in full. */
class CodePresenceTest {

    private static final TroubleCode P0420 = TroubleCode.parse("P0420");

    /** Confirmed, pending and permanent presence of P0420; " / " separates lines. */
    @ParameterizedTest
    @CsvSource({
        "'', UNKNOWN, UNKNOWN, UNKNOWN",
        "43 00, ABSENT, UNKNOWN, UNKNOWN",
        "47 00, UNKNOWN, ABSENT, UNKNOWN",
        "4A 00, UNKNOWN, UNKNOWN, ABSENT",
        "43 01 04 20, PRESENT, UNKNOWN, UNKNOWN",
        "47 01 04 20, UNKNOWN, PRESENT, UNKNOWN",
        "4A 01 04 20, UNKNOWN, UNKNOWN, PRESENT",
        "43 01 44 20, ABSENT, UNKNOWN, UNKNOWN",
        "43 00 / 43 01 04 20, PRESENT, UNKNOWN, UNKNOWN",
        "43 00 00 00 00 00 00, ABSENT, UNKNOWN, UNKNOWN",
        "43 02 01 02 01, UNKNOWN, UNKNOWN, UNKNOWN",
        "43 00 / 43 02 01 02 01, UNKNOWN, UNKNOWN, UNKNOWN",
        "43 02 04 20 01, PRESENT, UNKNOWN, UNKNOWN",
        "P0420 pending, UNKNOWN, PRESENT, UNKNOWN",
        "P0171 pending, UNKNOWN, UNKNOWN, UNKNOWN",
        "P0171 pending / 47 00, UNKNOWN, ABSENT, UNKNOWN",
        "59 02 FF 04 20 00 0C, PRESENT, PRESENT, UNKNOWN",
        "59 02 FF 04 20 00 08, PRESENT, ABSENT, UNKNOWN",
        "59 02 FF 04 20 00 04, ABSENT, PRESENT, UNKNOWN",
        "59 02 F7 04 20 00 0C, UNKNOWN, PRESENT, UNKNOWN",
        "59 02 FF, UNKNOWN, UNKNOWN, UNKNOWN",
        "19 02 FF / 59 02 FF, ABSENT, ABSENT, UNKNOWN",
        "19 02 08 / 59 02 FF, ABSENT, UNKNOWN, UNKNOWN",
        "19 02 04 / 59 02 FF, UNKNOWN, ABSENT, UNKNOWN",
        "19 02 0C / 59 02 08, ABSENT, UNKNOWN, UNKNOWN",
        "59 02 FF / 19 02 FF, UNKNOWN, UNKNOWN, UNKNOWN",
        "19 02 FF / 19 02 04 / 59 02 FF, UNKNOWN, ABSENT, UNKNOWN",
        "19 02 FF / 7E8 03 59 02 FF, ABSENT, ABSENT, UNKNOWN",
        "7DF 03 19 02 08 / 59 02 FF, ABSENT, UNKNOWN, UNKNOWN",
        "19 02 FF / 59 02 FF 01 71 00, UNKNOWN, UNKNOWN, UNKNOWN",
        "19 02 FF / 59 02 FF 01 71 00 08 00 00, ABSENT, ABSENT, UNKNOWN",
        "19 02 / 59 02 FF, UNKNOWN, UNKNOWN, UNKNOWN",
        "19 42 33 0C 1E / 59 42 33 FF FF 04, ABSENT, ABSENT, UNKNOWN",
        "19 42 33 0C 02 / 59 42 33 FF FF 04, UNKNOWN, UNKNOWN, UNKNOWN",
        "19 42 D0 0C 1E / 59 42 D0 FF FF 04, UNKNOWN, UNKNOWN, UNKNOWN",
        "19 42 33 0C 1E / 59 42 33 FF FF 02, UNKNOWN, UNKNOWN, UNKNOWN",
        "19 42 33 0C / 59 42 33 FF FF 04, UNKNOWN, UNKNOWN, UNKNOWN",
        "59 55 33 FF 04, UNKNOWN, UNKNOWN, ABSENT",
        "59 55 D0 FF 04, UNKNOWN, UNKNOWN, UNKNOWN",
        "59 55 D0 FF 04 04 20 00 28, PRESENT, UNKNOWN, PRESENT",
        "43 00 / 7F 03 22, UNKNOWN, UNKNOWN, UNKNOWN",
        "7F 03 78 / 43 00, ABSENT, UNKNOWN, UNKNOWN",
        "7E9 03 7F 03 78 / 7E8 02 43 00, UNKNOWN, UNKNOWN, UNKNOWN",
        "7E8 02 43 00 / 7E9 03 7F 03 22, UNKNOWN, UNKNOWN, UNKNOWN",
        "7E8 02 43 00 / 7E9 03 7F 03 11, ABSENT, UNKNOWN, UNKNOWN",
        "7E8 02 43 00 / 7E9 03 7F 03 12, ABSENT, UNKNOWN, UNKNOWN",
        "7E8 02 43 00 / 7E9 03 7F 07 22, ABSENT, UNKNOWN, UNKNOWN",
        "7E8 02 43 00 / 7E9 03 7F 03 78 / 7E9 02 43 00, ABSENT, UNKNOWN, UNKNOWN",
        "7E8 02 43 00 / 7E9 03 7F 19 22, UNKNOWN, UNKNOWN, UNKNOWN",
        "43 00 / BUFFER FULL, UNKNOWN, UNKNOWN, UNKNOWN",
        "03 / 43 00 / BUFFER FULL, UNKNOWN, UNKNOWN, UNKNOWN",
        "03 / 43 00 / 01 0C / BUFFER FULL, ABSENT, UNKNOWN, UNKNOWN",
        "03 / 43 00 / NO DATA, UNKNOWN, UNKNOWN, UNKNOWN",
        "03 / NO DATA, UNKNOWN, UNKNOWN, UNKNOWN",
        "43 00 / 43 0G 20, UNKNOWN, UNKNOWN, UNKNOWN",
        "47 00 / 43 0G 20, UNKNOWN, ABSENT, UNKNOWN",
        "47 00 / 7E80647010420G0, UNKNOWN, UNKNOWN, UNKNOWN",
        "43 00 / 47 00 / 59 02 0G, UNKNOWN, UNKNOWN, UNKNOWN",
        "43 00 / 43 01 <DATA ERROR, UNKNOWN, UNKNOWN, UNKNOWN",
        "43 00 / free words with 43000 km, ABSENT, UNKNOWN, UNKNOWN",
        "43 00 / 7E8 21 00 00, UNKNOWN, UNKNOWN, UNKNOWN",
        "43 00 / 43, UNKNOWN, UNKNOWN, UNKNOWN",
        "43 00 / 41 0C 1A, ABSENT, UNKNOWN, UNKNOWN",
        "43 00 / 59 03, UNKNOWN, UNKNOWN, UNKNOWN",
        "43 03 01 02 01 03, UNKNOWN, UNKNOWN, UNKNOWN",
    })
    void readsThePresenceOfP0420(
            String pasted, Scan.Presence confirmed, Scan.Presence pending, Scan.Presence permanent) {
        Scan scan = Scan.read(pasted.replace(" / ", "\n"));
        assertEquals(confirmed, scan.confirmed(P0420), "confirmed");
        assertEquals(pending, scan.pending(P0420), "pending");
        assertEquals(permanent, scan.permanent(P0420), "permanent");
    }

    @Test
    void theFailureTypeCountsOnlyWhereBothCarryOne() {
        Scan scan = Scan.read("59 02 FF 04 20 1F 08");
        assertEquals(PRESENT, scan.confirmed(P0420));
        assertEquals(PRESENT, scan.confirmed(TroubleCode.parse("P0420-1F")));
        assertEquals(UNKNOWN, scan.confirmed(TroubleCode.parse("P0420-00")));
        assertEquals(PRESENT, Scan.read("43 01 04 20").confirmed(TroubleCode.parse("P0420-1F")));
        assertEquals(ABSENT, Scan.read("19 02 FF\n59 02 FF 04 20 1F 08").confirmed(TroubleCode.parse("P0420-00")));
    }

    @ParameterizedTest
    @ValueSource(strings = {"43 01 04 20 01 71", "43 02 04 20 01 71 01 72", "7E8 05 43 01 04 20 01", "43 01 04 20 01"})
    void aCountThatDoesNotFitIsNotRead(String line) {
        Scan scan = Scan.read(line);
        assertEquals(Scan.Line.Outcome.NOT_UNDERSTOOD, scan.lines().get(0).outcome());
        assertEquals(UNKNOWN, scan.confirmed(TroubleCode.parse("P0171")));
    }

    @Test
    void saysWhereTheLayoutWasDecidedByItsShape() {
        assertEquals(
                "confirmed: P0133; read as the older layout without count byte, because six bytes follow (with headers there is no"
                        + " doubt)",
                words(Scan.read("43 01 33 00 00 00 00").lines().get(0).explanation()));
        assertEquals(
                "confirmed: P0103, P0104, P0105",
                words(Scan.read("43 01 03 01 04 01 05").lines().get(0).explanation()));
        assertEquals(
                "no confirmed codes",
                words(Scan.read("43 00 00 00 00 00 00").lines().get(0).explanation()));
        assertEquals(
                "confirmed: P0133",
                words(Scan.read("48 6B 10 43 01 33 00 00 00 00 3A")
                        .lines()
                        .get(0)
                        .explanation()));
        assertEquals(
                "confirmed: P0133; the list is cut short: the last code is cut short",
                words(Scan.read("48 6B 10 43 01 33 00 3A").lines().get(0).explanation()));
        assertEquals(
                "confirmed: P3300",
                words(Scan.read("7E8 04 43 01 33 00 00 00 00").lines().get(0).explanation()));
        assertEquals(
                "confirmed: P0420",
                words(Scan.read("43 01 04 20 00 00").lines().get(0).explanation()));
    }

    /** What is said of the unit 7E9 where another line could not be read. */
    @ParameterizedTest
    @CsvSource({
        "7E8 04 47 / 7E9 02 47 00, ABSENT",
        "7E8 04 47 01 04 20 00 00 00 <RX ERROR / 7E9 02 47 00 00 00 00 00 00, ABSENT",
        "7E9 04 47 01 04 20 00 00 00 <RX ERROR / 7E8 02 47 00 00 00 00 00 00, UNKNOWN",
        "7E9 04 47 / 7E8 02 47 00, UNKNOWN",
        "7E8 04 47 / 7E9 04 47 01 04 20, PRESENT",
        "48 6B 10 47 / 48 6B 10 47 00 00 00 00 00 00 0F, UNKNOWN",
    })
    void aLineThatCouldNotBeReadTakesNothingFromTheCountedListOfItsOwnUnit(String lines, Scan.Presence pending) {
        Scan scan = Scan.read(lines.replace(" / ", "\n"));
        assertEquals(pending, scan.of(Set.of("7E9"), true, 0).pending(P0420));
    }

    @Test
    void nothingIsLeftOutWhereTwoMayOwnItAndOneGaveNoList() {
        String one = "19 02 FF\n7E8 03 59 02 FF";
        Set<String> both = Set.of("7E8", "7E9");
        assertFalse(Scan.read(one).of(both, true, 0).unlistedStatus(P0420).isPresent());
        assertTrue(Scan.read(one + "\n7E9 03 59 02 FF")
                .of(both, true, 0)
                .unlistedStatus(P0420)
                .isPresent());
    }
}
