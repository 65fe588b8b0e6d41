package dev.stayfixed.archive;

import dev.stayfixed.drive.running.Run;
import dev.stayfixed.drive.running.RunMeter;
import dev.stayfixed.drive.running.RunningCheck;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.platform.problem.Mistake;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.platform.storage.Durably;
import dev.stayfixed.recording.LogReader;
import java.util.Set;
import java.util.UUID;
import org.springframework.stereotype.Service;

/** What was recorded in a drive: what is kept of it for its page, and the rest read again from the stored log, row by row. */
@Service
public class RecordedSignals {

    private final Archive archive;
    private final LogReader reader;
    private final Durably durably;

    RecordedSignals(Archive archive, LogReader reader, Durably durably) {
        this.archive = archive;
        this.reader = reader;
        this.durably = durably;
    }

    /** What a drive tells of a check with the engine running, and where it stands on file. */
    public record ToldRun(Filed drive, Run run) {}

    /**
     * The signals of a drive for a picture.
     *
     * @param wanted empty for all that were recorded
     * @param points at most so many a signal
     */
    public SignalSeries series(UUID driveId, Set<Signal> wanted, int points) {
        return durably.read(() -> {
            Filed drive = archive.filed(driveId);
            LogFacts facts = log(drive);
            Thinning thinning = new Thinning(
                    wanted.isEmpty() ? facts.signals().extents().keySet() : wanted,
                    facts.signals().rows().wall(),
                    points);
            OpenedLog opened = opened(drive);
            opened.bytes().read(in -> reader.read(in, opened.mapping(), thinning));
            return new SignalSeries(
                    facts.firstRow(), facts.signals().rows().wall(), thinning.signals(), thinning.gaps());
        });
    }

    /** What the page of a drive with a log draws; it is kept, and read from the log only where that has not happened yet. */
    public LogPicture picture(UUID driveId, int revision) {
        return durably.read(() -> archive.picture(driveId, revision).orElseThrow(() -> noLog(driveId)));
    }

    /**
     * Reads a drive of the vehicle as a run of the check.
     *
     * @throws Refused when it is of another vehicle, or has no log that counts
     */
    public ToldRun run(UUID vehicleId, UUID driveId, RunningCheck check) {
        return durably.read(() -> {
            Filed drive = archive.filed(driveId);
            if (!drive.vehicleId().equals(vehicleId)) {
                throw unfit(driveId + " of another vehicle", "a drive of the vehicle of this job");
            }
            ReadDrive read = archive.read(drive);
            if (archive.leftOut(driveId).isPresent()) {
                throw unfit(driveId + ", which was left out of the count", "a drive that counts");
            }
            if (read.log().isEmpty() || !read.isScoredLog()) {
                throw unfit(driveId + ", which has no log that is judged", "a drive with a recorded log");
            }
            RunMeter meter = check.meter();
            OpenedLog opened = opened(drive);
            opened.bytes().read(in -> reader.read(in, opened.mapping(), meter));
            return new ToldRun(drive, meter.run());
        });
    }

    private static Refused unfit(String found, String wanted) {
        return Refused.content(new Mistake("driveId", found, wanted));
    }

    private LogFacts log(Filed drive) {
        return archive.read(drive).log().orElseThrow(() -> noLog(drive.id()));
    }

    private OpenedLog opened(Filed drive) {
        return archive.opened(drive.id(), drive.revision()).orElseThrow(() -> noLog(drive.id()));
    }

    private static Refused noLog(UUID driveId) {
        return new Refused(
                ProblemType.NOT_FOUND,
                "the drive " + driveId + " has no log; send one with PUT /api/v1/drives/" + driveId);
    }
}
