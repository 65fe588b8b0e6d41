package dev.stayfixed.obd;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** What a job may say of a group, and what it may not; which codes a group reaches by itself is in natures.csv. */
class MonitorGroupTest {

    @Test
    void theJobMayNameTheGroupOfAMakersOwnCode() {
        assertTrue(MonitorGroup.EVAPORATIVE_SYSTEM.bitReaches(TroubleCode.parse("P1442"), Ignition.SPARK));
        assertFalse(MonitorGroup.EVAPORATIVE_SYSTEM.bitReaches(TroubleCode.parse("P1442-13"), Ignition.SPARK));
        assertFalse(MonitorGroup.COMPONENTS.bitReaches(TroubleCode.parse("P1442"), Ignition.SPARK));
    }

    @Test
    void noNamedGroupReachesACircuitOrTheVerySmallLeak() {
        assertFalse(MonitorGroup.CATALYST.bitReaches(TroubleCode.parse("P0118"), Ignition.SPARK));
        assertFalse(MonitorGroup.EVAPORATIVE_SYSTEM.bitReaches(TroubleCode.parse("P0443"), Ignition.SPARK));
        assertFalse(MonitorGroup.EVAPORATIVE_SYSTEM.bitReaches(TroubleCode.parse("P0456"), Ignition.SPARK));
    }

    @Test
    void imbalanceFollowsTheOrdinaryRule() {
        MonitorGroup group = MonitorGroup.of(TroubleCode.parse("P219A"), Ignition.SPARK);
        assertEquals(MonitorGroup.FUEL_SYSTEM, group);
        assertFalse(group.needsSimilarConditions(TroubleCode.parse("P219A")));
        assertTrue(group.needsSimilarConditions(TroubleCode.parse("P0171")));
        assertTrue(MonitorGroup.MISFIRE.needsSimilarConditions(TroubleCode.parse("P0300")));
    }
}
