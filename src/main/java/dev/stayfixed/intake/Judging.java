package dev.stayfixed.intake;

import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.jobs.EvidenceChanged;
import dev.stayfixed.jobs.FaultCase;
import dev.stayfixed.jobs.Standing;
import dev.stayfixed.jobs.Standings;
import dev.stayfixed.verification.RuleSet;
import dev.stayfixed.verification.Verification;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;

/** Judges by replay: a verdict is a function of repairs and stored submissions, and the standing that is kept is a copy of it. */
@Component
class Judging {

    private final Verification verification = new Verification(RuleSet.STANDARD);
    private final Standings standings;
    private final Originals originals;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    Judging(Standings standings, Originals originals, ApplicationEventPublisher events, Clock clock) {
        this.standings = standings;
        this.originals = originals;
        this.events = events;
        this.clock = clock;
    }

    List<FaultVerdict> judge(List<FaultCase> cases, UUID vehicleId) {
        List<DriveRecord> drives =
                originals.drivesOf(vehicleId).stream().map(ReadDrive::record).toList();
        Map<String, Instant> starts = drives.stream().collect(Collectors.toMap(DriveRecord::id, DriveRecord::start));
        return cases.stream()
                .map(c -> new FaultVerdict(c, verification.of(c.fault(), c.repairs(), drives), starts))
                .toList();
    }

    /** Judges every fault of the vehicle and keeps where each stands. Needs a transaction that holds the vehicle. */
    List<FaultVerdict> replay(UUID vehicleId) {
        List<FaultVerdict> verdicts = judge(standings.ofVehicle(vehicleId), vehicleId);
        verdicts.forEach(verdict -> keep(vehicleId, verdict));
        return verdicts;
    }

    private void keep(UUID vehicleId, FaultVerdict verdict) {
        FaultCase judged = verdict.faultCase();
        Standing now = verdict.standing();
        if (standings.keep(judged, now)) {
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

    @EventListener
    void on(EvidenceChanged changed) {
        replay(changed.vehicleId());
    }
}
