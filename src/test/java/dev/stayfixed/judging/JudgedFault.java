package dev.stayfixed.judging;

import dev.stayfixed.archive.ReadDrive;
import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.drive.DriveRecord.Moment;
import dev.stayfixed.drive.DriveRecord.TimedScan;
import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.jobs.FaultCase;
import dev.stayfixed.jobs.Standing;
import dev.stayfixed.obd.Ignition;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.obd.TroubleCode;
import dev.stayfixed.verification.RepairAttempt;
import dev.stayfixed.verification.RepairedFault;
import dev.stayfixed.verification.RuleSet;
import dev.stayfixed.verification.Trips;
import dev.stayfixed.verification.Verification;
import dev.stayfixed.verification.VerificationState;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/** P0420 of one car, judged by the real rule, for those who read what it says: days count from the opening of the job. */
public final class JudgedFault {

    /** SAE J1979 $01 PID $41, $07, $03: the catalyst monitor complete in this driving cycle and no code. */
    public static final String RAN_CLEAN = "41 41 00 07 65 00\n47 00\n43 00";

    /** Not complete in this cycle. */
    public static final String DID_NOT_RUN = "41 41 00 07 65 65\n47 00\n43 00";

    /** Complete, and pending. */
    public static final String FAILED = "41 41 00 07 65 00\n47 01 04 20\n43 00";

    /** Complete, pending and confirmed. */
    public static final String CONFIRMED = "41 41 00 07 65 00\n47 01 04 20\n43 01 04 20";

    private static final Instant OPENED = Instant.parse("2026-03-01T09:00:00Z");

    private final List<RepairAttempt> repairs = new ArrayList<>();
    private final List<DriveRecord> drives = new ArrayList<>();
    private boolean closed;
    private VerificationState before = new VerificationState.AwaitingRepair();

    public JudgedFault repaired(int day, boolean cleared) {
        repairs.add(new RepairAttempt(
                id(100 + repairs.size()).toString(), at(day), cleared, Optional.empty(), Optional.empty()));
        return this;
    }

    public JudgedFault drive(int day, String scan) {
        return drive(day, scan, DriveSummary.UNKNOWN);
    }

    public JudgedFault driven(int day, String scan, double kilometres) {
        return drive(
                day, scan, new DriveSummary(Map.of(DriveQuantity.DISTANCE, kilometres), List.of(), Optional.empty()));
    }

    private JudgedFault drive(int day, String scan, DriveSummary summary) {
        drives.add(new DriveRecord(
                driveId(drives.size() + 1).toString(),
                at(day),
                Optional.empty(),
                summary,
                false,
                List.of(new TimedScan(Moment.AFTER, Scan.read(scan)))));
        return this;
    }

    public JudgedFault closed() {
        closed = true;
        return this;
    }

    /** Where it stood when it was judged last. */
    public JudgedFault stood(VerificationState state) {
        before = state;
        return this;
    }

    /** Of the drive that was added so many-th, from 1. */
    public static UUID driveId(int number) {
        return id(number);
    }

    public static Instant at(int day) {
        return OPENED.plus(Duration.ofDays(day));
    }

    public FaultVerdict verdict() {
        RepairedFault fault = RepairedFault.of(TroubleCode.parse("P0420"), Ignition.SPARK, Trips.TWO);
        FaultCase.OfJob job = new FaultCase.OfJob(
                id(1_000), OPENED, closed ? Optional.of(at(365)) : Optional.empty(), Optional.empty());
        return new FaultVerdict(
                new FaultCase(job, id(2_000), fault, List.copyOf(repairs), Standing.of(before, 2)),
                new Verification(RuleSet.STANDARD).of(fault, repairs, drives),
                inOrder());
    }

    public DrivesInOrder inOrder() {
        return new DrivesInOrder(drives.stream()
                .map(drive -> KnownDrive.of(new ReadDrive(drive, 1, drive.start(), Optional.empty(), List.of())))
                .toList());
    }

    private static UUID id(long number) {
        return new UUID(0x4000, 0x8000_0000_0000_0000L | number);
    }
}
