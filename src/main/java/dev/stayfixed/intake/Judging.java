package dev.stayfixed.intake;

import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.jobs.EvidenceChanged;
import dev.stayfixed.jobs.FaultCase;
import dev.stayfixed.jobs.FaultConditions;
import dev.stayfixed.jobs.RepairCorrected;
import dev.stayfixed.jobs.Standing;
import dev.stayfixed.jobs.Standings;
import dev.stayfixed.verification.Judgement;
import dev.stayfixed.verification.Outcome;
import dev.stayfixed.verification.RuleSet;
import dev.stayfixed.verification.Verification;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;

/** Judges by replay: a verdict is a function of repairs and stored submissions, and the standing that is kept is a copy of it. */
@Component
public class Judging {

    private final Verification verification = new Verification(RuleSet.STANDARD);
    private final Standings standings;
    private final Originals originals;
    private final DriveConditions conditions;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    Judging(
            Standings standings,
            Originals originals,
            DriveConditions conditions,
            ApplicationEventPublisher events,
            Clock clock) {
        this.standings = standings;
        this.originals = originals;
        this.conditions = conditions;
        this.events = events;
        this.clock = clock;
    }

    /** @param drives of the vehicle of these faults, with what each of them made of the agreed conditions */
    public List<FaultVerdict> judge(List<FaultCase> cases, List<DriveRecord> drives) {
        Map<String, Instant> starts = drives.stream().collect(Collectors.toMap(DriveRecord::id, DriveRecord::start));
        return cases.stream()
                .map(c -> new FaultVerdict(c, verification.of(c.fault(), c.repairs(), withOpening(c, drives)), starts))
                .toList();
    }

    /**
     * The scan with which the job was opened tells what was stored by then, like a drive from before the repair. It is only that:
     * where a repair of the fault is dated before the opening, it is left out, as nobody drove.
     */
    private static List<DriveRecord> withOpening(FaultCase fault, List<DriveRecord> drives) {
        Instant opened = fault.job().openedAt();
        if (fault.job().scan().isEmpty()
                || fault.repairs().stream().anyMatch(repair -> !repair.at().isAfter(opened))) {
            return drives;
        }
        List<DriveRecord> all = new ArrayList<>(drives);
        all.add(new DriveRecord(
                "opening of " + fault.jobId(),
                opened,
                Optional.empty(),
                DriveSummary.UNKNOWN,
                false,
                List.of(new DriveRecord.TimedScan(
                        DriveRecord.Moment.AFTER, fault.job().scan().get()))));
        return all;
    }

    /** What the drives of a vehicle showed that was new when it showed. */
    List<Alert> alerts(UUID vehicleId) {
        return Alerts.of(records(vehicleId), standings.ofVehicle(vehicleId));
    }

    private List<DriveRecord> records(UUID vehicleId) {
        return originals.drivesOf(vehicleId).stream().map(ReadDrive::record).toList();
    }

    /**
     * A vehicle, judged again.
     *
     * @param drives that count
     */
    record Replayed(List<DriveRecord> drives, List<FaultVerdict> verdicts) {

        /** What the drives showed that was new when it showed. */
        List<Alert> alerts() {
            return Alerts.of(
                    drives, verdicts.stream().map(FaultVerdict::faultCase).toList());
        }
    }

    /** Judges every fault of the vehicle and keeps where each stands. Needs a transaction that holds the vehicle. */
    Replayed replay(UUID vehicleId, VehicleJudged.Cause cause) {
        List<ReadDrive> drives = originals.drivesOf(vehicleId);
        List<FaultConditions> agreed = conditions.ofFaults(vehicleId);
        conditions.complete(agreed, drives);
        List<DriveRecord> applied = conditions.applied(vehicleId, agreed, drives).stream()
                .map(ReadDrive::record)
                .toList();
        List<FaultVerdict> verdicts = judge(standings.ofVehicle(vehicleId), applied);
        verdicts.forEach(verdict -> keep(vehicleId, verdict));
        List<DriveRecord> records = drives.stream().map(ReadDrive::record).toList();
        events.publishEvent(new VehicleJudged(vehicleId, cause, records, verdicts, clock.instant()));
        return new Replayed(records, verdicts);
    }

    private void keep(UUID vehicleId, FaultVerdict verdict) {
        FaultCase judged = verdict.faultCase();
        Standing now = verdict.standing();
        if (standings.keep(judged, now, isContradictory(verdict))) {
            events.publishEvent(new VerdictChanged(
                    vehicleId,
                    judged.jobId(),
                    judged.faultId(),
                    judged.fault().code().text(),
                    judged.standing(),
                    now,
                    clock.instant()));
        }
    }

    private static boolean isContradictory(FaultVerdict verdict) {
        List<Judgement> judgements = verdict.verdict().judgements();
        return !judgements.isEmpty() && judgements.get(judgements.size() - 1).outcome() == Outcome.CONTRADICTORY;
    }

    @EventListener
    void on(EvidenceChanged changed) {
        replay(changed.vehicleId(), new VehicleJudged.Cause.JobChanged());
    }

    @EventListener
    void on(RepairCorrected corrected) {
        replay(corrected.vehicleId(), new VehicleJudged.Cause.RepairCorrected());
    }
}
