package dev.stayfixed.drive;

import static dev.stayfixed.drive.DriveQuantity.AMBIENT;
import static dev.stayfixed.drive.DriveQuantity.BAROMETER;
import static dev.stayfixed.drive.DriveQuantity.FAST_TIME;
import static dev.stayfixed.drive.DriveQuantity.LONGEST_IDLE;
import static dev.stayfixed.drive.DriveQuantity.PEAK_COOLANT;
import static dev.stayfixed.drive.DriveQuantity.RUN_TIME;
import static dev.stayfixed.drive.DriveQuantity.START_COOLANT;

import dev.stayfixed.obd.Ignition;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Quantity;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Shape;
import dev.stayfixed.reason.Unit;
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
            return Finding.unknown(Reason.of(DriveReason.RUN_TIME_UNKNOWN));
        }
        Part time = Part.Time.length(Math.round(run.getAsDouble() * 1000));
        if (summary.atMost(RUN_TIME).isPresent()) {
            return Finding.yes(Reason.of(DriveReason.RAN_AT_LEAST, time));
        }
        return run.getAsDouble() > 0
                ? Finding.yes(Reason.of(DriveReason.RAN, time))
                : Finding.no(Reason.of(DriveReason.DID_NOT_RUN));
    }

    private static Finding warmUpCycle(DriveSummary summary, Ignition ignition, DriveRules rules) {
        OptionalDouble start = summary.value(START_COOLANT);
        OptionalDouble peak = summary.value(PEAK_COOLANT);
        if (start.isEmpty() || peak.isEmpty()) {
            return Finding.unknown(Reason.of(DriveReason.COOLANT_UNKNOWN));
        }
        double rise = peak.getAsDouble() - start.getAsDouble();
        double reach = rules.warmUpReach(ignition);
        Reason facts = Reason.of(
                DriveReason.COOLANT_ROSE,
                Quantity.fine(rise, Unit.KELVIN),
                Quantity.fine(rules.warmUpRise(), Unit.KELVIN),
                Quantity.fine(peak.getAsDouble(), Unit.CELSIUS),
                Quantity.fine(reach, Unit.CELSIUS));
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
        Quantity highest = Quantity.fine(rules.highestAltitude(), Unit.METRE);
        if (pressure.isEmpty()) {
            return Finding.unknown(Reason.of(DriveReason.ALTITUDE_UNKNOWN, BAROMETER, highest));
        }
        double altitude = Atmosphere.altitudeAt(pressure.getAsDouble());
        Reason facts = Reason.of(
                DriveReason.ALTITUDE,
                Quantity.fine(pressure.getAsDouble(), Unit.KILOPASCAL),
                Quantity.whole(altitude, Unit.METRE),
                highest);
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
}
