package dev.stayfixed.judging;

import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.drive.DriveRecord.Moment;
import dev.stayfixed.jobs.FaultCase;
import dev.stayfixed.obd.Answer;
import dev.stayfixed.obd.Readiness;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.obd.StatusByte;
import dev.stayfixed.obd.TroubleCode;
import dev.stayfixed.verification.RepairAttempt;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Finds what drives show for the first time. Everything that was read of the vehicle is gone through in the order of time: the scans
 * with which jobs were opened, those around repairs, and the drives.
 */
public final class Alerts {

    /** ISO 14229-1 status: failed now, in this cycle, pending, confirmed or failed since the clear. The rest says "not tested". */
    private static final int SEEN_TO_FAIL = 0x2F;

    private final List<TroubleCode> known = new ArrayList<>();
    private final List<Alert> found = new ArrayList<>();
    private final Map<TroubleCode, Alert> unrefuted = new LinkedHashMap<>();
    private Optional<Boolean> lamp = Optional.empty();
    private Optional<Alert> lastLamp = Optional.empty();

    private Instant until = Instant.MIN;

    private Alerts() {}

    private Alerts(Alerts before) {
        known.addAll(before.known);
        found.addAll(before.found);
        unrefuted.putAll(before.unrefuted);
        lamp = before.lamp;
        lastLamp = before.lastLamp;
        until = before.until;
    }

    /** Something that was read, or done, at a moment. */
    private record Reading(Instant at, int rank, Optional<DriveRecord> drive, Optional<Scan> scan) {

        private static final Comparator<Reading> IN_TIME =
                Comparator.comparing(Reading::at).thenComparing(Reading::rank);

        static Reading of(DriveRecord drive) {
            return new Reading(drive.start(), 3, Optional.of(drive), Optional.empty());
        }

        /** No scan stands for a clear. */
        static Reading of(Instant at, int rank, Optional<Scan> scan) {
            return new Reading(at, rank, Optional.empty(), scan);
        }
    }

    /**
     * Everything that was new when it showed, the earliest first.
     *
     * @param drives of the vehicle, in any order
     * @param faults of all jobs of the vehicle
     */
    public static List<Alert> of(List<DriveRecord> drives, List<FaultCase> faults) {
        return goneThrough(drives, faults).found;
    }

    /** Of these what still stands: the lamp was not seen off since, the code not seen gone. */
    List<Alert> standing() {
        return Stream.concat(
                        lastLamp.filter(alert -> lamp.orElse(false)).stream(),
                        unrefuted.values().stream().distinct())
                .sorted(Comparator.comparing(Alert::at).thenComparing(Alert::kind))
                .toList();
    }

    /** Everything that was new when it showed, the earliest first. */
    List<Alert> found() {
        return List.copyOf(found);
    }

    /** The same with a drive that began after all else; empty where this one did not. */
    Optional<Alerts> and(DriveRecord drive) {
        if (!drive.start().isAfter(until)) {
            return Optional.empty();
        }
        Alerts more = new Alerts(this);
        more.read(Reading.of(drive));
        return Optional.of(more);
    }

    /** Likewise {@link #of}, to go on from. */
    static Alerts goneThrough(List<DriveRecord> drives, List<FaultCase> faults) {
        Alerts alerts = new Alerts();
        faults.forEach(fault -> alerts.known.add(fault.fault().code()));
        Stream.concat(
                        drives.stream().map(Reading::of),
                        Stream.concat(
                                faults.stream().map(FaultCase::job).distinct().flatMap(Alerts::ofOpening),
                                faults.stream()
                                        .flatMap(fault -> fault.repairs().stream())
                                        .flatMap(Alerts::ofRepair)))
                .sorted(Reading.IN_TIME)
                .forEach(alerts::read);
        return alerts;
    }

    private static Stream<Reading> ofOpening(FaultCase.OfJob job) {
        return job.scan().isPresent() ? Stream.of(Reading.of(job.openedAt(), 0, job.scan())) : Stream.empty();
    }

    private static Stream<Reading> ofRepair(RepairAttempt repair) {
        List<Reading> readings = new ArrayList<>();
        if (repair.scanBefore().isPresent()) {
            readings.add(Reading.of(repair.at(), 0, repair.scanBefore()));
        }
        if (repair.codesCleared()) {
            readings.add(Reading.of(repair.at(), 1, Optional.empty()));
        }
        if (repair.scanAfter().isPresent()) {
            readings.add(Reading.of(repair.at(), 2, repair.scanAfter()));
        }
        return readings.stream();
    }

    private void read(Reading reading) {
        until = reading.at();
        if (reading.drive().isPresent()) {
            read(reading.drive().get());
        } else if (reading.scan().isPresent()) {
            Scan scan = reading.scan().get();
            lamp = lamp(scan).or(() -> lamp);
            listed(scan).forEach(this::learn);
        } else {
            lamp = Optional.of(false);
        }
    }

    private void read(DriveRecord drive) {
        List<Scan> scans = Stream.of(Moment.BEFORE, Moment.AFTER)
                .flatMap(moment -> drive.scans(moment).stream())
                .toList();
        if (drive.clearedBefore()) {
            lamp = Optional.of(false);
        }
        lampOf(drive, scans);
        List<TroubleCode> fresh = new ArrayList<>();
        for (Scan scan : scans) {
            unrefuted.keySet().removeIf(code -> isGone(scan, code));
            listed(scan).filter(this::learn).forEach(fresh::add);
        }
        if (!fresh.isEmpty()) {
            Alert alert = new Alert(drive.id(), drive.start(), Alert.Kind.NEW_CODE, List.copyOf(fresh));
            found.add(alert);
            fresh.forEach(code -> unrefuted.put(code, alert));
        }
    }

    /** On at any time in the drive is news, where it was not known to be on; at its end it is as whoever looked last saw it. */
    private void lampOf(DriveRecord drive, List<Scan> scans) {
        List<Boolean> shown =
                scans.stream().flatMap(scan -> lamp(scan).stream()).toList();
        Optional<Boolean> told = drive.summary().milOn();
        boolean on = shown.contains(true) || told.orElse(false);
        if (on && !lamp.orElse(false)) {
            Alert alert = new Alert(drive.id(), drive.start(), Alert.Kind.LAMP_ON, List.of());
            found.add(alert);
            lastLamp = Optional.of(alert);
        }
        if (!shown.isEmpty() || told.isPresent()) {
            lamp = Optional.of(told.orElse(false) || (!shown.isEmpty() && shown.get(shown.size() - 1)));
        }
    }

    /** Whether the lamp is commanded on, where the scan says so (SAE J1979 PID $01, bit 7); any control unit can light it. */
    private static Optional<Boolean> lamp(Scan scan) {
        Optional<Boolean> commanded = scan.sinceClear().map(Readiness::milCommanded);
        return commanded.isEmpty() && scan.codesCleared() ? Optional.of(false) : commanded;
    }

    private boolean learn(TroubleCode code) {
        if (known.stream().anyMatch(code::sameFaultAs)) {
            return false;
        }
        return known.add(code);
    }

    private static boolean isGone(Scan scan, TroubleCode code) {
        return scan.pending(code) == Scan.Presence.ABSENT && scan.confirmed(code) == Scan.Presence.ABSENT;
    }

    private static Stream<TroubleCode> listed(Scan scan) {
        return scan.heard().stream().map(Scan.Heard::answer).flatMap(Alerts::listed);
    }

    private static Stream<TroubleCode> listed(Answer answer) {
        if (answer instanceof Answer.CodeList list) {
            return list.codes().stream();
        }
        return answer instanceof Answer.CodeStatuses statuses
                ? statuses.statuses().entrySet().stream()
                        .filter(entry -> wasSeenToFail(entry.getValue()))
                        .map(Map.Entry::getKey)
                : Stream.empty();
    }

    private static boolean wasSeenToFail(StatusByte status) {
        return (status.value() & SEEN_TO_FAIL) != 0;
    }
}
