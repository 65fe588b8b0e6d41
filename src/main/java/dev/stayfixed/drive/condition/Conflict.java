package dev.stayfixed.drive.condition;

import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** Why two faults cannot be served by one drive: what no driving changes would have to be two things at once. */
final class Conflict {

    private static final Set<Signal> SURROUNDINGS = Set.of(Signal.AMBIENT, Signal.BAROMETER, Signal.FUEL_LEVEL);
    private static final Duration COLD_AFTER = Duration.ofHours(6);
    private static final double HOT = 60;

    private Conflict() {}

    /** Empty where they go together. */
    static Optional<Reason> between(List<NextDrive.Need> group, NextDrive.Need need) {
        for (NextDrive.Need other : group) {
            Optional<Reason> conflict = between(other, need);
            if (conflict.isPresent()) {
                return conflict;
            }
        }
        return Optional.empty();
    }

    private static Optional<Reason> between(NextDrive.Need one, NextDrive.Need two) {
        for (SignalRange a : fixed(one).toList()) {
            for (SignalRange b : fixed(two).toList()) {
                if (a.signal() == b.signal() && a.overlap(b).isEmpty()) {
                    return Optional.of(Reason.of(
                            PlanReason.NEEDS_EXCLUDE,
                            Part.verbatim(one.fault()),
                            a.said(),
                            Part.verbatim(two.fault()),
                            b.said()));
                }
            }
        }
        if (isColdStart(one) && isHotStart(two)) {
            return coldAndHot(one, two);
        }
        return isColdStart(two) && isHotStart(one) ? coldAndHot(two, one) : Optional.empty();
    }

    private static Optional<Reason> coldAndHot(NextDrive.Need cold, NextDrive.Need hot) {
        return Optional.of(Reason.of(PlanReason.COLD_AND_HOT, Part.verbatim(cold.fault()), Part.verbatim(hot.fault())));
    }

    private static Stream<SignalRange> fixed(NextDrive.Need need) {
        return need.conditions().stream()
                .flatMap(condition -> condition instanceof AtStart start
                        ? Stream.of(start.range())
                        : condition.whileIn().stream().filter(range -> SURROUNDINGS.contains(range.signal())));
    }

    private static boolean isColdStart(NextDrive.Need need) {
        return need.conditions().stream()
                .anyMatch(c -> c instanceof Soak soak && soak.atLeast().compareTo(COLD_AFTER) >= 0);
    }

    private static boolean isHotStart(NextDrive.Need need) {
        return need.conditions().stream()
                .anyMatch(c -> c instanceof AtStart start
                        && start.range().signal() == Signal.COOLANT
                        && start.range().min() >= HOT);
    }
}
