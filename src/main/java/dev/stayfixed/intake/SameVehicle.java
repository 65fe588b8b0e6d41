package dev.stayfixed.intake;

import dev.stayfixed.archive.ReadDrive;
import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.jobs.Vehicle;
import dev.stayfixed.judging.KnownDrive;
import dev.stayfixed.judging.VehicleMarks;
import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.obd.Vin;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;

/** Whether a drive can be one of this vehicle. */
final class SameVehicle {

    /** km; readings of one moment may differ by the last digit. */
    private static final double ROUNDING = 1;

    private static final String CONFIRM = "; send the drive to its own vehicle, or, if it is this one, send"
            + " \"sameVehicleConfirmed\": true with it";

    private SameVehicle() {}

    /** The identification number that a scan or a log states is that of the vehicle. */
    static void checkNumber(Vehicle vehicle, Stream<Vin> stated) {
        Optional<Vin> known = vehicle.details().vin();
        stated.filter(read -> known.isPresent() && !known.get().text().equals(read.text()))
                .findFirst()
                .ifPresent(read -> {
                    throw new Refused(
                            ProblemType.OTHER_VEHICLE,
                            "the drive names the vehicle " + read.text() + ", expected "
                                    + known.map(Vin::text).orElse("") + "; send the drive to its own vehicle");
                });
    }

    /**
     * The monitors and the odometer go with those of the vehicle's other drives.
     *
     * @param others every other drive of the vehicle
     */
    static void checkHistory(ReadDrive drive, List<KnownDrive> others) {
        VehicleMarks marks = VehicleMarks.of(drive);
        checkMonitors(marks, others);
        others.forEach(other -> checkOdometer(drive, marks, other));
    }

    /** A control unit lists the same monitors all its life (SAE J1979 PID $01, bytes B and C). */
    private static void checkMonitors(VehicleMarks drive, List<KnownDrive> others) {
        Set<Set<MonitorGroup>> known = new LinkedHashSet<>();
        others.forEach(other -> known.addAll(other.marks().monitors()));
        drive.monitors().stream()
                .filter(monitors -> !known.isEmpty() && !known.contains(monitors))
                .findFirst()
                .ifPresent(monitors -> {
                    throw new Refused(
                            ProblemType.OTHER_VEHICLE,
                            "a scan (PID $01) lists the monitors " + words(monitors) + ", expected "
                                    + words(known.iterator().next()) + " as in the other scans of this vehicle"
                                    + CONFIRM);
                });
    }

    private static String words(Set<MonitorGroup> monitors) {
        return String.join(
                ", ", monitors.stream().map(MonitorGroup::label).sorted().toList());
    }

    private static void checkOdometer(ReadDrive drive, VehicleMarks marks, KnownDrive other) {
        DriveRecord reference = other.read().record();
        boolean later = !drive.record().start().isBefore(reference.start());
        OptionalDouble before = later ? other.marks().highest() : marks.highest();
        OptionalDouble after = later ? marks.lowest() : other.marks().lowest();
        if (before.isPresent() && after.isPresent() && after.getAsDouble() < before.getAsDouble() - ROUNDING) {
            DriveRecord first = later ? reference : drive.record();
            DriveRecord second = later ? drive.record() : reference;
            throw new Refused(
                    ProblemType.OTHER_VEHICLE,
                    "the odometer goes back: %.0f km in the drive of %s, then %.0f km in that of %s (the drive %s is stored)%s"
                            .formatted(
                                    before.getAsDouble(),
                                    first.start(),
                                    after.getAsDouble(),
                                    second.start(),
                                    reference.id(),
                                    CONFIRM));
        }
    }
}
