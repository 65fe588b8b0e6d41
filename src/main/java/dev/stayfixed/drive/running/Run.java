package dev.stayfixed.drive.running;

import dev.stayfixed.drive.signal.Signal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;

/**
 * What a recorded run tells of a check: numbers, so that they are judged anew whenever the rule changes. Times in ms.
 *
 * @param lacking what the check needs and the log does not hold
 * @param first the first value of each signal that is asked about at the start
 * @param looked of a warm-up, from the engine start until the target was reached or the log ended; else the time in the state
 * @param outside of {@code looked}: of a warm-up, the engine speed lay outside its limits; else the signal did
 * @param unrecorded of {@code looked}, in gaps of more than 5 s
 * @param reachedAt after the engine start; only of a warm-up
 * @param values empty where the signal was not recorded in that time
 */
public record Run(
        Set<Signal> lacking,
        Map<Signal, Double> first,
        long looked,
        long outside,
        long unrecorded,
        OptionalLong reachedAt,
        Optional<Values> values,
        List<Point> curve) {

    public Run {
        lacking = Set.copyOf(lacking);
        first = Map.copyOf(first);
        curve = List.copyOf(curve);
    }

    /** Of the signal, in its unit; the mean is over time. */
    public record Values(double lowest, double highest, double mean) {}

    /** One point of the curve: ms of a warm-up after the engine start, else of the time in the state. */
    public record Point(long at, double value) {}
}
