package dev.stayfixed.customer;

import dev.stayfixed.drive.condition.AtStart;
import dev.stayfixed.drive.condition.Condition;
import dev.stayfixed.drive.condition.Hold;
import dev.stayfixed.drive.condition.Phase;
import dev.stayfixed.drive.condition.Reach;
import dev.stayfixed.drive.condition.SignalRange;
import dev.stayfixed.drive.condition.Soak;
import dev.stayfixed.drive.condition.StartDifference;
import dev.stayfixed.drive.signal.Signal;
import java.math.BigDecimal;
import java.math.RoundingMode;
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

    private static final String WARM_UP = "Drive gently for about 10 minutes, until the engine is warm.";

    private PlainSteps() {}

    /** In the order of the conditions, each once; metric. */
    static List<String> of(List<Condition> conditions) {
        return conditions.stream()
                .flatMap(condition -> Stream.concat(warmUpBefore(condition), words(condition).stream()))
                .distinct()
                .toList();
    }

    /** Time that counts only with a warm engine begins with warming it up. */
    private static Stream<String> warmUpBefore(Condition condition) {
        return condition.whileIn().stream()
                .filter(range -> range.signal() == Signal.COOLANT && range.min() >= COLD)
                .map(range -> WARM_UP)
                .limit(1);
    }

    private static Optional<String> words(Condition condition) {
        if (condition instanceof Soak soak) {
            return Optional.of("Leave the car parked, engine off, for at least " + time(soak.atLeast()) + ".");
        }
        if (condition instanceof StartDifference) {
            return Optional.of("Start with an engine that has cooled down completely, best in the morning.");
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

    private static Optional<String> atStart(SignalRange range) {
        return switch (range.signal()) {
            case COOLANT, OIL, INTAKE_AIR ->
                range.max() < COLD
                        ? Optional.of("Start with an engine that has cooled down completely, best in the morning.")
                        : Optional.empty();
            case FUEL_LEVEL -> Optional.of("Before you start, have the fuel tank " + limits(range, "% full") + ".");
            case AMBIENT -> Optional.of("Choose a time when it is " + limits(range, "°C") + " outside.");
            case BAROMETER ->
                Double.isFinite(range.min())
                        ? Optional.of("Drive where it is not high in the mountains.")
                        : Optional.empty();
            default -> Optional.empty();
        };
    }

    private static String hold(Hold hold) {
        String time = time(hold.atLeast());
        if (hold.phase() == Phase.IDLE || hold.phase() == Phase.WARM_IDLE) {
            return "Parked in the open air, in P or neutral, let the engine idle for at least " + time
                    + (hold.phase() == Phase.WARM_IDLE ? ", once it is warm." : ".");
        }
        if (hold.phase() == Phase.COAST) {
            return "With nobody close behind, take your foot off the pedal and let the car slow down in gear, "
                    + (hold.unbroken() ? "for at least " + time : "several times, until it makes " + time)
                    + ". Brake whenever traffic asks for it.";
        }
        String where = hold.range().signal() == Signal.VEHICLE_SPEED
                ? "Drive " + limits(hold.range(), "km/h")
                        + ", with a calm foot, where that is legal and safe, for at least "
                : "Drive for at least ";
        return where + time + (hold.unbroken() ? " without a break." : "; breaks do not matter.");
    }

    private static String limits(SignalRange range, String unit) {
        if (Double.isInfinite(range.min())) {
            return "at most " + number(range.max()) + " " + unit;
        }
        return Double.isInfinite(range.max())
                ? "at least " + number(range.min()) + " " + unit
                : number(range.min()) + " to " + number(range.max()) + " " + unit;
    }

    private static String time(Duration time) {
        long seconds = time.toSeconds();
        if (seconds < 120) {
            return seconds + " seconds";
        }
        long minutes = (seconds + 59) / 60;
        return minutes < 120 ? minutes + " minutes" : (minutes + 59) / 60 + " hours";
    }

    private static String number(double value) {
        return BigDecimal.valueOf(value).setScale(0, RoundingMode.HALF_UP).toPlainString();
    }
}
