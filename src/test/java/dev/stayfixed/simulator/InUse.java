package dev.stayfixed.simulator;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** In-use counters of SAE J1979 service $09, infotype $08 (spark) or $0B (compression); nothing erases them. */
final class InUse {

    static final List<String> SPARK = List.of(
            "OBDCOND",
            "IGNCNTR",
            "CATCOMP1",
            "CATCOND1",
            "CATCOMP2",
            "CATCOND2",
            "O2SCOMP1",
            "O2SCOND1",
            "O2SCOMP2",
            "O2SCOND2",
            "EGRCOMP",
            "EGRCOND",
            "AIRCOMP",
            "AIRCOND",
            "EVAPCOMP",
            "EVAPCOND",
            "SO2SCOMP1",
            "SO2SCOND1",
            "SO2SCOMP2",
            "SO2SCOND2");
    static final List<String> COMPRESSION = List.of(
            "OBDCOND",
            "IGNCNTR",
            "HCCATCOMP",
            "HCCATCOND",
            "NCATCOMP",
            "NCATCOND",
            "NADSCOMP",
            "NADSCOND",
            "PMCOMP",
            "PMCOND",
            "EGSCOMP",
            "EGSCOND",
            "EGRCOMP",
            "EGRCOND",
            "BPCOMP",
            "BPCOND");

    private final Map<String, Integer> counts = new HashMap<>();
    private final Set<String> countedThisCycle = new HashSet<>();

    void keyOn() {
        countedThisCycle.clear();
    }

    /** At most once in a driving cycle; OBDCOND and IGNCNTR wrap to 0 after 65535. */
    void countAlone(String name) {
        if (countedThisCycle.add(name)) {
            set(name, (count(name) + 1) & 0xFFFF);
        }
    }

    /** At most once in a driving cycle; at 65535 both of the pair are halved first (13 CCR 1968.2 (d)(4), from memory). */
    void count(String name, String other) {
        if (!countedThisCycle.add(name)) {
            return;
        }
        if (count(name) == 0xFFFF) {
            set(name, count(name) / 2);
            set(other, count(other) / 2);
        }
        set(name, count(name) + 1);
    }

    boolean isCounted(String name) {
        return countedThisCycle.contains(name);
    }

    void set(String name, int value) {
        counts.put(name, value);
    }

    int count(String name) {
        return counts.getOrDefault(name, 0);
    }
}
