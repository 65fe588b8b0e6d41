package dev.stayfixed.judging;

import dev.stayfixed.archive.Archive;
import dev.stayfixed.archive.LogFacts;
import dev.stayfixed.archive.ReadDrive;
import dev.stayfixed.archive.RecordedSignals;
import dev.stayfixed.jobs.EngineCheck;
import dev.stayfixed.jobs.EngineCheck.Side;
import dev.stayfixed.jobs.EngineChecks;
import dev.stayfixed.jobs.Jobs;
import dev.stayfixed.platform.problem.Mistake;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.platform.storage.Durably;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.UUID;
import org.springframework.stereotype.Service;

/** Takes recorded drives for the runs of a check. */
@Service
public class CheckRuns {

    private final EngineChecks checks;
    private final CaseFiles files;
    private final Jobs jobs;
    private final Folding folding;
    private final Archive archive;
    private final RecordedSignals signals;
    private final Durably durably;
    private final Clock clock;

    CheckRuns(
            EngineChecks checks,
            CaseFiles files,
            Jobs jobs,
            Folding folding,
            Archive archive,
            RecordedSignals signals,
            Durably durably,
            Clock clock) {
        this.checks = checks;
        this.files = files;
        this.jobs = jobs;
        this.folding = folding;
        this.archive = archive;
        this.signals = signals;
        this.durably = durably;
        this.clock = clock;
    }

    /**
     * A drive with a log that can be taken for a run.
     *
     * @param isSuited all that the check needs was recorded, and a warm-up began cold
     */
    public record Candidate(UUID driveId, Instant start, boolean isSuited) {}

    /** The drives on one side of the latest repair, those nearest to it first. */
    public List<Candidate> candidates(UUID jobId, FaultCheck check, Side side) {
        return durably.read(() -> {
            List<Candidate> found = new ArrayList<>(folding.of(jobs.get(jobId).vehicleId()).drives().read().stream()
                    .filter(ReadDrive::isScoredLog)
                    .filter(drive -> FaultCheck.isOn(side, drive.record().start(), check.repaired()))
                    .map(drive -> new Candidate(
                            drive.driveId(),
                            drive.record().start(),
                            drive.log()
                                    .map(LogFacts::signals)
                                    .filter(check.stated().check()::suits)
                                    .isPresent()))
                    .toList());
            if (side == Side.BEFORE) {
                Collections.reverse(found);
            }
            return found;
        });
    }

    /**
     * Reads the log of a drive as the run of a check, and keeps what it tells. A long log is read before anything is locked.
     *
     * @throws Refused when the drive is not of this vehicle, has no log that counts, or lies on the other side of the repair
     */
    public FaultCheck choose(UUID jobId, UUID checkId, Side side, UUID driveId) {
        EngineCheck check = checks.get(jobId, checkId);
        RecordedSignals.ToldRun told = signals.run(jobs.get(jobId).vehicleId(), driveId, check.check());
        return durably.write(() -> {
            if (archive.filed(driveId).revision() != told.drive().revision()) {
                throw new Refused(
                        ProblemType.VERSION_CHANGED,
                        "the drive " + driveId + " was corrected meanwhile; choose it again");
            }
            Instant start = told.drive().start();
            FaultCheck standing = files.ofJob(jobId).check(jobId, checkId);
            if (!FaultCheck.isOn(side, start, standing.repaired())) {
                throw Refused.content(new Mistake(
                        "driveId",
                        "a drive of " + start,
                        side == Side.AFTER
                                ? "one that began after the latest repair of the fault"
                                : "one that began before the latest repair of the fault"));
            }
            checks.choose(
                    jobId,
                    checkId,
                    new EngineCheck.Chosen(side, driveId, told.drive().revision(), start, clock.instant(), told.run()));
            return files.ofJob(jobId).check(jobId, checkId);
        });
    }
}
