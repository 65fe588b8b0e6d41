package dev.stayfixed.archive;

import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.drive.DriveRecord.Moment;
import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.drive.OperatingPoint;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.platform.problem.Mistake;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.wording.Wording;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** From the content of a submission to the record of a drive. A submission that was accepted once reads the same ever after. */
public final class SubmittedDrive {

    /** SAE J1979 service $01: run time since engine start, s. */
    private static final int RUN_TIME = 0x1F;

    /** What a scan near the end of a drive tells beside the codes, by PID. */
    private static final Map<Integer, DriveQuantity> AT_END = Map.of(
            RUN_TIME,
            DriveQuantity.RUN_TIME,
            0x2F,
            DriveQuantity.FUEL_LEVEL,
            0x33,
            DriveQuantity.BAROMETER,
            0x46,
            DriveQuantity.AMBIENT);

    private final DriveSubmission submission;
    private final List<DriveRecord.TimedScan> scans;
    private final Optional<LogFacts> log;
    private final List<Reason> warnings = new ArrayList<>();

    private SubmittedDrive(DriveSubmission submission, Optional<LogFacts> log) {
        this.submission = submission;
        this.log = log;
        this.scans = submission.scansOrNone().stream()
                .map(s ->
                        new DriveRecord.TimedScan(s.moment() == null ? Moment.AFTER : s.moment(), Scan.read(s.text())))
                .toList();
    }

    /**
     * Reads it.
     *
     * @param log what the log beside it tells
     * @throws Refused where it contradicts itself, or says too little
     */
    public static ReadDrive read(
            UUID id, int revision, DriveSubmission submission, Optional<LogFacts> log, Instant receivedAt) {
        return new SubmittedDrive(submission, log).read(id, revision, receivedAt);
    }

    private ReadDrive read(UUID id, int revision, Instant receivedAt) {
        refuseNonsense();
        DriveSummary stated = Refused.unless("summary", () -> summary(submission.summary()));
        DriveSummary summary =
                completed(log.map(facts -> recorded(facts, stated)).orElse(stated));
        Instant start = log.map(LogFacts::start)
                .orElseGet(() -> start(summary, submission.takenAt() == null ? receivedAt : submission.takenAt()));
        Optional<Instant> end = Optional.ofNullable(submission.end()).or(() -> log.flatMap(LogFacts::end));
        DriveRecord drive = Refused.unless(
                "end",
                () -> new DriveRecord(
                        id.toString(),
                        start,
                        end,
                        summary,
                        Boolean.TRUE.equals(submission.codesClearedBefore()),
                        scans));
        return new ReadDrive(
                drive, revision, end.orElseGet(() -> start.plus(runTime(summary))), log, List.copyOf(warnings));
    }

    /** The log counts; what it lacks is taken from what was said. A log that cannot be a drive tells nothing. */
    private DriveSummary recorded(LogFacts facts, DriveSummary stated) {
        if (!facts.report().isScorable()) {
            facts.report().implausible().forEach(why -> warnings.add(Reason.of(DriveDoubt.LOG_NOT_JUDGED, why)));
            return stated;
        }
        DriveSummary read = facts.signals().summary();
        DriveSummary both = read.with(
                read.operatingPoints().isEmpty() ? stated.operatingPoints() : read.operatingPoints(),
                read.milOn().or(stated::milOn));
        try {
            return both.completedBy(stated.values());
        } catch (IllegalArgumentException e) {
            warnings.add(Reason.of(DriveDoubt.LOG_AGAINST_SUMMARY, mistake(e)));
            return both;
        }
    }

    private static Part mistake(IllegalArgumentException e) {
        return Part.verbatim(String.valueOf(e.getMessage()));
    }

    private void refuseNonsense() {
        for (int i = 0; i < scans.size(); i++) {
            List<Scan.Line> lines = scans.get(i).scan().lines();
            if (lines.stream().anyMatch(l -> l.outcome() == Scan.Line.Outcome.UNDERSTOOD)) {
                continue;
            }
            Part first = lines.isEmpty() ? DriveDoubt.EMPTY_SCAN : lines.get(0).explanation();
            if (submission.summary() == null && scans.size() == 1 && log.isEmpty()) {
                throw new Refused(
                        ProblemType.SCAN_NOT_UNDERSTOOD,
                        "no line of the scan was understood; the first: " + Wording.METRIC.words(first));
            }
            warnings.add(Reason.of(DriveDoubt.SCAN_NOT_READ, Part.count(i + 1), first));
        }
    }

    private Instant start(DriveSummary summary, Instant takenAt) {
        if (submission.start() != null) {
            return submission.start();
        }
        if (summary.value(DriveQuantity.RUN_TIME).isPresent()) {
            return takenAt.minus(runTime(summary));
        }
        if (scans.isEmpty()) {
            throw Refused.content(new Mistake(
                    "start", null, "the time of engine start; only a scan, or a run time, can do without it"));
        }
        warnings.add(Reason.of(DriveDoubt.FILED_BY_SCAN, Part.verbatim(takenAt.toString())));
        return takenAt;
    }

    private static java.time.Duration runTime(DriveSummary summary) {
        return java.time.Duration.ofSeconds(
                Math.round(summary.value(DriveQuantity.RUN_TIME).orElse(0)));
    }

    /** What the summary leaves open is taken from the last scan that says it. */
    private DriveSummary completed(DriveSummary stated) {
        Map<DriveQuantity, Double> read = new EnumMap<>(DriveQuantity.class);
        for (DriveRecord.TimedScan timed : scans) {
            if (timed.moment() == Moment.AFTER) {
                AT_END.forEach((pid, quantity) -> {
                    OptionalDouble value = timed.scan().parameter(pid);
                    if (value.isPresent() && quantity.isPlausible(value.getAsDouble())) {
                        read.put(quantity, value.getAsDouble());
                    }
                });
            }
        }
        try {
            return stated.completedBy(read);
        } catch (IllegalArgumentException e) {
            warnings.add(Reason.of(
                    log.isPresent() ? DriveDoubt.SCAN_AGAINST_LOG : DriveDoubt.SCAN_AGAINST_SUMMARY, mistake(e)));
            return stated;
        }
    }

    private static DriveSummary summary(DriveSubmission.@Nullable Summary s) {
        if (s == null) {
            return DriveSummary.UNKNOWN;
        }
        List<DriveSubmission.Point> points = s.operatingPoints() == null ? List.of() : s.operatingPoints();
        return new DriveSummary(
                s.values(),
                points.stream()
                        .map(p -> new OperatingPoint(p.engineSpeed(), p.load(), p.coolant()))
                        .toList(),
                Optional.ofNullable(s.milOn()));
    }
}
