package dev.stayfixed.obd;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class InUseCountersTest {

    private static InUseCounters full(Ignition ignition) {
        int size = InUseCounters.names(ignition).size();
        return InUseCounters.inOrder(
                ignition, IntStream.rangeClosed(1, size).boxed().toList());
    }

    @Test
    void namesTheNumeratorsOfEachGroupOfSparkEngines() {
        InUseCounters counters = full(Ignition.SPARK);
        assertEquals(Map.of("CATCOMP1", 3, "CATCOMP2", 5), counters.numerators(MonitorGroup.CATALYST));
        assertEquals(
                Map.of("O2SCOMP1", 7, "O2SCOMP2", 9, "SO2SCOMP1", 17, "SO2SCOMP2", 19),
                counters.numerators(MonitorGroup.OXYGEN_SENSOR));
        assertEquals(Map.of("EGRCOMP", 11), counters.numerators(MonitorGroup.EGR_VVT));
        assertEquals(Map.of("AIRCOMP", 13), counters.numerators(MonitorGroup.SECONDARY_AIR));
        assertEquals(Map.of("EVAPCOMP", 15), counters.numerators(MonitorGroup.EVAPORATIVE_SYSTEM));
        assertEquals(
                Map.of("PFCOMP1", 25, "PFCOMP2", 27), counters.numerators(MonitorGroup.GASOLINE_PARTICULATE_FILTER));
        for (MonitorGroup group : List.of(
                MonitorGroup.MISFIRE,
                MonitorGroup.FUEL_SYSTEM,
                MonitorGroup.COMPONENTS,
                MonitorGroup.HEATED_CATALYST,
                MonitorGroup.OXYGEN_SENSOR_HEATER,
                MonitorGroup.NMHC_CATALYST,
                MonitorGroup.PM_FILTER)) {
            assertEquals(Map.of(), counters.numerators(group), group.label());
        }
    }

    @Test
    void namesTheNumeratorsOfEachGroupOfCompressionEngines() {
        InUseCounters counters = full(Ignition.COMPRESSION);
        assertEquals(Map.of("HCCATCOMP", 3), counters.numerators(MonitorGroup.NMHC_CATALYST));
        assertEquals(Map.of("NCATCOMP", 5, "NADSCOMP", 7), counters.numerators(MonitorGroup.NOX_AFTERTREATMENT));
        assertEquals(Map.of("PMCOMP", 9), counters.numerators(MonitorGroup.PM_FILTER));
        assertEquals(Map.of("EGSCOMP", 11), counters.numerators(MonitorGroup.EXHAUST_GAS_SENSOR));
        assertEquals(Map.of("EGRCOMP", 13), counters.numerators(MonitorGroup.EGR_VVT));
        assertEquals(Map.of("BPCOMP", 15), counters.numerators(MonitorGroup.BOOST_PRESSURE));
        assertEquals(Map.of("FUELCOMP", 17), counters.numerators(MonitorGroup.FUEL_SYSTEM));
        assertEquals(Map.of(), counters.numerators(MonitorGroup.CATALYST));
    }

    @ParameterizedTest
    @CsvSource({
        "P0420, CATCOMP1",
        "P0430, CATCOMP2",
        "P0427, ''",
        "P2423, ''",
        "P0411, AIRCOMP",
        "P0412, ''",
        "P0442, EVAPCOMP",
        "P0456, EVAPCOMP",
        "P0441, ''",
        "P0443, ''",
        "P0133, ''",
        "P0139, ''",
        "P2195, ''",
        "P0401, ''",
        "P0011, ''",
        "P219A, AFRICOMP1",
        "P219B, AFRICOMP2",
        "P2003, PFCOMP2",
        "P0300, ''",
        "P0135, ''",
    })
    void aNumeratorProvesOnlyItsVeryTest(String code, String names) {
        String found = String.join(
                " ",
                new TreeSet<>(
                        full(Ignition.SPARK).numerators(TroubleCode.parse(code)).keySet()));
        assertEquals(names, found);
    }

    @Test
    void onCompressionEnginesTooASharedNumeratorProvesNothing() {
        InUseCounters counters = full(Ignition.COMPRESSION);
        assertEquals(Map.of("HCCATCOMP", 3), counters.numerators(TroubleCode.parse("P0420")));
        assertEquals(Map.of("NCATCOMP", 5), counters.numerators(TroubleCode.parse("P20EE")));
        assertEquals(Map.of("NADSCOMP", 7), counters.numerators(TroubleCode.parse("P2000")));
        for (String shared : List.of("P0430", "P20F2", "P0133", "P0299", "P0171", "P2002", "P0401")) {
            assertEquals(Map.of(), counters.numerators(TroubleCode.parse(shared)), shared);
        }
    }

    @Test
    void knowsTheGeneralCountersAndTheRatios() {
        InUseCounters counters = full(Ignition.SPARK);
        assertEquals(OptionalInt.of(1), counters.qualifyingDrives());
        assertEquals(OptionalInt.of(2), counters.ignitionCycles());
        assertEquals(OptionalDouble.of(0.75), counters.ratio("CATCOMP1"));
        InUseCounters few = InUseCounters.inOrder(Ignition.SPARK, List.of(5));
        assertEquals(OptionalInt.empty(), few.ignitionCycles());
        assertEquals(OptionalDouble.empty(), few.ratio("CATCOMP1"));
        assertEquals(
                OptionalDouble.empty(),
                InUseCounters.inOrder(Ignition.SPARK, List.of(5, 6, 7)).ratio("CATCOMP1"));
        assertEquals(Map.of("OBDCOND", 5), few.counts());
    }

    @Test
    void takesNoMoreCountersThanTheStandardNames() {
        assertThrows(ObdFormatException.class, () -> InUseCounters.inOrder(Ignition.SPARK, List.of()));
        List<Integer> tooMany = IntStream.rangeClosed(1, 19).boxed().toList();
        assertThrows(ObdFormatException.class, () -> InUseCounters.inOrder(Ignition.COMPRESSION, tooMany));
    }
}
