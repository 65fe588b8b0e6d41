package dev.stayfixed.verification;

import static dev.stayfixed.English.words;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.stayfixed.obd.Ignition;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.obd.TroubleCode;
import dev.stayfixed.verification.WaysToProve.Kind;
import dev.stayfixed.verification.WaysToProve.Way;
import java.time.Instant;
import java.util.List;
import java.util.OptionalInt;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What proves which fault: 13 CCR 1968.2 (d)(2.2) to (d)(2.5), SAE J1979; the order is the project's own. */
class WaysToProveTest {

    /** Sends somebody for PID $41. */
    private static final Pattern CYCLE_READINESS = Pattern.compile("(?i)(scan|read|end|record)[^.;:]*\\$41");

    private static final VerificationState WAITING = new VerificationState.WaitingForFirstTrip();

    private static RepairedFault fault(String code) {
        return fault(code, Ignition.SPARK, Trips.TWO);
    }

    private static RepairedFault fault(String code, Ignition ignition, Trips trips) {
        return RepairedFault.of(TroubleCode.parse(code), ignition, trips);
    }

    private static Abilities shown(int year, String... scans) {
        return Abilities.shownBy(List.of(scans).stream().map(Scan::read).toList(), OptionalInt.of(year));
    }

    private static List<Kind> kinds(WaysToProve ways) {
        return ways.ways().stream().filter(Way::enough).map(Way::kind).toList();
    }

    @ParameterizedTest
    @CsvSource({
        "P0118, SPARK, STATUS_BYTE CONDITIONS MIL_OUT",
        "P0443, SPARK, STATUS_BYTE CONDITIONS MIL_OUT",
        "P0412, SPARK, STATUS_BYTE CONDITIONS MIL_OUT",
        "P0403, SPARK, STATUS_BYTE CONDITIONS MIL_OUT",
        "P0010, SPARK, STATUS_BYTE CONDITIONS MIL_OUT",
        "P0131, SPARK, STATUS_BYTE CONDITIONS MIL_OUT",
        "P0032, SPARK, STATUS_BYTE CONDITIONS MIL_OUT",
        "P0135, SPARK, STATUS_BYTE TEST_RESULT CYCLE_READINESS CONDITIONS MIL_OUT",
        "P0420, SPARK, STATUS_BYTE TEST_RESULT CYCLE_READINESS IN_USE_COUNTER CONDITIONS MIL_OUT",
        "P0456, SPARK, STATUS_BYTE TEST_RESULT IN_USE_COUNTER CONDITIONS MIL_OUT",
        "P0401, SPARK, STATUS_BYTE TEST_RESULT CYCLE_READINESS CONDITIONS MIL_OUT",
        "P20EE, COMPRESSION, STATUS_BYTE TEST_RESULT CYCLE_READINESS IN_USE_COUNTER CONDITIONS MIL_OUT",
        "P203A, COMPRESSION, STATUS_BYTE CONDITIONS MIL_OUT",
        "P0128, SPARK, STATUS_BYTE CONDITIONS MIL_OUT",
        "C0035, SPARK, STATUS_BYTE CONDITIONS",
        "B0001, SPARK, STATUS_BYTE CONDITIONS",
        "U0100, SPARK, STATUS_BYTE CONDITIONS MIL_OUT",
    })
    void aWayHasToSpeakOfTheVeryCode(String code, Ignition ignition, String expected) {
        WaysToProve ways = WaysToProve.of(fault(code, ignition, Trips.TWO), Abilities.UNKNOWN, false);
        assertEquals(
                expected, String.join(" ", kinds(ways).stream().map(Kind::name).toList()));
    }

    @Test
    void neverAWayThatTheCarCannotAnswer() {
        Abilities plain = shown(2003, "01 41\nNO DATA\n7F 19 11\n06 00\nNO DATA\n07\n47 00");
        WaysToProve ways = WaysToProve.of(fault("P0420"), plain, false);
        assertEquals(List.of(Kind.CONDITIONS, Kind.MIL_OUT), kinds(ways));
        assertTrue(ways.ways().stream().anyMatch(way -> way.kind() == Kind.READINESS && !way.enough()));
    }

    @Test
    void aCarWithoutPendingCodesIsProvenByItsOwnLamp() {
        Abilities old = shown(1997, "07\nNO DATA\n7F 19 11");
        WaysToProve left = WaysToProve.of(fault("P0118"), old, false);
        assertEquals(List.of(Kind.MIL_OUT), kinds(left));
        WaysToProve cleared = WaysToProve.of(fault("P0118"), old, true);
        assertEquals(List.of(), kinds(cleared));
        assertEquals(
                "Nothing that this car answers can prove P0118 fixed: it has no list of pending codes, and codes were cleared, so"
                        + " the lamp cannot go out by itself. The best that can be said is how long it has held: km, starts and"
                        + " days with the lamp off and no code.",
                words(cleared.sentence()));
        WaysToProve oneTrip = WaysToProve.of(fault("P0118", Ignition.SPARK, Trips.ONE), old, true);
        assertEquals(List.of(Kind.CONDITIONS), kinds(oneTrip));
        assertTrue(words(oneTrip.sentence()).contains("service $03 empty"), words(oneTrip.sentence()));
    }

    @Test
    void oneSentenceNamesTheStrongestAndTheCheapest() {
        assertEquals(
                "What proves P0118 fixed here: at best the status byte of the code (service $19) from the control unit that stored"
                        + " it, at the end of 2 drives in a row; with the least effort its conditions (from the service"
                        + " information, or the typical ones adopted) met in 2 drives in a row, each ended with service $07"
                        + " empty, key still on.",
                words(WaysToProve.of(fault("P0118"), Abilities.UNKNOWN, true).sentence()));
        assertTrue(words(WaysToProve.of(fault("P0300"), Abilities.UNKNOWN, true).sentence())
                .endsWith("enter that first, because without it no drive is known to be similar."));
        assertTrue(words(WaysToProve.of(fault("C0035"), Abilities.UNKNOWN, true).sentence())
                .contains("the code list of the control unit that stored it read without this code"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "P0118", "P0443", "P0412", "P0456", "P0010", "P0131", "P0032", "P0171", "P0301", "P0128", "C0035",
                "B0001", "U0100", "P1234", "P2138", "P0705"
            })
    void nobodyIsSentForABitThatSaysNothing(String code) {
        String next = words(NextTrip.neededAfter(fault(code), WAITING).orElseThrow());
        assertFalse(CYCLE_READINESS.matcher(next).find(), next);
    }

    @Test
    void nobodyIsSentForWhatTheCarDoesNotAnswer() {
        Abilities without41 = shown(2003, "01 41\nNO DATA\n01 01\n41 01 00 07 E5 E5\n07\n47 00 00 00 00 00 00");
        String next = words(NextTrip.neededAfter(fault("P0420"), new VerificationState.Passing(1, 2), without41)
                .orElseThrow());
        assertFalse(CYCLE_READINESS.matcher(next).find(), next);
        assertEquals(
                "One more drive in which the catalyst monitor runs and passes. End it with a scan of the code's status byte"
                        + " ($19 0A or $19 02 FF) where the car answers it, or a scan of services $06 and $07, key still on.",
                next);
        assertTrue(words(NextTrip.neededAfter(fault("P0420"), WAITING, shown(1997, "07\nNO DATA\n7F 19 11"))
                        .orElseThrow())
                .endsWith("leave the codes stored, and the MIL going out by itself proves it."));
    }

    @Test
    void theCircuitIsNamedAndNotTheSystemAroundIt() {
        assertEquals(
                "2 more drives in a row in which the circuit check of P0443 runs and passes. End it with a scan of the code's"
                        + " status byte ($19 0A or $19 02 FF) where the car answers it, or its conditions met (name those of"
                        + " the service information, or adopt the typical ones) and service $07 read, key still on.",
                words(NextTrip.neededAfter(fault("P0443"), WAITING).orElseThrow()));
        assertTrue(words(NextTrip.neededAfter(
                                fault("P0118"),
                                new VerificationState.FailedOnce(Instant.EPOCH, java.util.Optional.empty()))
                        .orElseThrow())
                .contains("the circuit check of P0118"));
    }
}
