package dev.stayfixed.intake;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import dev.stayfixed.archive.ReadDrive;
import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.drive.DriveRecord.Moment;
import dev.stayfixed.drive.DriveRecord.TimedScan;
import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.jobs.Vehicle;
import dev.stayfixed.judging.KnownDrive;
import dev.stayfixed.obd.Ignition;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.obd.Vin;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.UUID;
import java.util.stream.Stream;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;

/** What of a drive says that it was driven by another vehicle. */
class SameVehicleTest {

    /** Spark; catalyst, EVAP, O2, O2 heater and EGR/VVT; then the same without EVAP. SAE J1979 PID $01, bytes B to D. */
    private static final String MONITORS = "41 01 00 07 E5 00";

    private static final String OTHER_MONITORS = "41 01 00 07 E1 00";

    private static final Vin VIN = Vin.parse("1M8GDM9AXKP042788");
    private static final Vin OTHER_VIN = Vin.parse("WAUZZZ8K9BA000000");

    private static Vehicle vehicle(Optional<Vin> vin) {
        return new Vehicle(
                UUID.randomUUID(),
                0,
                Instant.EPOCH,
                new Vehicle.Details(vin, Optional.empty(), "estate", OptionalInt.empty(), Ignition.SPARK));
    }

    private static ReadDrive drive(int day, String scan) {
        Instant start = Instant.parse("2026-03-03T07:00:00Z").plusSeconds(86_400L * day);
        DriveRecord record = new DriveRecord(
                UUID.randomUUID().toString(),
                start,
                Optional.empty(),
                DriveSummary.UNKNOWN,
                false,
                List.of(new TimedScan(Moment.AFTER, Scan.read(scan))));
        return new ReadDrive(record, 1, start, Optional.empty(), List.of());
    }

    /** SAE J1979 PID $A6, a tenth of a kilometre. */
    private static String odometer(int km) {
        String hex = "%08X".formatted(km * 10);
        return "41 A6 " + hex.replaceAll("(..)(?=.)", "$1 ");
    }

    private static List<KnownDrive> known(ReadDrive... drives) {
        return Stream.of(drives).map(KnownDrive::of).toList();
    }

    private static void refuses(ThrowingCallable check, String reason) {
        assertThatExceptionOfType(Refused.class)
                .isThrownBy(check)
                .withMessageContaining(reason)
                .extracting(Refused::type)
                .isEqualTo(ProblemType.OTHER_VEHICLE);
    }

    @Test
    void anotherNumberIsAnotherVehicle() {
        refuses(() -> SameVehicle.checkNumber(vehicle(Optional.of(VIN)), Stream.of(VIN, OTHER_VIN)), OTHER_VIN.text());
    }

    @Test
    void theSameNumberOrNoneKnownIsNone() {
        assertThatCode(() -> {
                    SameVehicle.checkNumber(vehicle(Optional.of(VIN)), Stream.of(VIN));
                    SameVehicle.checkNumber(vehicle(Optional.empty()), Stream.of(OTHER_VIN));
                    SameVehicle.checkNumber(vehicle(Optional.of(VIN)), Stream.empty());
                })
                .doesNotThrowAnyException();
    }

    @Test
    void monitorsThatTheOthersDoNotListAreOfAnotherVehicle() {
        List<KnownDrive> others = known(drive(0, MONITORS), drive(1, MONITORS));
        refuses(() -> SameVehicle.checkHistory(drive(2, OTHER_MONITORS), others), "lists the monitors");
        assertThatCode(() -> SameVehicle.checkHistory(drive(2, MONITORS), others))
                .doesNotThrowAnyException();
        assertThatCode(() -> SameVehicle.checkHistory(drive(2, "43 00"), others))
                .doesNotThrowAnyException();
        assertThatCode(() -> SameVehicle.checkHistory(drive(2, OTHER_MONITORS), known(drive(0, "43 00"))))
                .doesNotThrowAnyException();
    }

    @Test
    void theOdometerOnlyGrows() {
        List<KnownDrive> others = known(drive(0, odometer(50_000)), drive(4, odometer(50_400)));
        refuses(() -> SameVehicle.checkHistory(drive(2, odometer(49_900)), others), "the odometer goes back");
        refuses(() -> SameVehicle.checkHistory(drive(2, odometer(50_500)), others), "the odometer goes back");
        assertThatCode(() -> SameVehicle.checkHistory(drive(2, odometer(50_200)), others))
                .doesNotThrowAnyException();
    }

    @Test
    void theLastDigitMayDiffer() {
        assertThatCode(() -> SameVehicle.checkHistory(drive(1, odometer(49_999)), known(drive(0, odometer(50_000)))))
                .doesNotThrowAnyException();
    }
}
