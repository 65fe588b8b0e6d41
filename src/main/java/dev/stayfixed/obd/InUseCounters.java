package dev.stayfixed.obd;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * In-use performance tracking of service $09 infotype $08 (spark) or $0B (compression).
 *
 * @param counts by the standard's own short name ("CATCOMP1"), 0 to 65535
 */
public record InUseCounters(Ignition ignition, Map<String, Integer> counts) {

    private static final List<String> SPARK = List.of(("OBDCOND IGNCNTR CATCOMP1 CATCOND1 CATCOMP2 CATCOND2 O2SCOMP1"
                    + " O2SCOND1 O2SCOMP2 O2SCOND2 EGRCOMP EGRCOND AIRCOMP AIRCOND EVAPCOMP EVAPCOND"
                    + " SO2SCOMP1 SO2SCOND1 SO2SCOMP2 SO2SCOND2"
                    + " AFRICOMP1 AFRICOND1 AFRICOMP2 AFRICOND2 PFCOMP1 PFCOND1 PFCOMP2 PFCOND2")
            .split(" ", -1));

    private static final List<String> COMPRESSION =
            List.of(("OBDCOND IGNCNTR HCCATCOMP HCCATCOND NCATCOMP NCATCOND NADSCOMP NADSCOND PMCOMP PMCOND"
                            + " EGSCOMP EGSCOND EGRCOMP EGRCOND BPCOMP BPCOND FUELCOMP FUELCOND")
                    .split(" ", -1));

    /**
     * The codes for which a numerator counts their very test. Left out are numerators that several monitors share, because a unit may
     * report the one with the lowest ratio and change over (13 CCR 1968.2 (d)(5), from memory): those of the oxygen and exhaust gas
     * sensors, of EGR and valve timing, of boost, of the fuel system and of the particulate filter of compression engines, and the
     * catalysts of a second bank where one numerator stands for both. EVAPCOMP counts the smallest leak for which the vehicle
     * tests (SAE J1979, from memory): that test comes to no decision before the larger ones.
     */
    private static final Map<Ignition, Map<String, CodeRanges>> OWN = Map.of(
            Ignition.SPARK,
            Map.of(
                    "CATCOMP1", CodeRanges.of("0420-0422"),
                    "CATCOMP2", CodeRanges.of("0430-0432"),
                    "AIRCOMP", CodeRanges.of("0410-0411"),
                    "EVAPCOMP", CodeRanges.of("0442 0455-0457"),
                    "AFRICOMP1", CodeRanges.of("219A"),
                    "AFRICOMP2", CodeRanges.of("219B"),
                    "PFCOMP1", CodeRanges.of("2002"),
                    "PFCOMP2", CodeRanges.of("2003")),
            Ignition.COMPRESSION,
            Map.of(
                    "HCCATCOMP", CodeRanges.of("0420-0422"),
                    "NCATCOMP", CodeRanges.of("20EE"),
                    "NADSCOMP", CodeRanges.of("2000")));

    public InUseCounters {
        counts.forEach(Bytes::checkWord);
        counts = Map.copyOf(counts);
    }

    /** Counters in the order in which the standard sends them; fewer than its whole list are fine. */
    static InUseCounters inOrder(Ignition ignition, List<Integer> values) {
        List<String> names = names(ignition);
        Bytes.checkRange("number of counters", values.size(), 1, names.size());
        Map<String, Integer> counts = new LinkedHashMap<>();
        for (int at = 0; at < values.size(); at++) {
            counts.put(names.get(at), values.get(at));
        }
        return new InUseCounters(ignition, counts);
    }

    /** The standard's short names in the order in which they are sent: 28 for spark, 18 for compression. */
    public static List<String> names(Ignition ignition) {
        return ignition == Ignition.SPARK ? SPARK : COMPRESSION;
    }

    /**
     * The numerators (…COMP…) of a group, by name; empty where the list has none for it. The cylinder-imbalance numerators (AFRI)
     * belong to no group here: that monitor shares the fuel-system bit but does not watch the fuel trim.
     */
    public Map<String, Integer> numerators(MonitorGroup group) {
        Map<String, Integer> found = new LinkedHashMap<>();
        for (String name : numeratorNames(group)) {
            Integer count = counts.get(name);
            if (count != null) {
                found.put(name, count);
            }
        }
        return found;
    }

    /**
     * The numerators that count the test of this very code, and so prove that it ran; empty where the list has none, or only one that
     * several monitors share. The pairing is ours, from the names on both sides.
     */
    public Map<String, Integer> numerators(TroubleCode code) {
        Map<String, Integer> found = new LinkedHashMap<>();
        OWN.getOrDefault(ignition, Map.of()).forEach((name, codes) -> {
            Integer count = counts.get(name);
            if (count != null && codes.contain(code)) {
                found.put(name, count);
            }
        });
        return found;
    }

    /** Whether the standard has a numerator that counts the test of this very code. */
    public static boolean countsTestOf(TroubleCode code, Ignition ignition) {
        return OWN.getOrDefault(ignition, Map.of()).values().stream().anyMatch(codes -> codes.contain(code));
    }

    private List<String> numeratorNames(MonitorGroup group) {
        boolean spark = ignition == Ignition.SPARK;
        return switch (group) {
            case CATALYST -> List.of("CATCOMP1", "CATCOMP2");
            case OXYGEN_SENSOR -> List.of("O2SCOMP1", "O2SCOMP2", "SO2SCOMP1", "SO2SCOMP2");
            case EGR_VVT -> List.of("EGRCOMP");
            case SECONDARY_AIR -> List.of("AIRCOMP");
            case EVAPORATIVE_SYSTEM -> List.of("EVAPCOMP");
            case GASOLINE_PARTICULATE_FILTER -> List.of("PFCOMP1", "PFCOMP2");
            case NMHC_CATALYST -> List.of("HCCATCOMP");
            case NOX_AFTERTREATMENT -> List.of("NCATCOMP", "NADSCOMP");
            case PM_FILTER -> List.of("PMCOMP");
            case EXHAUST_GAS_SENSOR -> List.of("EGSCOMP");
            case BOOST_PRESSURE -> List.of("BPCOMP");
            case FUEL_SYSTEM -> spark ? List.of() : List.of("FUELCOMP");
            case MISFIRE, COMPONENTS, HEATED_CATALYST, OXYGEN_SENSOR_HEATER -> List.of();
        };
    }

    /**
     * Numerator over denominator of one monitor; above 1 is legal.
     *
     * @param numerator its short name, such as "CATCOMP1"
     * @return empty where either is not reported or the denominator is 0
     */
    public OptionalDouble ratio(String numerator) {
        OptionalInt above = count(numerator);
        OptionalInt below = count(numerator.replace("COMP", "COND"));
        if (above.isEmpty() || below.isEmpty() || below.getAsInt() == 0) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of((double) above.getAsInt() / below.getAsInt());
    }

    /** General denominator, OBDCOND. */
    public OptionalInt qualifyingDrives() {
        return count("OBDCOND");
    }

    /** IGNCNTR. */
    public OptionalInt ignitionCycles() {
        return count("IGNCNTR");
    }

    /** Ignition cycles between this reading and a later one; empty where either does not say, or where they went down. */
    public OptionalInt ignitionCyclesTo(InUseCounters later) {
        OptionalInt from = ignitionCycles();
        OptionalInt to = later.ignitionCycles();
        return from.isEmpty() || to.isEmpty() || to.getAsInt() < from.getAsInt()
                ? OptionalInt.empty()
                : OptionalInt.of(to.getAsInt() - from.getAsInt());
    }

    /**
     * The first of all counters that no unit could have brought so far: it grows by at most one a cycle, and by one more where the
     * first reading was taken in the middle of a cycle.
     */
    public Optional<String> outran(InUseCounters later) {
        OptionalInt cycles = ignitionCyclesTo(later);
        return cycles.isEmpty()
                ? Optional.empty()
                : counts.entrySet().stream()
                        .filter(count ->
                                later.counts.getOrDefault(count.getKey(), 0) - count.getValue() > cycles.getAsInt() + 1)
                        .map(Map.Entry::getKey)
                        .min(Comparator.naturalOrder());
    }

    /** A counter by its short name; empty where it was not reported. */
    public OptionalInt count(String name) {
        Integer count = counts.get(name);
        return count == null ? OptionalInt.empty() : OptionalInt.of(count);
    }
}
