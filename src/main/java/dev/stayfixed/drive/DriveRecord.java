package dev.stayfixed.drive;

import dev.stayfixed.obd.Scan;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One recorded driving cycle: from engine start to engine shut-off (13 CCR 1968.2 (c)).
 *
 * @param id the caller's own name for it; only equality and order matter
 * @param clearedBefore somebody states that codes were cleared or the battery was disconnected before this drive
 * @param scans in the order in which they were taken
 * @param conditions what the recorded signals made of each set of conditions that was looked for, by the set's key
 */
public record DriveRecord(
        String id,
        Instant start,
        Optional<Instant> end,
        DriveSummary summary,
        boolean clearedBefore,
        List<TimedScan> scans,
        Map<String, Finding> conditions) {

    /** When in the drive a scan was taken. */
    public enum Moment {
        /** Before the engine was started, or right at its start: says where the drive began. */
        BEFORE,
        /** In the drive or at its end, before the key was turned off. */
        AFTER
    }

    /** A scan and its moment. */
    public record TimedScan(Moment moment, Scan scan) {}

    public DriveRecord {
        scans = List.copyOf(scans);
        conditions = Map.copyOf(conditions);
        if (end.isPresent() && end.get().isBefore(start)) {
            throw new IllegalArgumentException(
                    "end: found " + end.get() + ", expected a time after the start " + start);
        }
    }

    /** A drive of which no signals were recorded. */
    public DriveRecord(
            String id,
            Instant start,
            Optional<Instant> end,
            DriveSummary summary,
            boolean clearedBefore,
            List<TimedScan> scans) {
        this(id, start, end, summary, clearedBefore, scans, Map.of());
    }

    /** The same drive with what its recorded signals made of conditions. */
    public DriveRecord with(Map<String, Finding> found) {
        return new DriveRecord(id, start, end, summary, clearedBefore, scans, found);
    }

    public List<Scan> scans(Moment moment) {
        return scans.stream()
                .filter(s -> s.moment() == moment)
                .map(TimedScan::scan)
                .toList();
    }
}
