package dev.stayfixed.judging;

import dev.stayfixed.archive.Archive;
import dev.stayfixed.archive.ReadDrive;
import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.drive.condition.ConditionSet;
import dev.stayfixed.jobs.FaultCase;
import dev.stayfixed.jobs.FaultConditions;
import dev.stayfixed.jobs.VehicleFaults;
import dev.stayfixed.jobs.Vehicles;
import dev.stayfixed.verification.RuleSet;
import dev.stayfixed.verification.Verification;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.springframework.stereotype.Component;

/** The vehicles, folded: what is kept of them goes on with each drive, and is read from the submissions where nothing is kept. */
@Component
public class Folding {

    private final Verification verification = new Verification(RuleSet.STANDARD);
    private final KeptVehicles kept;
    private final Vehicles vehicles;
    private final Archive archive;
    private final DriveConditions conditions;

    Folding(KeptVehicles kept, Vehicles vehicles, Archive archive, DriveConditions conditions) {
        this.kept = kept;
        this.vehicles = vehicles;
        this.archive = archive;
        this.conditions = conditions;
    }

    /** As it stands in the running transaction. */
    public FoldedVehicle of(UUID vehicleId) {
        return vehicles.drives(vehicleId)
                .flatMap(drives -> kept.find(vehicleId, drives))
                .orElseGet(() -> FoldedVehicle.of(archive.counting(vehicleId)));
    }

    /**
     * One more drive counts, and is stored. Needs a transaction that holds the vehicle.
     *
     * @param before the vehicle as it stood until then
     */
    public void added(UUID vehicleId, FoldedVehicle before, ReadDrive drive, VehicleFaults faults) {
        Map<String, ConditionSet> sets = DriveConditions.agreed(faults.conditions());
        UUID drives = vehicles.otherDrives(vehicleId);
        if (before.conditions().equals(sets.keySet())) {
            kept.keep(
                    vehicleId,
                    drives,
                    before.and(drive, conditions.completed(drive, sets).record()));
        }
    }

    /** Which drives count, or what one of them tells, has changed. Needs a transaction that holds the vehicle. */
    public void changed(UUID vehicleId) {
        vehicles.otherDrives(vehicleId);
    }

    /** Judges all faults of the vehicle. Needs a transaction that holds it. */
    FoldedVehicle judged(UUID vehicleId, VehicleFaults faults) {
        List<FaultConditions> agreed = faults.conditions();
        Map<String, ConditionSet> sets = DriveConditions.agreed(agreed);
        FoldedVehicle before = of(vehicleId);
        FoldedVehicle held =
                before.conditions().equals(sets.keySet()) ? before : heldAgainst(vehicleId, before, agreed);
        FoldedVehicle judged = held.judged(faults.cases(), verification);
        vehicles.drives(vehicleId).ifPresent(drives -> kept.keep(vehicleId, drives, judged));
        return judged;
    }

    private FoldedVehicle heldAgainst(UUID vehicleId, FoldedVehicle before, List<FaultConditions> agreed) {
        List<ReadDrive> drives = before.drives().read();
        conditions.complete(agreed, drives);
        return before.heldAgainst(
                DriveConditions.agreed(agreed).keySet(), conditions.applied(vehicleId, agreed, drives));
    }

    /**
     * A vehicle for whoever only reads.
     *
     * @param drives that count, with what came of the agreed conditions, the earliest start first
     * @param revisions of these drives on file, by their ids
     * @param verdicts of all its faults
     * @param alerts what the drives showed that was new when it showed, and that still stands
     */
    public record Reading(
            List<DriveRecord> drives, Map<UUID, Integer> revisions, List<FaultVerdict> verdicts, List<Alert> alerts) {}

    /** Judges and keeps nothing. */
    public Reading read(UUID vehicleId, VehicleFaults faults) {
        List<FaultCase> cases = faults.cases();
        List<FaultConditions> agreed = faults.conditions();
        FoldedVehicle before = of(vehicleId);
        Set<String> keys = DriveConditions.agreed(agreed).keySet();
        FoldedVehicle held = before.conditions().equals(keys)
                ? before
                : before.heldAgainst(
                        keys,
                        conditions.applied(vehicleId, agreed, before.drives().read()));
        FoldedVehicle judged = held.judged(cases, verification);
        return new Reading(
                judged.applied(), judged.drives().revisions(), judged.verdicts(cases), judged.standingAlerts());
    }
}
