package dev.stayfixed.recording;

import dev.stayfixed.drive.signal.Signal;
import java.util.Arrays;
import java.util.Optional;

/**
 * The range in which the values of nearly every drive lie, far narrower than what a sensor can show. Values outside it do not make a
 * drive impossible; but where they would be usual in another unit, the unit is in doubt. Common practice, no source.
 */
final class UsualValues {

    private static final int ONE_STRAY_IN = 50;
    private static final int FEWEST_BESIDE_A_STRAY = 7;

    private UsualValues() {}

    /** Whether a wrong unit would go unnoticed: so many units are in use that one has to be stated. */
    static boolean isTakenOnTrust(Signal signal) {
        return switch (SourceUnit.canonical(signal)) {
            case KILOMETRES_PER_HOUR, DEGREES_CELSIUS, KILOMETRES -> true;
            default -> false;
        };
    }

    /**
     * The unit in which these values would be usual; empty where they are usual in their own, or strange in all.
     *
     * @param numbers in the unit; NaN is looked over, and so are single ones
     */
    static Optional<SourceUnit> contradiction(Signal signal, SourceUnit unit, double[] numbers) {
        double[] sorted =
                Arrays.stream(numbers).filter(v -> !Double.isNaN(v)).sorted().toArray();
        int stray = sorted.length <= FEWEST_BESIDE_A_STRAY ? 0 : Math.max(1, sorted.length / ONE_STRAY_IN);
        return sorted.length == 0
                ? Optional.empty()
                : contradiction(signal, unit, sorted[stray], sorted[sorted.length - 1 - stray]);
    }

    /** The same by the lowest and the highest value. */
    static Optional<SourceUnit> contradiction(Signal signal, SourceUnit unit, double lowest, double highest) {
        if (isUsual(signal, unit, lowest, highest)) {
            return Optional.empty();
        }
        return SourceUnit.of(signal).stream()
                .filter(other -> other != unit && isUsual(signal, other, lowest, highest))
                .findFirst();
    }

    private static boolean isUsual(Signal signal, SourceUnit unit, double lowest, double highest) {
        SourceUnit.Conversion conversion = unit.to(signal);
        double low = conversion.apply(lowest);
        double high = conversion.apply(highest);
        return switch (signal) {
            // an engine that shows a few rpm at most does not run; a dial in thousands does
            case ENGINE_SPEED -> low >= 0 && high <= 9_000 && (high == 0 || high >= 12);
            case VEHICLE_SPEED -> low >= 0 && high <= 260;
            case COOLANT -> low >= -45 && high <= 130;
            // behind a turbocharger it is this hot in a sound car
            case INTAKE_AIR -> low >= -45 && high <= 160;
            case AMBIENT -> low >= -45 && high <= 50;
            case OIL -> low >= -45 && high <= 160;
            case CATALYST -> low >= -45 && high <= 1_000;
            case BAROMETER -> low >= 60 && high <= 108;
            case MANIFOLD_PRESSURE -> low >= 10 && high <= 350;
            case FUEL_LEVEL, LOAD, PEDAL, THROTTLE -> low >= 0 && high <= 100;
            default -> signal.isPlausible(low) && signal.isPlausible(high);
        };
    }
}
