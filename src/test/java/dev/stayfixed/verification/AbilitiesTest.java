package dev.stayfixed.verification;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.stayfixed.obd.Scan;
import dev.stayfixed.verification.Abilities.Shown;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

/** SAE J1979 for the services, ISO 14229-1 for the refusals; NO DATA is the adapter's word for no answer. */
class AbilitiesTest {

    private static Abilities of(String... scans) {
        return Abilities.shownBy(Arrays.stream(scans).map(Scan::read).toList(), OptionalInt.empty());
    }

    @Test
    void nothingReadShowsNothing() {
        assertEquals(Abilities.UNKNOWN, of());
        assertEquals(Abilities.UNKNOWN, of("NO DATA", "0101\n41 01 00 07 E5 00"));
    }

    @Test
    void silenceIsNoUntilAnAnswerComes() {
        assertEquals(Shown.NO, of("01 41\nNO DATA").cycleReadiness());
        assertEquals(Shown.NO, of("0141\rNO DATA\r>").cycleReadiness());
        assertEquals(Shown.YES, of("01 41\nNO DATA", "41 41 00 07 E5 00").cycleReadiness());
        assertEquals(Shown.UNKNOWN, of("01 0C\nNO DATA").cycleReadiness());
        assertEquals(Shown.UNKNOWN, of("01 41\nUNABLE TO CONNECT").cycleReadiness());
        assertEquals(Shown.NO, of("07\nNO DATA").pendingCodes());
        assertEquals(Shown.YES, of("07\n47 00").pendingCodes());
        assertEquals(Shown.NO, of("0A\nNO DATA").permanentCodes());
        assertEquals(Shown.NO, of("09 08\nNO DATA").inUseCounters());
        assertEquals(Shown.UNKNOWN, of("09 02\nNO DATA").inUseCounters());
    }

    @Test
    void aRefusalAsUnknownIsNoButABusyUnitIsNot() {
        assertEquals(Shown.NO, of("7F 19 11").statusBytes());
        assertEquals(Shown.NO, of("7F 19 12").statusBytes());
        assertEquals(Shown.UNKNOWN, of("7F 19 78").statusBytes());
        assertEquals(Shown.YES, of("7F 19 12", "59 0A FF 04 20 00 00").statusBytes());
        assertEquals(Shown.UNKNOWN, of("7F 01 12").cycleReadiness());
    }

    @Test
    void theBitmapsOfSupportedPidsTell() {
        assertEquals(Shown.NO, of("41 00 BE 1F A8 12").cycleReadiness());
        assertEquals(Shown.UNKNOWN, of("41 00 BE 1F A8 13").cycleReadiness());
        assertEquals(Shown.NO, of("41 20 80 00 00 00").cycleReadiness());
        assertEquals(Shown.NO, of("41 40 7E D0 00 00").cycleReadiness());
        assertEquals(Shown.UNKNOWN, of("41 40 FE D0 00 00").cycleReadiness());
    }

    @Test
    void theModelYearTellsWhatNobodyAsked() {
        Abilities of1999 = Abilities.shownBy(List.of(), OptionalInt.of(1999));
        assertEquals(Shown.NO, of1999.cycleReadiness());
        assertEquals(Shown.NO, of1999.permanentCodes());
        assertEquals(Shown.UNKNOWN, of1999.pendingCodes());
        assertEquals(
                Shown.UNKNOWN,
                Abilities.shownBy(List.of(), OptionalInt.of(2015)).permanentCodes());
        assertEquals(
                Shown.YES,
                Abilities.shownBy(List.of(Scan.read("41 41 00 07 E5 00")), OptionalInt.of(2001))
                        .cycleReadiness());
    }
}
