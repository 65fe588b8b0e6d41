package dev.stayfixed.customer;

import dev.stayfixed.drive.condition.AtStart;
import dev.stayfixed.drive.condition.Condition;
import dev.stayfixed.drive.condition.Hold;
import dev.stayfixed.drive.condition.Reach;
import dev.stayfixed.drive.condition.SignalRange;
import dev.stayfixed.drive.condition.Soak;
import dev.stayfixed.drive.condition.StartDifference;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.reason.Quantity;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Unit;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What a condition asks of a person who has a steering wheel, a clock and a speedometer, and no scan tool. What nobody can see or do
 * from the driver's seat is left out: the record of the drive will show it.
 */
final class PlainSteps {

    /** °C; a start that must be below this is one of a cold engine. */
    private static final double COLD = 60;

    /** km/h. Common practice, no source. */
    private static final double OPEN_ROAD = 55;

    private static final double MOTORWAY = 85;

    /** km/h between two marks of a speedometer. */
    private static final double MARK = 5;

    private static final double HALF_MINUTE = 30;

    private static final PlainStep WARM_UP =
            new PlainStep(Quantity.whole(10, Unit.MINUTE), Reason.of(DriverReason.WARM_UP));

    private static final PlainStep COOLED_DOWN = new PlainStep(DriverReason.COLD, Reason.of(DriverReason.COOLED_DOWN));

    private PlainSteps() {}

    /** In the order of the conditions, each once. */
    static List<PlainStep> of(List<Condition> conditions) {
        return conditions.stream()
                .flatMap(condition -> Stream.concat(warmUpBefore(condition), step(condition).stream()))
                .distinct()
                .toList();
    }

    /** Time that counts only with a warm engine begins with warming it up. */
    private static Stream<PlainStep> warmUpBefore(Condition condition) {
        return condition.whileIn().stream()
                .filter(range -> range.signal() == Signal.COOLANT && range.min() >= COLD)
                .map(range -> WARM_UP)
                .limit(1);
    }

    private static Optional<PlainStep> step(Condition condition) {
        if (condition instanceof Soak soak) {
            return Optional.of(new PlainStep(time(soak.atLeast()), Reason.of(DriverReason.PARKED)));
        }
        if (condition instanceof StartDifference) {
            return Optional.of(COOLED_DOWN);
        }
        if (condition instanceof AtStart start) {
            return atStart(start.range());
        }
        if (condition instanceof Reach reach) {
            return reach.signal() == Signal.COOLANT || reach.signal() == Signal.OIL
                    ? Optional.of(WARM_UP)
                    : Optional.empty();
        }
        return Optional.of(hold((Hold) condition));
    }

    private static Optional<PlainStep> atStart(SignalRange range) {
        return switch (range.signal()) {
            case COOLANT, OIL, INTAKE_AIR -> range.max() < COLD ? Optional.of(COOLED_DOWN) : Optional.empty();
            case FUEL_LEVEL -> Optional.of(new PlainStep(limits(range), Reason.of(DriverReason.TANK)));
            case AMBIENT -> Optional.of(new PlainStep(limits(range), Reason.of(DriverReason.OUTSIDE)));
            case BAROMETER ->
                Double.isFinite(range.min())
                        ? Optional.of(new PlainStep(DriverReason.LOW, Reason.of(DriverReason.NOT_HIGH)))
                        : Optional.empty();
            default -> Optional.empty();
        };
    }

    private static PlainStep hold(Hold hold) {
        return new PlainStep(time(hold.atLeast()), held(hold));
    }

    private static Reason held(Hold hold) {
        return switch (hold.phase()) {
            case IDLE -> Reason.of(DriverReason.IDLE_FOR);
            case WARM_IDLE -> Reason.of(DriverReason.IDLE_WARM_FOR);
            case COAST -> Reason.of(hold.unbroken() ? DriverReason.COAST_DOWN : DriverReason.COAST_OFTEN);
            default ->
                hold.range().signal() == Signal.VEHICLE_SPEED
                        ? Reason.of(
                                hold.unbroken() ? DriverReason.SPEED_FOR : DriverReason.SPEED_IN_PIECES,
                                road(hold.range()),
                                limits(round(hold.range())))
                        : Reason.of(hold.unbroken() ? DriverReason.DRIVE_FOR : DriverReason.DRIVE_IN_PIECES);
        };
    }

    /** Where such a speed is usual. */
    private static DriverReason road(SignalRange speed) {
        if (speed.min() >= MOTORWAY) {
            return DriverReason.ON_MOTORWAY;
        }
        return speed.min() >= OPEN_ROAD ? DriverReason.ON_OPEN_ROAD : DriverReason.ON_ANY_ROAD;
    }

    /** Limits that a speedometer shows, inside the exact ones: 30 to 100 km/h of 26 to 103. */
    private static SignalRange round(SignalRange speed) {
        double min = Math.ceil(speed.min() / MARK) * MARK;
        double max = Math.floor(speed.max() / MARK) * MARK;
        return min < max ? new SignalRange(speed.signal(), min, max) : speed;
    }

    private static Reason limits(SignalRange range) {
        if (Double.isInfinite(range.min())) {
            return Reason.of(DriverReason.MOST, amount(range, range.max()));
        }
        return Double.isInfinite(range.max())
                ? Reason.of(DriverReason.LEAST, amount(range, range.min()))
                : Reason.of(DriverReason.FROM, amount(range, range.min()), amount(range, range.max()));
    }

    private static Quantity amount(SignalRange range, double value) {
        return Quantity.whole(value, range.signal().measure());
    }

    /** Never shorter than it has to be, and in half minutes: nobody who drives watches seconds. */
    private static Quantity time(Duration time) {
        double seconds = Math.ceil(time.toMillis() / 1000.0 / HALF_MINUTE) * HALF_MINUTE;
        if (seconds < 120 && seconds % 60 != 0) {
            return Quantity.whole(seconds, Unit.SECOND);
        }
        double minutes = Math.ceil(seconds / 60);
        return minutes < 120
                ? Quantity.whole(minutes, Unit.MINUTE)
                : Quantity.whole(Math.ceil(minutes / 60), Unit.HOUR);
    }
}
