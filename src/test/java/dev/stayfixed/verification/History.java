package dev.stayfixed.verification;

import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.drive.DriveRecord.Moment;
import dev.stayfixed.drive.DriveRecord.TimedScan;
import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.drive.OperatingPoint;
import dev.stayfixed.obd.Ignition;
import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.obd.TroubleCode;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A repaired fault and its drives, told in the order in which they happened. */
final class History {

    /** Spark, catalyst, EVAP, O2, O2 heater and EGR/VVT enabled: all complete, and none complete, in PID $41. */
    static final String CYCLE_COMPLETE = "00 07 E5 00";

    static final String CYCLE_NOT_COMPLETE = "00 07 E5 E5";

    static final DriveSummary MINIMUM_CYCLE = summary(
            Map.of(DriveQuantity.RUN_TIME, 900.0, DriveQuantity.FAST_TIME, 400.0, DriveQuantity.LONGEST_IDLE, 45.0));
    static final DriveSummary WARM_UP =
            summary(Map.of(DriveQuantity.START_COOLANT, 20.0, DriveQuantity.PEAK_COOLANT, 88.0));

    private static final Instant REPAIR = Instant.parse("2026-03-02T16:00:00Z");

    private final RepairedFault fault;
    private final List<RepairAttempt> repairs = new ArrayList<>();
    private final List<DriveRecord> drives = new ArrayList<>();
    private RuleSet rules = RuleSet.STANDARD;
    private Instant now = REPAIR;
    private DriveSummary driving = DriveSummary.UNKNOWN;

    private History(RepairedFault fault) {
        this.fault = fault;
    }

    static History of(RepairedFault fault) {
        return new History(fault);
    }

    static History of(String code) {
        return of(twoTrip(code));
    }

    /** A fault that was repaired and whose codes were cleared. */
    static History repaired(String code) {
        return of(code).repair(true);
    }

    static RepairedFault twoTrip(String code) {
        return RepairedFault.of(TroubleCode.parse(code), Ignition.SPARK, Trips.TWO);
    }

    static RepairedFault oneTrip(String code) {
        return RepairedFault.of(TroubleCode.parse(code), Ignition.SPARK, Trips.ONE);
    }

    static RepairedFault withPasses(String code, int passes) {
        RepairedFault fault = twoTrip(code);
        return new RepairedFault(
                fault.code(),
                fault.ignition(),
                fault.group(),
                fault.trips(),
                passes,
                fault.weakestAccepted(),
                fault.enablingConditions(),
                fault.freezeFrame());
    }

    static RepairedFault frozenAt(String code, OperatingPoint point) {
        RepairedFault fault = twoTrip(code);
        return new RepairedFault(
                fault.code(),
                fault.ignition(),
                MonitorGroup.of(fault.code(), fault.ignition()),
                fault.trips(),
                fault.requiredPasses(),
                fault.weakestAccepted(),
                List.of(),
                Optional.of(point));
    }

    History judgedBy(RuleSet ruleSet) {
        rules = ruleSet;
        return this;
    }

    /** How the drives of a sequence are driven. */
    History driving(DriveSummary summary) {
        driving = summary;
        return this;
    }

    History repair(boolean cleared) {
        return repair(cleared, null, null);
    }

    History repair(
            boolean cleared,
            @org.jspecify.annotations.Nullable ScanText before,
            @org.jspecify.annotations.Nullable ScanText after) {
        repairs.add(new RepairAttempt(
                "repair-" + (repairs.size() + 1),
                tick(),
                cleared,
                Optional.ofNullable(before).map(ScanText::read),
                Optional.ofNullable(after).map(ScanText::read)));
        return this;
    }

    /** A drive with a scan at its end. */
    History drive(ScanText after) {
        return drive(DriveSummary.UNKNOWN, null, after);
    }

    History drive(ScanText before, ScanText after) {
        return drive(DriveSummary.UNKNOWN, before, after);
    }

    History drive(DriveSummary summary) {
        return drive(summary, null, null);
    }

    History drive(
            DriveSummary summary,
            @org.jspecify.annotations.Nullable ScanText before,
            @org.jspecify.annotations.Nullable ScanText after) {
        List<TimedScan> scans = new ArrayList<>();
        if (before != null) {
            scans.add(new TimedScan(Moment.BEFORE, before.read()));
        }
        if (after != null) {
            scans.add(new TimedScan(Moment.AFTER, after.read()));
        }
        return drive(summary, false, scans);
    }

    History drive(DriveSummary summary, boolean clearedBefore, List<TimedScan> scans) {
        Instant start = tick();
        drives.add(new DriveRecord(
                "drive-" + (drives.size() + 1),
                start,
                Optional.of(start.plus(Duration.ofMinutes(30))),
                summary,
                clearedBefore,
                scans));
        return this;
    }

    /**
     * P passed, F failed, C failed and confirmed, - did not run, X cleared before the next drive: by status bytes. The second of two
     * failed trips in a row is confirmed, as 13 CCR 1968.2 (d)(2.2.2) wants it.
     */
    History drives(String sequence) {
        return drives(sequence, 0);
    }

    /** The same with a confirmed code that was stored before the repair and is not cleared. */
    History drivesWithStoredCode(String sequence) {
        return drives(sequence, 0x28);
    }

    private History drives(String sequence, int stored) {
        boolean cleared = false;
        boolean pending = false;
        int kept = stored;
        boolean ran = stored != 0;
        for (char token : sequence.replace(" ", "").toCharArray()) {
            if (token == 'X') {
                cleared = true;
                pending = false;
                ran = false;
                kept = 0;
                continue;
            }
            int status = switch (token) {
                case 'P' -> pending ? 0x24 | kept : kept;
                case 'F' -> pending ? 0xAF : 0x27 | kept;
                case 'C' -> 0xAF;
                case '-' -> pending ? 0x64 | kept : (ran ? 0x40 : 0x50) | kept;
                default -> throw new IllegalArgumentException("no such drive: " + token);
            };
            ran = ran || token != '-';
            kept = status == 0xAF ? 0x28 : token == 'F' || kept != 0 ? kept | 0x20 : kept;
            pending = token == 'F' || token == 'C' || (pending && token == '-');
            drive(
                    driving,
                    cleared,
                    List.of(new TimedScan(
                            Moment.AFTER,
                            ScanText.scan().status(fault.code().text(), status).read())));
            cleared = false;
        }
        return this;
    }

    Verdict verdict() {
        return new Verification(rules).of(fault, repairs, drives);
    }

    Outcome lastOutcome() {
        return last().outcome();
    }

    Judgement last() {
        List<Judgement> judgements = verdict().judgements();
        return judgements.get(judgements.size() - 1);
    }

    RepairedFault fault() {
        return fault;
    }

    List<RepairAttempt> repairs() {
        return repairs;
    }

    List<DriveRecord> driveRecords() {
        return drives;
    }

    static DriveSummary summary(Map<DriveQuantity, Double> values) {
        return new DriveSummary(values, List.of(), Optional.empty());
    }

    private Instant tick() {
        now = now.plus(Duration.ofHours(12));
        return now;
    }
}
