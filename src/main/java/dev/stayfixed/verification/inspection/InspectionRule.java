package dev.stayfixed.verification.inspection;

import dev.stayfixed.obd.Ignition;
import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.reason.Kind;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Shape;
import dev.stayfixed.verification.inspection.InspectionOutlook.Likely;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** A published readiness rule, by name and date. These change; the local rule and the inspector govern. */
public enum InspectionRule implements Kind {
    /** At most two incomplete monitors up to model year 2000, one from 2001 on; the same numbers stand in 16 CCR 3340.42.2 (b). */
    EPA_2001(1996) {
        @Override
        Optional<Reason> tooManyIncomplete(int year, Ignition ignition, Set<MonitorGroup> incomplete) {
            int allowed = year <= 2000 ? 2 : 1;
            return incomplete.size() <= allowed
                    ? Optional.empty()
                    : Optional.of(Reason.of(
                            InspectionReason.MORE_THAN_ALLOWED,
                            count(incomplete),
                            Part.count(allowed),
                            Part.count(year)));
        }

        @Override
        List<Reason> faults(InspectionRecord record) {
            return milCommanded(record);
        }
    },

    /** Gasoline: any one up to 1999, EVAP only from 2000 on. Diesel: none up to 2006, PM filter and NMHC catalyst from 2007 on. */
    CALIFORNIA_2013(1996) {
        @Override
        Optional<Reason> tooManyIncomplete(int year, Ignition ignition, Set<MonitorGroup> incomplete) {
            if (ignition == Ignition.SPARK && year <= 1999) {
                return incomplete.size() <= 1
                        ? Optional.empty()
                        : Optional.of(
                                Reason.of(InspectionReason.MORE_THAN_ANY_ONE, count(incomplete), Part.count(year)));
            }
            Set<MonitorGroup> allowed = allowedIncomplete(year, ignition);
            Set<MonitorGroup> beyond =
                    incomplete.stream().filter(g -> !allowed.contains(g)).collect(Collectors.toSet());
            if (beyond.isEmpty()) {
                return Optional.empty();
            }
            return Optional.of(
                    allowed.isEmpty()
                            ? Reason.of(InspectionReason.NONE_ALLOWED, groups(beyond), Part.count(year))
                            : Reason.of(
                                    InspectionReason.NOT_ONLY_ALLOWED,
                                    groups(beyond),
                                    groups(allowed),
                                    Part.count(year)));
        }

        @Override
        List<Reason> faults(InspectionRecord record) {
            List<Reason> faults = milCommanded(record);
            record.confirmedCodes().ifPresent(codes -> {
                if (codes > 0) {
                    faults.add(Reason.of(InspectionReason.CONFIRMED_CODES, Part.count(codes)));
                }
            });
            record.permanentCodes().ifPresent(codes -> {
                if (codes > 0 && !permanentCodesExempt(record)) {
                    faults.add(Reason.of(InspectionReason.PERMANENT_CODES, Part.count(codes)));
                }
            });
            return faults;
        }
    };

    private static final double EXEMPT_WARM_UPS = 15;
    private static final double EXEMPT_KILOMETRES = 200 * 1.609344;

    private final int firstYear;

    InspectionRule(int firstYear) {
        this.firstYear = firstYear;
    }

    public InspectionOutlook outlook(InspectionRecord record) {
        List<Reason> faults = faults(record);
        if (!faults.isEmpty()) {
            return new InspectionOutlook(this, Likely.FAULT, faults);
        }
        if (record.modelYear().isEmpty() || record.incomplete().isEmpty()) {
            return new InspectionOutlook(this, Likely.UNKNOWN, missing(record));
        }
        int year = record.modelYear().getAsInt();
        if (year < firstYear) {
            return new InspectionOutlook(
                    this,
                    Likely.UNKNOWN,
                    List.of(Reason.of(InspectionReason.OTHER_MODEL_YEARS, Part.count(firstYear), Part.count(year))));
        }
        Set<MonitorGroup> incomplete = record.incomplete().get();
        return tooManyIncomplete(year, record.ignition(), incomplete)
                .map(reason -> new InspectionOutlook(this, Likely.NOT_READY, List.of(reason)))
                .orElseGet(() -> new InspectionOutlook(this, Likely.READY, List.of(readyBecause(incomplete))));
    }

    /** A permanent code is passed over after enough driving since the clear, with the MIL off. */
    static boolean permanentCodesExempt(InspectionRecord record) {
        return record.milCommanded().filter(on -> !on).isPresent()
                && record.warmUpsSinceClear().orElse(0) >= EXEMPT_WARM_UPS
                && record.kilometresSinceClear().orElse(0) >= EXEMPT_KILOMETRES;
    }

    abstract Optional<Reason> tooManyIncomplete(int year, Ignition ignition, Set<MonitorGroup> incomplete);

    abstract List<Reason> faults(InspectionRecord record);

    private static List<Reason> missing(InspectionRecord record) {
        List<Reason> missing = new ArrayList<>();
        if (record.modelYear().isEmpty()) {
            missing.add(Reason.of(InspectionReason.MODEL_YEAR_UNKNOWN));
        }
        if (record.incomplete().isEmpty()) {
            missing.add(Reason.of(InspectionReason.READINESS_UNREAD));
        }
        return missing;
    }

    private static List<Reason> milCommanded(InspectionRecord record) {
        return new ArrayList<>(
                record.milCommanded().filter(on -> on).isPresent()
                        ? List.of(Reason.of(InspectionReason.MIL_COMMANDED))
                        : List.of());
    }

    private static Set<MonitorGroup> allowedIncomplete(int year, Ignition ignition) {
        if (ignition == Ignition.SPARK) {
            return Set.of(MonitorGroup.EVAPORATIVE_SYSTEM);
        }
        return year <= 2006 ? Set.of() : Set.of(MonitorGroup.PM_FILTER, MonitorGroup.NMHC_CATALYST);
    }

    private static Reason readyBecause(Set<MonitorGroup> incomplete) {
        return incomplete.isEmpty()
                ? Reason.of(InspectionReason.ALL_COMPLETE)
                : Reason.of(InspectionReason.WITHIN_ALLOWED, groups(incomplete));
    }

    private static Reason count(Set<MonitorGroup> incomplete) {
        return Reason.of(InspectionReason.MONITORS, Part.count(incomplete.size()), groups(incomplete));
    }

    private static Reason groups(Set<MonitorGroup> groups) {
        return Shape.LIST.of(groups.stream().sorted().toList());
    }
}
