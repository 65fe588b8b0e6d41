package dev.stayfixed.judging;

import dev.stayfixed.archive.Archive;
import dev.stayfixed.archive.ReadDrive;
import dev.stayfixed.drive.Finding;
import dev.stayfixed.drive.condition.ConditionReport;
import dev.stayfixed.drive.condition.ConditionSet;
import dev.stayfixed.drive.condition.SummaryProof;
import dev.stayfixed.drive.condition.TypicalCondition;
import dev.stayfixed.drive.condition.TypicalConditions;
import dev.stayfixed.jobs.AgreedConditions;
import dev.stayfixed.jobs.ConditionsOfFaults;
import dev.stayfixed.jobs.FaultConditions;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;

/** Holds recorded drives against the conditions of the vehicle's faults; what was computed once is kept. */
@Component
public class DriveConditions {

    private final ConditionsOfFaults conditions;
    private final Archive archive;

    DriveConditions(ConditionsOfFaults conditions, Archive archive) {
        this.conditions = conditions;
        this.archive = archive;
    }

    /** Every set that anybody may ask for: those agreed, and the typical ones where none were. */
    public Map<String, ConditionSet> setsOf(UUID vehicleId) {
        Map<String, ConditionSet> sets = new LinkedHashMap<>();
        for (FaultConditions fault : conditions.ofVehicle(vehicleId)) {
            shown(fault).forEach(set -> sets.put(AgreedConditions.key(set), set));
        }
        return sets;
    }

    private static List<ConditionSet> shown(FaultConditions fault) {
        return fault.agreed()
                .map(agreed -> List.of(agreed.set()))
                .orElseGet(() -> TypicalConditions.of(fault.code(), fault.group()).stream()
                        .map(TypicalCondition::set)
                        .toList());
    }

    static Map<String, ConditionSet> agreed(List<FaultConditions> faults) {
        return faults.stream()
                .flatMap(fault -> fault.agreed().stream())
                .map(AgreedConditions::set)
                .collect(Collectors.toMap(AgreedConditions::key, set -> set, (one, same) -> one));
    }

    /** Computes what the agreed conditions lack. Needs a transaction that holds the vehicle. */
    void complete(List<FaultConditions> faults, List<ReadDrive> drives) {
        Map<String, ConditionSet> sets = agreed(faults);
        drives.stream().filter(ReadDrive::isScoredLog).forEach(drive -> archive.keptReports(drive, sets));
    }

    /** One drive with what it makes of agreed conditions. Needs a transaction that holds the vehicle. */
    ReadDrive completed(ReadDrive drive, Map<String, ConditionSet> sets) {
        return sets.isEmpty()
                ? drive
                : applied(drive, sets, drive.isScoredLog() ? archive.keptReports(drive, sets) : Map.of());
    }

    /** The drives of a vehicle, each with what is known of the conditions that were agreed for its faults. */
    List<ReadDrive> applied(UUID vehicleId, List<FaultConditions> faults, List<ReadDrive> drives) {
        Map<String, ConditionSet> sets = agreed(faults);
        if (sets.isEmpty()) {
            return drives;
        }
        Map<UUID, Map<String, ConditionReport>> known =
                drives.stream().anyMatch(ReadDrive::isScoredLog) ? archive.keptReports(vehicleId, sets) : Map.of();
        return drives.stream()
                .map(drive -> applied(drive, sets, known.getOrDefault(drive.driveId(), Map.of())))
                .toList();
    }

    private static ReadDrive applied(
            ReadDrive drive, Map<String, ConditionSet> sets, Map<String, ConditionReport> known) {
        if (drive.log().isEmpty()) {
            return drive.with(bySummary(drive, sets));
        }
        if (!drive.isScoredLog()) {
            return drive;
        }
        Map<String, Finding> findings = new HashMap<>();
        known.forEach((key, report) ->
                findings.put(key, report.with(drive.record().summary()).overall()));
        return drive.with(findings);
    }

    /** Without a log only what the few numbers of the drive show for certain is said; the rest stays unsaid. */
    private static Map<String, Finding> bySummary(ReadDrive drive, Map<String, ConditionSet> sets) {
        Map<String, Finding> findings = new HashMap<>();
        sets.forEach((key, set) ->
                SummaryProof.of(set, drive.record().summary()).ifPresent(finding -> findings.put(key, finding)));
        return findings;
    }

    /** What a drive made of the conditions of each fault of its vehicle; nothing for a drive without a log that counts. */
    public List<FaultReport> of(UUID vehicleId, ReadDrive drive) {
        if (!drive.isScoredLog()) {
            return List.of();
        }
        Map<String, ConditionReport> found = archive.reports(drive, setsOf(vehicleId));
        return conditions.ofVehicle(vehicleId).stream()
                .flatMap(fault -> shown(fault).stream()
                        .filter(set -> found.containsKey(AgreedConditions.key(set)))
                        .map(set -> new FaultReport(
                                fault,
                                Objects.requireNonNull(found.get(AgreedConditions.key(set)))
                                        .with(drive.record().summary()))))
                .toList();
    }
}
