package dev.stayfixed.customer;

import dev.stayfixed.drive.condition.AtStart;
import dev.stayfixed.drive.condition.Condition;
import dev.stayfixed.drive.condition.Hold;
import dev.stayfixed.drive.condition.Reach;
import dev.stayfixed.drive.condition.SignalRange;
import dev.stayfixed.drive.condition.Soak;
import dev.stayfixed.drive.condition.StartDifference;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Quantity;
import dev.stayfixed.reason.Reason;
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

    private static final Reason WARM_UP = Reason.of(DriverReason.WARM_UP);

    private PlainSteps() {}

    /** In the order of the conditions, each once. */
    static List<Reason> of(List<Condition> conditions) {
        return conditions.stream()
                .flatMap(condition -> Stream.concat(warmUpBefore(condition), step(condition).stream()))
                .distinct()
                .toList();
    }

    /** Time that counts only with a warm engine begins with warming it up. */
    private static Stream<Reason> warmUpBefore(Condition condition) {
        return condition.whileIn().stream()
                .filter(range -> range.signal() == Signal.COOLANT && range.min() >= COLD)
                .map(range -> WARM_UP)
                .limit(1);
    }

    private static Optional<Reason> step(Condition condition) {
        if (condition instanceof Soak soak) {
            return Optional.of(Reason.of(DriverReason.PARKED, time(soak.atLeast())));
        }
        if (condition instanceof StartDifference) {
            return Optional.of(Reason.of(DriverReason.COOLED_DOWN));
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

    private static Optional<Reason> atStart(SignalRange range) {
        return switch (range.signal()) {
            case COOLANT, OIL, INTAKE_AIR ->
                range.max() < COLD ? Optional.of(Reason.of(DriverReason.COOLED_DOWN)) : Optional.empty();
            case FUEL_LEVEL -> Optional.of(Reason.of(DriverReason.TANK, limits(range)));
            case AMBIENT -> Optional.of(Reason.of(DriverReason.OUTSIDE, limits(range)));
            case BAROMETER ->
                Double.isFinite(range.min()) ? Optional.of(Reason.of(DriverReason.NOT_HIGH)) : Optional.empty();
            default -> Optional.empty();
        };
    }

    private static Reason hold(Hold hold) {
        Reason time = time(hold.atLeast());
        return switch (hold.phase()) {
            case IDLE -> Reason.of(DriverReason.IDLE_FOR, time);
            case WARM_IDLE -> Reason.of(DriverReason.IDLE_WARM_FOR, time);
            case COAST -> Reason.of(hold.unbroken() ? DriverReason.COAST_DOWN : DriverReason.COAST_OFTEN, time);
            default ->
                hold.range().signal() == Signal.VEHICLE_SPEED
                        ? Reason.of(
                                hold.unbroken() ? DriverReason.SPEED_FOR : DriverReason.SPEED_IN_PIECES,
                                limits(hold.range()),
                                time)
                        : Reason.of(hold.unbroken() ? DriverReason.DRIVE_FOR : DriverReason.DRIVE_IN_PIECES, time);
        };
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

    private static Reason time(Duration time) {
        long seconds = time.toSeconds();
        if (seconds < 120) {
            return Reason.of(DriverReason.SECONDS, Part.count(seconds));
        }
        long minutes = (seconds + 59) / 60;
        return minutes < 120
                ? Reason.of(DriverReason.MINUTES, Part.count(minutes))
                : Reason.of(DriverReason.HOURS, Part.count((minutes + 59) / 60));
    }
}
