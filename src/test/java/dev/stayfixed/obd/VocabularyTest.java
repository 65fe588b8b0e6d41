package dev.stayfixed.obd;

import static dev.stayfixed.English.words;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** The small words and tables. */
class VocabularyTest {

    @ParameterizedTest
    @EnumSource
    void everyGroupHasItsOwnPlainLabel(MonitorGroup group) {
        assertFalse(group.label().isBlank());
        assertFalse(group.label().contains("_"));
        assertEquals(
                1,
                Arrays.stream(MonitorGroup.values())
                        .filter(other -> other.label().equals(group.label()))
                        .count());
    }

    @Test
    void onlyTheContinuousMonitorsHaveNoMinimumRatio() {
        Set<MonitorGroup> continuous =
                EnumSet.of(MonitorGroup.MISFIRE, MonitorGroup.FUEL_SYSTEM, MonitorGroup.COMPONENTS);
        for (MonitorGroup group : MonitorGroup.values()) {
            assertEquals(continuous.contains(group), group.isContinuous(), group.label());
            assertEquals(!continuous.contains(group), group.hasMinimumRatio(), group.label());
        }
    }

    /** SAE J2012: from memory. */
    @ParameterizedTest
    @CsvSource({
        "P0420, false",
        "P1420, true",
        "P2420, false",
        "P3020, true",
        "P3420, false",
        "C0020, false",
        "C1020, true",
        "C2020, true",
        "C3020, false",
        "B1020, true",
        "U0100, false",
        "U1016, true",
        "U3000, false"
    })
    void knowsWhichCodesTheMakerDefines(String code, boolean makers) {
        assertEquals(makers, TroubleCode.parse(code).isManufacturerSpecific());
    }

    @ParameterizedTest
    @CsvSource({"P0001", "U3FFF", "P0420", "P0420-1F", "C0420-00", "B3FFF", "U0001", "P02CD", "P000A-0A"})
    void writesCodesAsItReadsThem(String code) {
        assertEquals(code, TroubleCode.parse(code).text());
        assertEquals(TroubleCode.parse(code), TroubleCode.parse(code.toLowerCase(java.util.Locale.ROOT)));
    }

    @Test
    void comparesTheFailureTypeOnlyWhereBothCarryOne() {
        TroubleCode plain = TroubleCode.ofBytes(0x04, 0x20);
        TroubleCode typed = TroubleCode.ofBytes(0x04, 0x20, 0x1F);
        assertTrue(plain.sameFaultAs(typed));
        assertTrue(typed.sameFaultAs(plain));
        assertTrue(typed.sameFaultAs(TroubleCode.parse("P0420-1F")));
        assertFalse(typed.sameFaultAs(TroubleCode.parse("P0420-00")));
        assertFalse(plain.sameFaultAs(TroubleCode.parse("C0420")));
    }

    @Test
    void theFirstAndLastYearsOfTheSequence() {
        assertEquals(Optional.empty(), Vin.parse("1M8GDM9AXKP042788").warning());
        assertEquals(1989, Vin.parse("1M8GDM9AXKP042788").modelYear().orElseThrow());
        assertEquals(1994, Vin.parse(" 1g1jc5444r7252367 ").modelYear().orElseThrow());
        assertEquals("1G1JC5444R7252367", Vin.parse(" 1g1jc5444r7252367 ").text());
    }

    @Test
    void everyParameterHasALabelAndOneRow() {
        Set<String> labels = new HashSet<>();
        for (int pid = 0; pid <= 0xFF; pid++) {
            Pid.of(pid).ifPresent(formula -> assertTrue(labels.add(words(formula.name())), words(formula.name())));
        }
        assertEquals(52, labels.size());
        assertEquals(Optional.empty(), Pid.of(0x00));
    }

    /** SAE J1979: from memory. Shares the percent formula with the throttle position. */
    @ParameterizedTest
    @CsvSource({
        "2C, 80, 50.2",
        "2D, 80, 0.0",
        "48, FF, 100.0",
        "4A, 33, 20.0",
        "4B, 33, 20.0",
        "4C, 33, 20.0",
        "52, 33, 20.0",
        "5A, 33, 20.0",
        "5B, FF, 100.0",
        "51, 01, 1.0",
        "1C, 06, 6.0"
    })
    void readsTheParametersFromMemory(String pid, String data, double value) {
        double read = Scan.read("41 " + pid + " " + data)
                .parameter(Integer.parseInt(pid, 16))
                .orElseThrow();
        assertEquals(value, read, 0.05);
    }

    @Test
    void testResultsKnowTheirValueLimitsAndUnit() {
        TestResult result = new TestResult(0x21, 0x84, 0x20, 0x80, 0x10, 0xC0);
        assertEquals(OptionalDouble.of(0.5), result.value());
        assertEquals(OptionalDouble.of(0.0625), result.min());
        assertEquals(OptionalDouble.of(0.75), result.max());
        assertEquals("", result.unit());
        TestResult signed = new TestResult(0x3C, 0x80, 0xFE, 0xFF38, 0xFE70, 0);
        assertEquals(OptionalDouble.of(-50), signed.value());
        assertEquals("Pa", signed.unit());
        TestResult unknown = new TestResult(0x3C, 0x80, 0x42, 1, 0, 2);
        assertEquals(OptionalDouble.empty(), unknown.value());
        assertEquals("", unknown.unit());
        assertTrue(unknown.isInsideLimits());
        assertEquals(
                "raw 1 (0 to 2), unit-and-scaling id 42 unknown",
                words(new TestResult(0x3C, 0x80, 0x42, 1, 0, 2).said()));
    }

    @ParameterizedTest
    @CsvSource({"0, 0, 0, true", "1, 0, 0, false", "0, 1, 0, false", "0, 0, 1, false"})
    void aTestHasNotRunWhileAllThreeAreZero(int value, int min, int max, boolean notRun) {
        assertEquals(notRun, new TestResult(1, 1, 0x24, value, min, max).notRunYet());
    }

    /** 80 itself is taken as two's complement like the ids above it. */
    @Test
    void idsFrom80OnAreSigned() {
        assertFalse(new TestResult(1, 1, 0x7F, 0xFFFF, 0, 5).isInsideLimits());
        assertTrue(new TestResult(1, 1, 0x80, 0xFFFF, 0xFFF0, 5).isInsideLimits());
    }

    @Test
    void padsOnlyWithOneRepeatedFillingByte() {
        assertTrue(Bytes.isPadding(List.of()));
        assertTrue(Bytes.isPadding(List.of(0x55, 0x55)));
        assertTrue(Bytes.isPadding(List.of(0xAA)));
        assertTrue(Bytes.isPadding(List.of(0xFF, 0xFF, 0xFF)));
        assertTrue(Bytes.isPadding(List.of(0, 0)));
        assertFalse(Bytes.isPadding(List.of(0, 0x55)));
        assertFalse(Bytes.isPadding(List.of(1, 1)));
    }
}
