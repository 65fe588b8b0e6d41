package dev.stayfixed.histories;

import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.histories.CarRecord.Driven;
import dev.stayfixed.histories.CarRecord.Repaired;
import dev.stayfixed.histories.Oracle.Says;
import dev.stayfixed.obd.Ignition;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.obd.TroubleCode;
import dev.stayfixed.verification.RepairAttempt;
import dev.stayfixed.verification.RepairedFault;
import dev.stayfixed.verification.RuleSet;
import dev.stayfixed.verification.Trips;
import dev.stayfixed.verification.Verdict;
import dev.stayfixed.verification.Verification;
import dev.stayfixed.verification.VerificationState;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The rule that is tried: a record goes through the same text and the same calls as everywhere. */
final class RuleOnTrial {

    private RuleOnTrial() {}

    static Says says(VerificationState state) {
        if (state instanceof VerificationState.ConfirmedFixed) {
            return Says.CONFIRMED_FIXED;
        }
        return state instanceof VerificationState.Recurred ? Says.RECURRED : Says.NEITHER;
    }

    static Verdict verdict(CarRecord record) {
        return verdict(record, reading -> ReadingText.of(record.fault(), reading));
    }

    /** Likewise, with the readings written down in another way. */
    static Verdict verdict(CarRecord record, Function<Reading, String> text) {
        Tried tried = tried(record, text);
        return new Verification(RuleSet.STANDARD).of(tried.fault(), tried.repairs(), tried.drives());
    }

    /** What the rule is given. */
    record Tried(RepairedFault fault, List<RepairAttempt> repairs, List<DriveRecord> drives) {}

    static Tried tried(CarRecord record, Function<Reading, String> text) {
        Watched fault = record.fault();
        return new Tried(
                RepairedFault.of(
                        TroubleCode.parse(fault.code()), Ignition.SPARK, fault.trips() == 1 ? Trips.ONE : Trips.TWO),
                record.entries().stream()
                        .filter(Repaired.class::isInstance)
                        .map(e -> repair((Repaired) e, text))
                        .toList(),
                record.entries().stream()
                        .filter(Driven.class::isInstance)
                        .map(e -> drive((Driven) e, text))
                        .toList());
    }

    private static RepairAttempt repair(Repaired repair, Function<Reading, String> text) {
        return new RepairAttempt(
                "repair " + repair.at(),
                repair.at(),
                repair.cleared(),
                repair.before().map(r -> Scan.read(text.apply(r))),
                repair.after().map(r -> Scan.read(text.apply(r))));
    }

    private static DriveRecord drive(Driven drive, Function<Reading, String> text) {
        List<DriveRecord.TimedScan> scans = Stream.concat(
                        drive.before().stream()
                                .map(r ->
                                        new DriveRecord.TimedScan(DriveRecord.Moment.BEFORE, Scan.read(text.apply(r)))),
                        drive.after().stream()
                                .map(r ->
                                        new DriveRecord.TimedScan(DriveRecord.Moment.AFTER, Scan.read(text.apply(r)))))
                .toList();
        return new DriveRecord(
                drive.id(),
                drive.start(),
                Optional.of(drive.end()),
                DriveSummary.UNKNOWN,
                drive.clearedBefore(),
                scans);
    }

    static String steps(Verdict verdict) {
        return verdict.attempts().stream()
                .flatMap(attempt -> attempt.steps().stream())
                .map(Verdict.Step::toString)
                .collect(Collectors.joining("\n  "));
    }
}
