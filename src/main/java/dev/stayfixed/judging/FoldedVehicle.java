package dev.stayfixed.judging;

import dev.stayfixed.archive.ReadDrive;
import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.jobs.FaultCase;
import dev.stayfixed.verification.Verification;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/**
 * The drives of a vehicle that count, and what was made of them. Never changes, so any thread may keep it.
 *
 * @param conditions the keys of the sets of conditions that the drives were held against
 * @param applied the drives with what came of that, the earliest start first
 * @param faults those that were judged, by id
 * @param alerts empty where nobody has gone through them
 */
public record FoldedVehicle(
        DrivesInOrder drives,
        Set<String> conditions,
        List<DriveRecord> applied,
        Map<UUID, FoldedFault> faults,
        Optional<FoldedAlerts> alerts) {

    private static final int A_FOLDED_DRIVE = 600;

    private static final Comparator<ReadDrive> BY_START = Comparator.comparing(
                    (ReadDrive drive) -> drive.record().start())
            .thenComparing(drive -> drive.record().id());

    /** @param drives in any order */
    static FoldedVehicle of(List<ReadDrive> drives) {
        DrivesInOrder inOrder = new DrivesInOrder(
                drives.stream().sorted(BY_START).map(KnownDrive::of).toList());
        return new FoldedVehicle(inOrder, Set.of(), inOrder.records(), Map.of(), Optional.empty());
    }

    /**
     * The same with one more drive.
     *
     * @param held the drive with what came of the conditions
     */
    FoldedVehicle and(ReadDrive drive, DriveRecord held) {
        List<KnownDrive> known = new ArrayList<>(drives.known());
        int place = known.size();
        while (place > 0 && BY_START.compare(known.get(place - 1).read(), drive) > 0) {
            place--;
        }
        known.add(place, KnownDrive.of(drive));
        List<DriveRecord> more = new ArrayList<>(applied);
        more.add(place, held);
        Map<UUID, FoldedFault> folded = new HashMap<>();
        faults.forEach((id, fault) -> folded.put(id, fault.and(held)));
        return new FoldedVehicle(
                new DrivesInOrder(known), conditions, more, folded, alerts.flatMap(gone -> gone.and(drive.record())));
    }

    /** The same drives, held against other conditions. */
    FoldedVehicle heldAgainst(Set<String> keys, List<ReadDrive> held) {
        return new FoldedVehicle(
                drives, keys, held.stream().map(ReadDrive::record).toList(), Map.of(), alerts);
    }

    /** The same with every fault judged, and the alerts gone through. */
    FoldedVehicle judged(List<FaultCase> cases, Verification verification) {
        Map<UUID, FoldedFault> judged = new HashMap<>();
        cases.forEach(fault -> judged.put(
                fault.faultId(),
                Optional.ofNullable(faults.get(fault.faultId()))
                        .filter(before -> before.isOf(fault))
                        .orElseGet(() -> FoldedFault.of(fault, applied, verification))));
        FoldedAlerts gone =
                alerts.filter(before -> before.isOf(cases)).orElseGet(() -> FoldedAlerts.of(cases, drives.records()));
        return new FoldedVehicle(drives, conditions, applied, judged, Optional.of(gone));
    }

    /** Of faults that were judged. */
    List<FaultVerdict> verdicts(List<FaultCase> cases) {
        return cases.stream()
                .map(fault -> new FaultVerdict(
                        fault,
                        Objects.requireNonNull(faults.get(fault.faultId()))
                                .fold()
                                .verdict(),
                        drives))
                .toList();
    }

    /** Everything that was new when it showed, the earliest first. */
    List<Alert> allAlerts() {
        return alerts.map(gone -> gone.alerts().found()).orElse(List.of());
    }

    /** Of these what still stands. */
    List<Alert> standingAlerts() {
        return alerts.map(gone -> gone.alerts().standing()).orElse(List.of());
    }

    /** How much of the heap it takes, roughly, in bytes. */
    long weight() {
        return drives.weight() + (long) A_FOLDED_DRIVE * faults.size() * applied.size();
    }
}
