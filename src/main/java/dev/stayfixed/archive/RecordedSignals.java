package dev.stayfixed.archive;

import dev.stayfixed.drive.Finding;
import dev.stayfixed.drive.condition.Evaluation;
import dev.stayfixed.drive.condition.WarmUpCheck;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.platform.storage.Durably;
import dev.stayfixed.reason.Shape;
import dev.stayfixed.recording.LogReader;
import dev.stayfixed.wording.Wording;
import java.util.OptionalDouble;
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

    /** What came of a warm-up check: whether the repair mended it, and each of the two runs. */
    public record WarmUp(Finding mended, WarmUpCheck.Run before, WarmUpCheck.Run after) {}

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

    /** Holds a drive from before the repair against one from after it; both of the vehicle. */
    public WarmUp warmUp(UUID vehicleId, WarmUpCheck check, UUID before, UUID after) {
        return durably.read(() -> {
            WarmUpCheck.Run first = run(vehicleId, check, before);
            WarmUpCheck.Run second = run(vehicleId, check, after);
            return new WarmUp(check.compare(first, second), first, second);
        });
    }

    private WarmUpCheck.Run run(UUID vehicleId, WarmUpCheck check, UUID driveId) {
        Filed drive = archive.filed(driveId);
        if (!drive.vehicleId().equals(vehicleId)) {
            throw new Refused(
                    ProblemType.INVALID_PARAMETER,
                    "drive: found " + driveId + " of another vehicle, expected drives of the vehicle of this job");
        }
        LogFacts facts = log(drive);
        if (!facts.report().isScorable()) {
            throw new Refused(
                    ProblemType.INVALID_PARAMETER,
                    "drive: found " + driveId + ", whose log is not judged, expected one with a usable log; "
                            + Wording.METRIC.words(Shape.EACH.of(facts.report().implausible())));
        }
        Evaluation evaluation = check.conditions().evaluation(OptionalDouble.empty());
        OpenedLog opened = opened(drive);
        opened.bytes().read(in -> reader.read(in, opened.mapping(), evaluation));
        return new WarmUpCheck.Run(evaluation.report(), facts.signals());
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
