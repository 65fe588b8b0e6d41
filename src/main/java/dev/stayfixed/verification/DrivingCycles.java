package dev.stayfixed.verification;

import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.drive.DriveRecord.Moment;
import dev.stayfixed.obd.Scan;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * Tells from the readings whether two records, one after the other, are of one driving cycle (13 CCR 1968.2 (c): from engine start to
 * engine shut-off and on to the next start). How somebody cut the submissions decides nothing.
 */
final class DrivingCycles {

    /** How two records that follow each other hang together. */
    enum Link {
        SAME,
        NEW,
        /** Nothing tells. */
        EITHER
    }

    private static final int ENGINE_SPEED = 0x0C;
    private static final int VEHICLE_SPEED = 0x0D;
    private static final int RUN_TIME = 0x1F;

    /** Clocks of a phone and of a car differ by so much at least. Common practice, no source. */
    private static final Duration CLOCKS = Duration.ofSeconds(30);

    /** Records that lie no further apart were cut from one. Common practice, no source. */
    private static final Duration ONE_CUT = Duration.ofSeconds(5);

    /** Two drives with a stated end and start are two from this break on: no recorder splits one drive for so long. Likewise. */
    private static final Duration TWO_STATED = Duration.ofHours(1);

    /** A single scan does not say when its drive began; two that lie this far apart are taken as two drives. Likewise. */
    private static final Duration TWO_SCANS = Duration.ofHours(6);

    private static final Duration A_DRIVE = Duration.ofMinutes(5);

    private DrivingCycles() {}

    static Link link(DriveRecord before, OptionalInt ignitionsBefore, DriveRecord now, OptionalInt ignitionsNow) {
        if (ignitionsBefore.isPresent() && ignitionsNow.isPresent()) {
            return ignitionsBefore.getAsInt() == ignitionsNow.getAsInt() ? Link.SAME : Link.NEW;
        }
        List<Scan> atStart = now.scans(Moment.BEFORE);
        if (atStart.stream().anyMatch(DrivingCycles::isAtKeyOn)) {
            return Link.NEW;
        }
        Optional<Instant> engineStart = engineStart(now);
        if (engineStart
                .filter(start -> start.plus(CLOCKS).isBefore(until(before)))
                .isPresent()) {
            return Link.SAME;
        }
        if (!atStart.isEmpty()) {
            boolean underWay = atStart.stream().anyMatch(scan -> showsEngine(scan) || showsAMonitorThatRan(scan));
            return underWay && engineStart.isEmpty() ? Link.EITHER : Link.NEW;
        }
        if (engineStart.isPresent()) {
            return Link.NEW;
        }
        return byTheClock(before, now);
    }

    /** Two scans of one record: a run time that began anew, or more ignition cycles, show a start between them. */
    static Link link(Scan earlier, Scan later) {
        OptionalInt from = ignitions(earlier);
        OptionalInt to = ignitions(later);
        if (from.isPresent() && to.isPresent()) {
            return to.getAsInt() > from.getAsInt() ? Link.NEW : Link.SAME;
        }
        OptionalDouble ran = earlier.parameter(RUN_TIME);
        OptionalDouble runs = later.parameter(RUN_TIME);
        boolean anew = ran.isPresent() && runs.isPresent() && runs.getAsDouble() < ran.getAsDouble();
        return anew && !isAtKeyOn(later) ? Link.EITHER : Link.SAME;
    }

    static Unrecorded unrecorded(Scan earlier, Scan later) {
        return countedBetween(earlier, later).orElse(Unrecorded.ANY);
    }

    /** The cycles between two scans beside the one of the later; empty where the ignition counter was not read in both. */
    static Optional<Unrecorded> countedBetween(Scan earlier, Scan later) {
        OptionalInt from = ignitions(earlier);
        OptionalInt to = ignitions(later);
        if (from.isEmpty() || to.isEmpty()) {
            return Optional.empty();
        }
        int room = to.getAsInt() - from.getAsInt() - 1;
        return Optional.of(Unrecorded.between(room, room));
    }

    private static OptionalInt ignitions(Scan scan) {
        return Counters.read(scan).ignitionCycles();
    }

    /** Before the engine is started no monitor is complete in the cycle: such a scan is of a cycle under way, a restart perhaps. */
    private static boolean showsAMonitorThatRan(Scan scan) {
        return scan.thisCycle()
                .filter(cycle ->
                        cycle.supported().stream().anyMatch(group -> !group.isContinuous() && cycle.isComplete(group)))
                .isPresent();
    }

    private static Link byTheClock(DriveRecord before, DriveRecord now) {
        Duration apart = Duration.between(until(before), now.start());
        if (apart.compareTo(ONE_CUT) <= 0) {
            return Link.SAME;
        }
        Duration two = isStated(before) && isStated(now) ? TWO_STATED : TWO_SCANS;
        return apart.compareTo(two) < 0 ? Link.EITHER : Link.NEW;
    }

    /** Somebody, or a log, says when it began and when it ended. */
    private static boolean isStated(DriveRecord drive) {
        return drive.end().filter(end -> end.isAfter(drive.start())).isPresent();
    }

    static Instant until(DriveRecord drive) {
        return drive.end()
                .orElseGet(() -> drive.start()
                        .plusSeconds(Math.round(
                                drive.summary().value(DriveQuantity.RUN_TIME).orElse(0))));
    }

    /** By the run time: of a scan before the drive, which may have been taken with the engine running, else of the last one. */
    private static Optional<Instant> engineStart(DriveRecord drive) {
        OptionalDouble atStart = runTime(drive.scans(Moment.BEFORE));
        OptionalDouble atEnd = runTime(drive.scans(Moment.AFTER));
        if (isAbove(atStart)) {
            return Optional.of(drive.start().minusSeconds(Math.round(atStart.getAsDouble())));
        }
        return atEnd.isPresent()
                ? Optional.of(until(drive).minusSeconds(Math.round(atEnd.getAsDouble())))
                : Optional.empty();
    }

    private static OptionalDouble runTime(List<Scan> scans) {
        return scans.stream()
                .map(scan -> scan.parameter(RUN_TIME))
                .filter(OptionalDouble::isPresent)
                .reduce((first, last) -> last)
                .orElse(OptionalDouble.empty());
    }

    /** The engine stands and has not run since key-on: what a scan then says of this cycle is not of the drive before it. */
    static boolean isAtKeyOn(Scan scan) {
        return isZero(scan.parameter(ENGINE_SPEED)) && isZero(scan.parameter(RUN_TIME));
    }

    /** Whether the engine ran at all in this record: without a start there is no driving cycle. */
    static boolean engineRan(DriveRecord drive) {
        if (List.of(DriveQuantity.RUN_TIME, DriveQuantity.DISTANCE, DriveQuantity.FAST_TIME, DriveQuantity.LONGEST_IDLE)
                        .stream()
                        .anyMatch(quantity -> isAbove(drive.summary().value(quantity)))
                || !drive.summary().operatingPoints().isEmpty()) {
            return true;
        }
        List<Scan> scans = drive.scans(Moment.AFTER);
        if (scans.stream().anyMatch(DrivingCycles::showsEngine)) {
            return true;
        }
        boolean stood = scans.stream().anyMatch(scan -> isZero(scan.parameter(ENGINE_SPEED)));
        boolean neverRan = !scans.isEmpty() && scans.stream().allMatch(DrivingCycles::isAtKeyOn);
        boolean longEnough = Duration.between(drive.start(), until(drive)).compareTo(A_DRIVE) >= 0;
        return longEnough || (!neverRan && !stood);
    }

    static boolean showsEngine(Scan scan) {
        return isAbove(scan.parameter(ENGINE_SPEED))
                || isAbove(scan.parameter(RUN_TIME))
                || isAbove(scan.parameter(VEHICLE_SPEED));
    }

    private static boolean isZero(OptionalDouble value) {
        return value.isPresent() && value.getAsDouble() == 0;
    }

    private static boolean isAbove(OptionalDouble value) {
        return value.isPresent() && value.getAsDouble() > 0;
    }
}
