package dev.stayfixed.drive;

import static dev.stayfixed.drive.DriveQuantity.AMBIENT;
import static dev.stayfixed.drive.DriveQuantity.BAROMETER;
import static dev.stayfixed.drive.DriveQuantity.FAST_TIME;
import static dev.stayfixed.drive.DriveQuantity.LONGEST_IDLE;
import static dev.stayfixed.drive.DriveQuantity.PEAK_COOLANT;
import static dev.stayfixed.drive.DriveQuantity.RUN_TIME;
import static dev.stayfixed.drive.DriveQuantity.START_COOLANT;

import dev.stayfixed.obd.Ignition;
import dev.stayfixed.reason.Shape;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What a drive was, by the definitions of 13 CCR 1968.2 (c) and (d).
 *
 * @param drivingCycle the engine ran
 * @param warmUpCycle the coolant rose far enough and reached operating temperature
 * @param minimumCycle the minimum-conditions cycle that permanent-code erasure asks for: run time, time at speed, unbroken idle, all
 *     in this one drive
 * @param generalDenominator the same, and neither too cold nor too high
 */
public record DriveFacts(Finding drivingCycle, Finding warmUpCycle, Finding minimumCycle, Finding generalDenominator) {

    public static DriveFacts of(DriveSummary summary, Ignition ignition, DriveRules rules) {
        Finding minimum = minimumCycle(summary, rules);
        return new DriveFacts(
                drivingCycle(summary),
                warmUpCycle(summary, ignition, rules),
                minimum,
                generalDenominator(summary, minimum, rules));
    }

    private static Finding drivingCycle(DriveSummary summary) {
        OptionalDouble run = summary.value(RUN_TIME);
        if (run.isEmpty()) {
            return Finding.unknown("no engine run time was recorded");
        }
        if (summary.atMost(RUN_TIME).isPresent()) {
            return Finding.yes("the engine ran for at least " + number(run.getAsDouble())
                    + " s; rows more than 5 s apart tell no time");
        }
        return run.getAsDouble() > 0
                ? Finding.yes("the engine ran for " + number(run.getAsDouble()) + " s")
                : Finding.no("the engine did not run");
    }

    private static Finding warmUpCycle(DriveSummary summary, Ignition ignition, DriveRules rules) {
        OptionalDouble start = summary.value(START_COOLANT);
        OptionalDouble peak = summary.value(PEAK_COOLANT);
        if (start.isEmpty() || peak.isEmpty()) {
            return Finding.unknown("coolant temperature at start and at its highest were not both recorded");
        }
        double rise = peak.getAsDouble() - start.getAsDouble();
        double reach = rules.warmUpReach(ignition);
        String facts = "coolant rose %s K of %s K and reached %s °C of %s °C"
                .formatted(number(rise), number(rules.warmUpRise()), number(peak.getAsDouble()), number(reach));
        return rise >= rules.warmUpRise() && peak.getAsDouble() >= reach ? Finding.yes(facts) : Finding.no(facts);
    }

    private static Finding minimumCycle(DriveSummary summary, DriveRules rules) {
        return all(List.of(
                atLeast(summary, RUN_TIME, rules.minimumRunTime()),
                atLeast(summary, FAST_TIME, rules.minimumFastTime()),
                atLeast(summary, LONGEST_IDLE, rules.minimumIdle())));
    }

    private static Finding generalDenominator(DriveSummary summary, Finding minimum, DriveRules rules) {
        return all(List.of(minimum, atLeast(summary, AMBIENT, rules.lowestAmbient()), altitude(summary, rules)));
    }

    private static Finding altitude(DriveSummary summary, DriveRules rules) {
        OptionalDouble pressure = summary.value(BAROMETER);
        if (pressure.isEmpty()) {
            return Finding.unknown(BAROMETER.words() + " was not recorded; needed at most "
                    + number(rules.highestAltitude()) + " m altitude");
        }
        double altitude = Atmosphere.altitudeAt(pressure.getAsDouble());
        String facts = "%s kPa is about %.0f m altitude, at most %s m needed"
                .formatted(number(pressure.getAsDouble()), altitude, number(rules.highestAltitude()));
        return altitude <= rules.highestAltitude() ? Finding.yes(facts) : Finding.no(facts);
    }

    private static Finding atLeast(DriveSummary summary, DriveQuantity quantity, double least) {
        return new EnablingCondition(quantity, OptionalDouble.of(least), OptionalDouble.empty()).heldIn(summary);
    }

    /** All must hold; one that is missed decides, whatever is unknown. */
    private static Finding all(List<Finding> findings) {
        return findings.stream()
                .filter(Finding::isNo)
                .findFirst()
                .or(() -> findings.stream().filter(f -> !f.isYes()).findFirst())
                .orElseGet(() -> Finding.yes(
                        Shape.EACH.of(findings.stream().map(Finding::reason).toList())));
    }

    static String number(double value) {
        return value == Math.rint(value)
                ? Long.toString((long) value)
                : Double.toString(Math.round(value * 100) / 100.0);
    }
}
