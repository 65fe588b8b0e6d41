package dev.stayfixed.judging;

import dev.stayfixed.archive.ReadDrive;
import dev.stayfixed.drive.signal.Extent;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.obd.Readiness;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.DoubleStream;

/**
 * What of a drive tells one vehicle from another.
 *
 * @param monitors that each of its scans lists
 * @param lowest odometer, km, and the highest one; both empty where it was not read
 */
public record VehicleMarks(List<Set<MonitorGroup>> monitors, OptionalDouble lowest, OptionalDouble highest) {

    /** SAE J1979 service $01: odometer, km. */
    private static final int ODOMETER = 0xA6;

    public static VehicleMarks of(ReadDrive drive) {
        double[] odometer = odometer(drive).toArray();
        return new VehicleMarks(
                drive.record().scans().stream()
                        .flatMap(timed -> timed.scan().sinceClear().stream())
                        .map(Readiness::supported)
                        .map(Set::copyOf)
                        .toList(),
                DoubleStream.of(odometer).min(),
                DoubleStream.of(odometer).max());
    }

    private static DoubleStream odometer(ReadDrive drive) {
        DoubleStream scans = drive.record().scans().stream()
                .map(timed -> timed.scan().parameter(ODOMETER))
                .flatMapToDouble(OptionalDouble::stream);
        DoubleStream log = drive.log().filter(facts -> drive.isScoredLog()).stream()
                .flatMap(facts -> facts.signals().extent(Signal.ODOMETER).stream())
                .flatMapToDouble((Extent e) -> DoubleStream.of(e.lowest(), e.highest()));
        return DoubleStream.concat(scans, log);
    }
}
