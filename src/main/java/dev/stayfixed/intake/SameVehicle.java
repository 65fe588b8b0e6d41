package dev.stayfixed.intake;

import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.drive.signal.Extent;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.jobs.Vehicle;
import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.obd.Readiness;
import dev.stayfixed.obd.Vin;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/** Whether a drive can be one of this vehicle. */
final class SameVehicle {

    /** SAE J1979 service $01: odometer, km. */
    private static final int ODOMETER = 0xA6;

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
    static void checkHistory(ReadDrive drive, List<ReadDrive> others) {
        checkMonitors(drive, others);
        others.forEach(other -> checkOdometer(drive, other));
    }

    /** A control unit lists the same monitors all its life (SAE J1979 PID $01, bytes B and C). */
    private static void checkMonitors(ReadDrive drive, List<ReadDrive> others) {
        List<Set<MonitorGroup>> known =
                others.stream().flatMap(SameVehicle::monitors).toList();
        monitors(drive)
                .filter(monitors -> !known.isEmpty() && !known.contains(monitors))
                .findFirst()
                .ifPresent(monitors -> {
                    throw new Refused(
                            ProblemType.OTHER_VEHICLE,
                            "a scan (PID $01) lists the monitors " + words(monitors) + ", expected "
                                    + words(known.get(0)) + " as in the other scans of this vehicle" + CONFIRM);
                });
    }

    private static Stream<Set<MonitorGroup>> monitors(ReadDrive drive) {
        return drive.record().scans().stream()
                .flatMap(timed -> timed.scan().sinceClear().stream())
                .map(Readiness::supported)
                .map(Set::copyOf);
    }

    private static String words(Set<MonitorGroup> monitors) {
        return String.join(
                ", ", monitors.stream().map(MonitorGroup::label).sorted().toList());
    }

    private static void checkOdometer(ReadDrive drive, ReadDrive other) {
        boolean later = !drive.record().start().isBefore(other.record().start());
        ReadDrive first = later ? other : drive;
        ReadDrive second = later ? drive : other;
        OptionalDouble before = odometer(first).max();
        OptionalDouble after = odometer(second).min();
        if (before.isPresent() && after.isPresent() && after.getAsDouble() < before.getAsDouble() - ROUNDING) {
            DriveRecord reference = other.record();
            throw new Refused(
                    ProblemType.OTHER_VEHICLE,
                    "the odometer goes back: %.0f km in the drive of %s, then %.0f km in that of %s (the drive %s is stored)%s"
                            .formatted(
                                    before.getAsDouble(),
                                    first.record().start(),
                                    after.getAsDouble(),
                                    second.record().start(),
                                    reference.id(),
                                    CONFIRM));
        }
    }

    private static DoubleStream odometer(ReadDrive drive) {
        DoubleStream scans = drive.record().scans().stream()
                .map(timed -> timed.scan().parameter(ODOMETER))
                .flatMapToDouble(OptionalDouble::stream);
        DoubleStream log = drive.log().filter(facts -> facts.report().isScorable()).stream()
                .flatMap(facts -> facts.signals().extent(Signal.ODOMETER).stream())
                .flatMapToDouble((Extent e) -> DoubleStream.of(e.lowest(), e.highest()));
        return DoubleStream.concat(scans, log);
    }
}
