package dev.stayfixed.bench;

import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.drive.DriveRecord.Moment;
import dev.stayfixed.drive.DriveRecord.TimedScan;
import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.obd.Ignition;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.obd.TroubleCode;
import dev.stayfixed.verification.RepairAttempt;
import dev.stayfixed.verification.RepairedFault;
import dev.stayfixed.verification.RuleSet;
import dev.stayfixed.verification.Trips;
import dev.stayfixed.verification.Verification;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What judging one fault costs, over few and many drives, with and without counters. */
final class FoldCosts {

    private static final Instant REPAIR = Instant.parse("2026-03-02T16:00:00Z");

    private FoldCosts() {}

    static void run() throws Exception {
        Rounds rounds = new Rounds("judging one fault over all drives", 9);
        for (boolean counters : new boolean[] {true, false}) {
            for (int drives : new int[] {10, 1_000}) {
                List<DriveRecord> all = drives(drives, counters);
                Verification verification = new Verification(RuleSet.STANDARD);
                RepairedFault fault = RepairedFault.of(TroubleCode.parse("P0420"), Ignition.SPARK, Trips.TWO);
                List<RepairAttempt> repairs =
                        List.of(new RepairAttempt("repair", REPAIR, true, Optional.empty(), Optional.empty()));
                rounds.with(
                        "%d drives, %s counters".formatted(drives, counters ? "with" : "without"),
                        10_000 / drives,
                        () -> verification.of(fault, repairs, all).state());
            }
        }
        rounds.run();
    }

    /** Every third drive runs the monitor; scans at the start and at the end. */
    private static List<DriveRecord> drives(int count, boolean counters) {
        List<DriveRecord> drives = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            Instant start = REPAIR.plus(Duration.ofHours(15L + 24L * i));
            String lists = "07\n47 00\n03\n43 00\n01 01\n41 01 00 07 E5 00\n";
            String counted = counters
                    ? "09 08\n49 08 %s\n01 31\n41 31 %02X %02X\n01 30\n41 30 %02X\n"
                            .formatted(inUse(i), ((i * 12) >> 8) & 0xFF, (i * 12) & 0xFF, Math.min(255, i))
                    : "";
            String cycle = "01 41\n41 41 00 07 E5 " + (i % 3 == 0 ? "00" : "E5");
            drives.add(new DriveRecord(
                    "drive " + i,
                    start,
                    Optional.of(start.plus(Duration.ofMinutes(25))),
                    DriveSummary.UNKNOWN,
                    false,
                    List.of(new TimedScan(Moment.AFTER, Scan.read(lists + counted + cycle)))));
        }
        return drives;
    }

    private static String inUse(int i) {
        StringBuilder words = new StringBuilder("10");
        for (int item = 0; item < 16; item++) {
            int value = item == 0 || item == 1 ? 500 + i : 100 + i / 3;
            words.append(" %02X %02X".formatted((value >> 8) & 0xFF, value & 0xFF));
        }
        return words.toString();
    }
}
