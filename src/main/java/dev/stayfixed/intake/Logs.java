package dev.stayfixed.intake;

import dev.stayfixed.archive.Archive;
import dev.stayfixed.archive.DriveSubmission;
import dev.stayfixed.archive.Filed;
import dev.stayfixed.archive.JudgedLog;
import dev.stayfixed.archive.LogJudge;
import dev.stayfixed.archive.LogSubmission;
import dev.stayfixed.archive.Original;
import dev.stayfixed.archive.SubmissionReader;
import dev.stayfixed.archive.Submitted;
import dev.stayfixed.archive.UploadedLog;
import dev.stayfixed.judging.DriveConditions;
import dev.stayfixed.obd.ObdFormatException;
import dev.stayfixed.obd.Vin;
import dev.stayfixed.platform.IfMatch;
import dev.stayfixed.platform.storage.Durably;
import dev.stayfixed.recording.LogHead;
import dev.stayfixed.recording.LogReader;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Service;

/** Takes recorded logs in. A log is read before anything is locked, and goes the way of every drive then. */
@Service
public class Logs {

    private final Intake intake;
    private final LogMappings mappings;
    private final LogReader logReader;
    private final LogJudge judge;
    private final SubmissionReader reader;
    private final DriveConditions conditions;
    private final Archive archive;
    private final Durably durably;

    Logs(
            Intake intake,
            LogMappings mappings,
            LogReader logReader,
            LogJudge judge,
            SubmissionReader reader,
            DriveConditions conditions,
            Archive archive,
            Durably durably) {
        this.intake = intake;
        this.mappings = mappings;
        this.logReader = logReader;
        this.judge = judge;
        this.reader = reader;
        this.conditions = conditions;
        this.archive = archive;
        this.durably = durably;
    }

    /**
     * Takes the log of a drive in.
     *
     * @param said a {@link DriveSubmission} as JSON; "{}" where nothing was said beside the log
     * @throws dev.stayfixed.platform.problem.Refused as {@link Intake#receive}; where it is no log; and with a proposal where a person
     *     has to say how to read it
     */
    public Received receive(UUID vehicleId, UploadedLog log, Original said) {
        return intake.receive(vehicleId, submitted(vehicleId, log, said));
    }

    /** Replaces what is judged of a drive by a log. */
    public Received correct(UUID driveId, IfMatch ifMatch, UploadedLog log, Original said) {
        Filed filed = durably.read(() -> archive.filed(driveId));
        ifMatch.check(filed.revision());
        return intake.correct(driveId, ifMatch, submitted(filed.vehicleId(), log, said));
    }

    private Submitted submitted(UUID vehicleId, UploadedLog log, Original original) {
        DriveSubmission said = reader.readBesideLog(original);
        LogHead head = log.read(logReader::head);
        LogMappings.Chosen chosen = mappings.of(log, head, said.mappingId(), vehicleId);
        JudgedLog judged = judge.judge(log, chosen.mapping(), said, conditions.setsOf(vehicleId));
        mappings.check(log, head, chosen, judged.facts().report());
        return new Submitted(
                original,
                said,
                reader.digest(said, judged.digest()),
                Optional.of(new LogSubmission(log, log.mediaType(), chosen.mapping(), vin(head), judged)));
    }

    private static Optional<Vin> vin(LogHead head) {
        return head.columns().stream()
                .filter(column ->
                        column.header().toLowerCase(Locale.ROOT).matches("(.*\\.)?vin|vehicle identification number"))
                .map(LogHead.Column::samples)
                .flatMap(List::stream)
                .flatMap(cell -> parsed(cell).stream())
                .findFirst();
    }

    private static Optional<Vin> parsed(String cell) {
        try {
            return Optional.of(Vin.parse(cell));
        } catch (ObdFormatException notAVin) {
            return Optional.empty();
        }
    }
}
