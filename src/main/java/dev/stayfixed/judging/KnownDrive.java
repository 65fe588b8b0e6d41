package dev.stayfixed.judging;

import dev.stayfixed.archive.ReadDrive;
import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.drive.DriveRecord;

/**
 * A drive, and what of it is looked at whenever another one comes in.
 *
 * @param km driven in it, as far as it tells
 * @param kmSinceClear the most that a scan in it says was driven since codes were cleared
 * @param weight how much of the heap it takes, roughly, in bytes
 */
public record KnownDrive(ReadDrive read, VehicleMarks marks, double km, double kmSinceClear, int weight) {

    private static final int A_DRIVE = 2_000;
    private static final int A_CHARACTER = 8;

    /** SAE J1979 service $01: distance since codes were cleared, km. */
    private static final int DISTANCE_SINCE_CLEAR = 0x31;

    public static KnownDrive of(ReadDrive read) {
        DriveRecord drive = read.record();
        return new KnownDrive(
                read,
                VehicleMarks.of(read),
                drive.summary().value(DriveQuantity.DISTANCE).orElse(0),
                drive.scans(DriveRecord.Moment.AFTER).stream()
                        .mapToDouble(
                                scan -> scan.parameter(DISTANCE_SINCE_CLEAR).orElse(0))
                        .max()
                        .orElse(0),
                A_DRIVE
                        + A_CHARACTER
                                * drive.scans().stream()
                                        .mapToInt(timed -> timed.scan().length())
                                        .sum());
    }
}
