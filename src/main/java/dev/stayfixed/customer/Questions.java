package dev.stayfixed.customer;

import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.drive.EnablingCondition;
import dev.stayfixed.verification.EvidenceGrade;
import dev.stayfixed.verification.RepairedFault;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/**
 * What a driver can tell from memory that may count for a fault: a quantity that one of its conditions for a whole drive is about,
 * where the shop accepts such conditions as evidence. For every other fault only a reading of the car counts.
 *
 * @param besideReading what may count together with a reading of the car
 * @param alone what may count without one
 */
public record Questions(Set<DriveQuantity> besideReading, Set<DriveQuantity> alone) {

    private static final Set<DriveQuantity> FROM_MEMORY =
            Set.of(DriveQuantity.RUN_TIME, DriveQuantity.FAST_TIME, DriveQuantity.LONGEST_IDLE, DriveQuantity.SOAK);

    public Questions {
        besideReading = Set.copyOf(besideReading);
        alone = Set.copyOf(alone);
    }

    /** Of the faults that are not decided. */
    static Questions of(List<RepairedFault> open) {
        return new Questions(asked(open, fault -> true), asked(open, Questions::isMetFromMemory));
    }

    private static Set<DriveQuantity> asked(List<RepairedFault> open, Predicate<RepairedFault> which) {
        return open.stream()
                .filter(fault -> EvidenceGrade.ENABLING_CONDITIONS.suffices(fault.weakestAccepted()))
                .filter(which)
                .flatMap(fault -> fault.enablingConditions().stream())
                .map(EnablingCondition::quantity)
                .filter(FROM_MEMORY::contains)
                .collect(Collectors.toUnmodifiableSet());
    }

    /** All of its conditions: one that stays unknown leaves the drive without a word about the monitor. */
    private static boolean isMetFromMemory(RepairedFault fault) {
        return fault.recorded().isEmpty()
                && !fault.group().needsSimilarConditions(fault.code())
                && fault.enablingConditions().stream()
                        .map(EnablingCondition::quantity)
                        .allMatch(FROM_MEMORY::contains);
    }
}
