package dev.stayfixed.judging;

import dev.stayfixed.archive.ReadDrive;
import dev.stayfixed.drive.DriveRecord;
import java.time.Instant;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** The drives of a vehicle that count, the earliest start first, with what is asked of all of them again and again. */
public final class DrivesInOrder {

    private final List<KnownDrive> known;
    private final List<DriveRecord> records;
    private @Nullable Map<String, Instant> starts;

    DrivesInOrder(List<KnownDrive> known) {
        this.known = known;
        this.records = known.stream().map(drive -> drive.read().record()).toList();
    }

    public List<DriveRecord> records() {
        return records;
    }

    public List<KnownDrive> known() {
        return known;
    }

    List<ReadDrive> read() {
        return known.stream().map(KnownDrive::read).toList();
    }

    /** By which submission each is judged, by its id. */
    Map<UUID, Integer> revisions() {
        return known.stream().map(KnownDrive::read).collect(Collectors.toMap(ReadDrive::driveId, ReadDrive::revision));
    }

    /** When one of them began; empty where it is none of them. */
    public Optional<Instant> start(String driveId) {
        if (!records.isEmpty() && records.get(records.size() - 1).id().equals(driveId)) {
            return Optional.of(records.get(records.size() - 1).start());
        }
        return Optional.ofNullable(starts().get(driveId));
    }

    /** When each began, by its id; made when somebody asks. Two threads may make it twice, and alike. */
    Map<String, Instant> starts() {
        Map<String, Instant> made = starts;
        if (made == null) {
            Map<String, Instant> found = new HashMap<>();
            records.forEach(drive -> found.put(drive.id(), drive.start()));
            made = Collections.unmodifiableMap(found);
            starts = made;
        }
        return made;
    }

    long weight() {
        long weight = 0;
        for (KnownDrive drive : known) {
            weight += drive.weight();
        }
        return weight;
    }

    /** Whether another one began after this one. */
    public boolean isLate(String driveId) {
        Optional<Instant> start = start(driveId);
        return start.isPresent() && records.get(records.size() - 1).start().isAfter(start.get());
    }

    /** What the drives that began in this time add up to, both ends included; km. */
    public double driven(Instant from, Instant until) {
        double km = 0;
        for (KnownDrive drive : known) {
            km += isBetween(drive, from, until) ? drive.km() : 0;
        }
        return km;
    }

    /** The most that a scan in or at the end of one of these drives says was driven since codes were cleared; km. */
    public double drivenSinceClear(Instant from, Instant until) {
        double km = 0;
        for (KnownDrive drive : known) {
            km = Math.max(km, isBetween(drive, from, until) ? drive.kmSinceClear() : 0);
        }
        return km;
    }

    private static boolean isBetween(KnownDrive drive, Instant from, Instant until) {
        Instant start = drive.read().record().start();
        return !start.isBefore(from) && !start.isAfter(until);
    }
}
