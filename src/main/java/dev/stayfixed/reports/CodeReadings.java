package dev.stayfixed.reports;

import dev.stayfixed.intake.Drive;
import dev.stayfixed.jobs.Job;
import dev.stayfixed.jobs.Repair;
import dev.stayfixed.jobs.ShopSettings.Units;
import dev.stayfixed.obd.Answer;
import dev.stayfixed.obd.Answer.CodeList.Kind;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.obd.TroubleCode;
import dev.stayfixed.reports.ReportFacts.CodeReading;
import dev.stayfixed.reports.ReportFacts.Codes;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** Codes before and after, scan by scan, in the order of the work. */
final class CodeReadings {

    private final List<TroubleCode> faults;
    private final Units units;

    private CodeReadings(List<TroubleCode> faults, Units units) {
        this.faults = faults;
        this.units = units;
    }

    /** @param drives those on which the verdicts rest */
    static List<CodeReading> of(Job job, List<Drive> drives, Units units) {
        return new CodeReadings(
                        job.faults().stream().map(fault -> fault.terms().code()).toList(), units)
                .all(job, drives);
    }

    private List<CodeReading> all(Job job, List<Drive> drives) {
        List<CodeReading> readings = new ArrayList<>();
        add(readings, ReportReason.AT_OPENING, job.openedAt(), job.scan());
        job.repairs().stream().map(Repair::details).forEach(repair -> {
            add(readings, ReportReason.BEFORE_THE_REPAIR_SCAN, repair.performedAt(), repair.scanBefore());
            add(readings, ReportReason.AFTER_THE_REPAIR_SCAN, repair.performedAt(), repair.scanAfter());
        });
        drives.stream()
                .max(Comparator.comparing(drive -> drive.record().start()))
                .ifPresent(last -> last.record().scans().stream()
                        .reduce((earlier, later) -> later)
                        .map(timed -> reading(
                                ReportReason.IN_THE_LAST_DRIVE, last.record().start(), timed.scan()))
                        .ifPresent(readings::add));
        return List.copyOf(readings);
    }

    private void add(List<CodeReading> readings, ReportReason read, Instant at, Optional<String> pasted) {
        pasted.map(Scan::read).map(scan -> reading(read, at, scan)).ifPresent(readings::add);
    }

    private CodeReading reading(ReportReason read, Instant at, Scan scan) {
        return new CodeReading(
                units.words(read),
                at,
                codes(scan, Kind.CONFIRMED, 0x08, scan::confirmed),
                codes(scan, Kind.PENDING, 0x04, scan::pending),
                codes(scan, Kind.PERMANENT, 0, scan::permanent),
                scan.lamp().orElse(null));
    }

    /**
     * What a code list or the ISO 14229-1 status bytes say; null where nothing was read.
     *
     * @param bit of the status byte that says the same as the list; 0 where none does
     */
    private @Nullable Codes codes(Scan scan, Kind kind, int bit, Function<TroubleCode, Scan.Presence> presence) {
        boolean read = false;
        List<String> listed = new ArrayList<>();
        for (Scan.Heard heard : scan.heard()) {
            if (heard.answer() instanceof Answer.CodeList list && list.kind() == kind) {
                read = true;
                list.codes().forEach(code -> listed.add(name(code)));
            } else if (heard.answer() instanceof Answer.CodeStatuses statuses
                    && (statuses.availability() & statuses.requestedMask().orElse(0xFF) & bit) != 0) {
                read = true;
                statuses.statuses().forEach((code, status) -> {
                    if ((status.value() & bit) != 0) {
                        listed.add(name(code));
                    }
                });
            }
        }
        boolean inFull = faults.stream().map(presence).noneMatch(Scan.Presence.UNKNOWN::equals);
        return read ? new Codes(listed.stream().distinct().sorted().toList(), inFull) : null;
    }

    /** Failure type 00 says no more than the code alone (SAE J2012-DA: no sub type information): one fault is named once. */
    private static String name(TroubleCode code) {
        boolean saysMore = code.failureType().orElse(0) != 0;
        return saysMore ? code.text() : new TroubleCode(code.number(), OptionalInt.empty()).text();
    }
}
