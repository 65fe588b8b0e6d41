package dev.stayfixed.drive.condition;

import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.drive.Finding;
import dev.stayfixed.drive.signal.Signal;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A signal stays inside limits for a time.
 *
 * @param unbroken in one piece; otherwise all pieces are added up
 * @param whileIn time counts only while all of these are in range too
 */
public record Hold(SignalRange range, Duration atLeast, boolean unbroken, List<SignalRange> whileIn)
        implements Condition {

    private static final double STANDSTILL = 5;
    private static final double RUNNING = 500;
    private static final double FAST = 25 * 1.609344;

    public Hold {
        whileIn = List.copyOf(whileIn);
        if (atLeast.isNegative() || atLeast.isZero()) {
            throw new IllegalArgumentException(
                    range.words() + ": found a time of " + atLeast + ", expected more than 0");
        }
    }

    public static Hold unbroken(SignalRange range, Duration atLeast, SignalRange... whileIn) {
        return new Hold(range, atLeast, true, List.of(whileIn));
    }

    public static Hold cumulative(SignalRange range, Duration atLeast, SignalRange... whileIn) {
        return new Hold(range, atLeast, false, List.of(whileIn));
    }

    @Override
    public String words() {
        return range.words() + " for " + Words.time(atLeast) + manner() + Words.during(whileIn);
    }

    String manner() {
        return unbroken ? " unbroken" : " in total";
    }

    @Override
    public Phase phase() {
        if (isStandstill()) {
            return whileIn.stream().anyMatch(Hold::isWarm) ? Phase.WARM_IDLE : Phase.IDLE;
        }
        return whileIn.stream().anyMatch(Hold::isReleased) || isReleased(range) ? Phase.COAST : Phase.CRUISE;
    }

    private boolean isStandstill() {
        return range.signal() == Signal.VEHICLE_SPEED && range.max() <= STANDSTILL;
    }

    /** No more is asked than that the engine turns by itself. */
    private boolean isRunning() {
        return range.signal() == Signal.ENGINE_SPEED && range.min() <= RUNNING && Double.isInfinite(range.max());
    }

    private static boolean isWarm(SignalRange range) {
        return range.signal() == Signal.COOLANT && range.min() >= 60;
    }

    private static boolean isReleased(SignalRange range) {
        return (range.signal() == Signal.PEDAL || range.signal() == Signal.THROTTLE) && range.max() <= 25;
    }

    @Override
    public String toDo() {
        String piece = Words.time(atLeast) + (unbroken ? " without a break" : ", in one or more pieces");
        return switch (phase()) {
            case IDLE, WARM_IDLE ->
                "Let the engine idle at a standstill for at least " + piece + Words.during(whileIn) + ".";
            case COAST ->
                "Take the foot off the pedal and let the car slow down by itself, traffic allowing, for at least "
                        + piece + " (" + range.words() + Words.during(whileIn) + ").";
            default ->
                isRunning()
                        ? "Let the engine run for at least " + piece + Words.during(whileIn) + "."
                        : "Keep " + range.words() + " for at least " + piece + Words.during(whileIn) + ".";
        };
    }

    @Override
    public Tracker tracker(OptionalDouble soakHours) {
        return new HoldTracker(this);
    }

    @Override
    public Optional<Finding> inSummary(DriveSummary summary) {
        if (isStandstill() && range.min() <= 0) {
            return Optional.of(atLeast(summary, DriveQuantity.LONGEST_IDLE));
        }
        boolean fast = range.signal() == Signal.VEHICLE_SPEED && range.min() >= FAST;
        return fast ? Optional.of(atLeast(summary, DriveQuantity.FAST_TIME)) : Optional.empty();
    }

    private Finding atLeast(DriveSummary summary, DriveQuantity quantity) {
        OptionalDouble found = summary.value(quantity);
        if (found.isEmpty()) {
            return Finding.unknown(quantity.words() + " was not recorded");
        }
        double needed = atLeast.toMillis() / 1000.0;
        String facts = quantity.words() + " " + Words.beside(found.getAsDouble(), needed) + " s of "
                + Words.number(needed) + " s";
        if (found.getAsDouble() * 1000 >= atLeast.toMillis()) {
            return Finding.yes(facts);
        }
        boolean open = summary.atMost(quantity).orElse(0) * 1000 >= atLeast.toMillis();
        return open ? Finding.unknown(facts + ", the rest was not recorded") : Finding.no(facts);
    }
}
