package dev.stayfixed.verification.inspection;

import dev.stayfixed.obd.Ignition;
import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.verification.inspection.InspectionOutlook.Likely;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** A published readiness rule, by name and date. These change; the local rule and the inspector govern. */
public enum InspectionRule {
    /** At most two incomplete monitors up to model year 2000, one from 2001 on; the same numbers stand in 16 CCR 3340.42.2 (b). */
    EPA_2001("EPA guidance EPA420-R-01-015 (June 2001)", 1996) {
        @Override
        Optional<String> tooManyIncomplete(int year, Ignition ignition, Set<MonitorGroup> incomplete) {
            int allowed = year <= 2000 ? 2 : 1;
            return incomplete.size() <= allowed
                    ? Optional.empty()
                    : Optional.of("%s incomplete, at most %d allowed for model year %d"
                            .formatted(count(incomplete), allowed, year));
        }

        @Override
        List<String> faults(InspectionRecord record) {
            return milCommanded(record);
        }
    },

    /** Gasoline: any one up to 1999, EVAP only from 2000 on. Diesel: none up to 2006, PM filter and NMHC catalyst from 2007 on. */
    CALIFORNIA_2013("California, 16 CCR 3340.42.2, since 2013 (permanent codes since 2019-07-01)", 1996) {
        @Override
        Optional<String> tooManyIncomplete(int year, Ignition ignition, Set<MonitorGroup> incomplete) {
            if (ignition == Ignition.SPARK && year <= 1999) {
                return incomplete.size() <= 1
                        ? Optional.empty()
                        : Optional.of(count(incomplete) + " incomplete, any one allowed for model year " + year);
            }
            Set<MonitorGroup> allowed = allowedIncomplete(year, ignition);
            Set<MonitorGroup> beyond =
                    incomplete.stream().filter(g -> !allowed.contains(g)).collect(Collectors.toSet());
            return beyond.isEmpty()
                    ? Optional.empty()
                    : Optional.of("%s incomplete, %s may be for model year %d"
                            .formatted(labels(beyond), allowed.isEmpty() ? "none" : "only " + labels(allowed), year));
        }

        @Override
        List<String> faults(InspectionRecord record) {
            List<String> faults = milCommanded(record);
            record.confirmedCodes().ifPresent(codes -> {
                if (codes > 0) {
                    faults.add(codes + " confirmed " + (codes == 1 ? "code" : "codes") + " reported");
                }
            });
            record.permanentCodes().ifPresent(codes -> {
                if (codes > 0 && !permanentCodesExempt(record)) {
                    faults.add(codes + " permanent " + (codes == 1 ? "code" : "codes")
                            + " stored, and not yet 15 warm-up cycles and 200 miles since the clear");
                }
            });
            return faults;
        }
    };

    private static final double EXEMPT_WARM_UPS = 15;
    private static final double EXEMPT_KILOMETRES = 200 * 1.609344;

    private final String title;
    private final int firstYear;

    InspectionRule(String title, int firstYear) {
        this.title = title;
        this.firstYear = firstYear;
    }

    public String title() {
        return title;
    }

    public InspectionOutlook outlook(InspectionRecord record) {
        List<String> faults = faults(record);
        if (!faults.isEmpty()) {
            return new InspectionOutlook(title, Likely.FAULT, faults);
        }
        if (record.modelYear().isEmpty() || record.incomplete().isEmpty()) {
            return new InspectionOutlook(title, Likely.UNKNOWN, missing(record));
        }
        int year = record.modelYear().getAsInt();
        if (year < firstYear) {
            return new InspectionOutlook(
                    title,
                    Likely.UNKNOWN,
                    List.of("it covers model years from " + firstYear + ", this one is " + year));
        }
        Set<MonitorGroup> incomplete = record.incomplete().get();
        return tooManyIncomplete(year, record.ignition(), incomplete)
                .map(reason -> new InspectionOutlook(title, Likely.NOT_READY, List.of(reason)))
                .orElseGet(() -> new InspectionOutlook(title, Likely.READY, List.of(readyBecause(incomplete))));
    }

    /** A permanent code is passed over after enough driving since the clear, with the MIL off. */
    static boolean permanentCodesExempt(InspectionRecord record) {
        return record.milCommanded().filter(on -> !on).isPresent()
                && record.warmUpsSinceClear().orElse(0) >= EXEMPT_WARM_UPS
                && record.kilometresSinceClear().orElse(0) >= EXEMPT_KILOMETRES;
    }

    abstract Optional<String> tooManyIncomplete(int year, Ignition ignition, Set<MonitorGroup> incomplete);

    abstract List<String> faults(InspectionRecord record);

    private static List<String> missing(InspectionRecord record) {
        List<String> missing = new ArrayList<>();
        if (record.modelYear().isEmpty()) {
            missing.add("the model year is not known");
        }
        if (record.incomplete().isEmpty()) {
            missing.add("no scan has read PID $01");
        }
        return missing;
    }

    private static List<String> milCommanded(InspectionRecord record) {
        return new ArrayList<>(
                record.milCommanded().filter(on -> on).isPresent() ? List.of("the MIL is commanded on") : List.of());
    }

    private static Set<MonitorGroup> allowedIncomplete(int year, Ignition ignition) {
        if (ignition == Ignition.SPARK) {
            return Set.of(MonitorGroup.EVAPORATIVE_SYSTEM);
        }
        return year <= 2006 ? Set.of() : Set.of(MonitorGroup.PM_FILTER, MonitorGroup.NMHC_CATALYST);
    }

    private static String readyBecause(Set<MonitorGroup> incomplete) {
        return incomplete.isEmpty()
                ? "every supported monitor is complete and nothing else was read against it"
                : "%s incomplete, which it allows".formatted(labels(incomplete));
    }

    private static String count(Set<MonitorGroup> incomplete) {
        return incomplete.size() + (incomplete.size() == 1 ? " monitor " : " monitors ") + "(" + labels(incomplete)
                + ")";
    }

    private static String labels(Set<MonitorGroup> groups) {
        return groups.stream().sorted().map(MonitorGroup::label).collect(Collectors.joining(", "));
    }
}
