package dev.stayfixed.judging;

import dev.stayfixed.archive.ReadDrive;
import dev.stayfixed.jobs.EvidenceChanged;
import dev.stayfixed.jobs.FaultCase;
import dev.stayfixed.jobs.RepairCorrected;
import dev.stayfixed.jobs.Standing;
import dev.stayfixed.jobs.Standings;
import dev.stayfixed.jobs.VehicleFaults;
import dev.stayfixed.jobs.Vehicles;
import dev.stayfixed.verification.Outcome;
import java.time.Clock;
import java.util.List;
import java.util.UUID;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;

/** Judges by replay: a verdict is a function of repairs and stored submissions, and the standing that is kept is a copy of it. */
@Component
public class Judging {

    private final Standings standings;
    private final Folding folding;
    private final Vehicles vehicles;
    private final ProgramName program;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    Judging(
            Standings standings,
            Folding folding,
            Vehicles vehicles,
            ProgramName program,
            ApplicationEventPublisher events,
            Clock clock) {
        this.standings = standings;
        this.folding = folding;
        this.vehicles = vehicles;
        this.program = program;
        this.events = events;
        this.clock = clock;
    }

    /** What the drives of a vehicle showed that was new when it showed. */
    public List<Alert> alerts(UUID vehicleId) {
        List<FaultCase> cases = standings.ofVehicle(vehicleId).cases();
        FoldedVehicle folded = folding.of(vehicleId);
        return folded.alerts()
                .filter(gone -> gone.isOf(cases))
                .map(gone -> gone.alerts().found())
                .orElseGet(() -> Alerts.of(folded.drives().records(), cases));
    }

    /**
     * A vehicle, judged.
     *
     * @param alerts what the drives showed that was new when it showed
     */
    public record Judged(List<FaultVerdict> verdicts, List<Alert> alerts) {}

    /** Every fault of the vehicle, judged, where nothing has changed. Needs a transaction that holds the vehicle. */
    public Judged judged(UUID vehicleId) {
        VehicleFaults faults = standings.ofVehicle(vehicleId);
        FoldedVehicle folded = folding.judged(vehicleId, faults);
        return new Judged(folded.verdicts(faults.cases()), folded.allAlerts());
    }

    /** Judges every fault of the vehicle and keeps where each stands. Needs a transaction that holds the vehicle. */
    public Judged replay(UUID vehicleId, VehicleJudged.Cause cause) {
        return replay(vehicleId, standings.ofVehicle(vehicleId), cause);
    }

    /**
     * The same with one more drive, which counts and is stored.
     *
     * @param before the vehicle as it stood until then
     */
    public Judged replay(UUID vehicleId, FoldedVehicle before, ReadDrive drive) {
        VehicleFaults faults = standings.ofVehicle(vehicleId);
        folding.added(vehicleId, before, drive, faults);
        return replay(vehicleId, faults, new VehicleJudged.Cause.NewDrive(drive.driveId()));
    }

    private Judged replay(UUID vehicleId, VehicleFaults faults, VehicleJudged.Cause cause) {
        FoldedVehicle folded = folding.judged(vehicleId, faults);
        List<FaultVerdict> verdicts = folded.verdicts(faults.cases());
        List<Alert> alerts = folded.allAlerts();
        verdicts.forEach(verdict -> keep(vehicleId, verdict));
        vehicles.judgedBy(vehicleId, program.text());
        events.publishEvent(new VehicleJudged(vehicleId, cause, folded.drives(), verdicts, alerts, clock.instant()));
        return new Judged(verdicts, alerts);
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
        return verdict.verdict()
                .latestJudgement()
                .filter(latest -> latest.outcome() == Outcome.CONTRADICTORY)
                .isPresent();
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
