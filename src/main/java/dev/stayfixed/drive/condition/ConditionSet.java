package dev.stayfixed.drive.condition;

import java.util.List;
import java.util.OptionalDouble;

/**
 * All that a monitor needs in one drive.
 *
 * @param name of what they belong to, a fault or a monitor
 * @param inOrder what is driven has to be met one after another; what is decided at the start is exempt
 */
public record ConditionSet(String name, boolean inOrder, List<Condition> conditions) {

    public ConditionSet {
        conditions = List.copyOf(conditions);
        if (conditions.isEmpty()) {
            throw new IllegalArgumentException(name + ": found no condition, expected at least one");
        }
    }

    public static ConditionSet anyOrder(String name, Condition... conditions) {
        return new ConditionSet(name, false, List.of(conditions));
    }

    public static ConditionSet inOrder(String name, Condition... conditions) {
        return new ConditionSet(name, true, List.of(conditions));
    }

    /** Holds them against a drive that began after so many hours with the engine off. */
    public Evaluation evaluation(OptionalDouble soakHours) {
        return new Evaluation(this, soakHours);
    }
}
