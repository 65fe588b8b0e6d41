package dev.stayfixed.drive.condition;

import dev.stayfixed.reason.Reason;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The drives that several open faults still need, as few as can be: one plan for all whose conditions go together, and others told
 * apart with the reason.
 *
 * @param plans in the order in which the faults were given; the first serves the first fault and all that go with it
 */
public record NextDrive(List<DrivePlan> plans) {

    /** What one fault needs. */
    public record Need(String fault, List<Condition> conditions) {

        public Need {
            conditions = List.copyOf(conditions);
        }
    }

    public NextDrive {
        plans = List.copyOf(plans);
    }

    public static NextDrive of(List<Need> needs) {
        List<List<Need>> groups = new ArrayList<>();
        List<Optional<Reason>> reasons = new ArrayList<>();
        for (Need need : needs) {
            place(need, groups, reasons);
        }
        List<DrivePlan> plans = new ArrayList<>();
        for (int i = 0; i < groups.size(); i++) {
            plans.add(DrivePlan.of(groups.get(i), reasons.get(i)));
        }
        return new NextDrive(plans);
    }

    private static void place(Need need, List<List<Need>> groups, List<Optional<Reason>> reasons) {
        Optional<Reason> apart = Optional.empty();
        for (List<Need> group : groups) {
            Optional<Reason> conflict = Conflict.between(group, need);
            if (conflict.isEmpty()) {
                group.add(need);
                return;
            }
            apart = apart.or(() -> conflict);
        }
        groups.add(new ArrayList<>(List.of(need)));
        reasons.add(apart);
    }
}
