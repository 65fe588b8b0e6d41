package dev.stayfixed.verification.held;

import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.obd.Answer;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.obd.TroubleCode;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.verification.RepairAttempt;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * Walks the drives since one repair and measures the stretch in which it held. A lamp that is on or a code ends it, whichever code it
 * is; where the codes were not cleared, what was left from before the repair only delays its beginning.
 */
public final class HeldStretch {

    private static final int DISTANCE_SINCE_CLEAR = 0x31;

    /** No car covers more between two clocks; a counter that stands higher was not set back by the clear. */
    private static final double FASTEST = 250;

    private static final int PENDING_OR_CONFIRMED = 0x0C;

    private final RepairAttempt repair;

    /** Codes that stood before the repair and were not cleared; they end nothing until they are seen to be gone. */
    private final Set<TroubleCode> left = new HashSet<>();

    /** Nothing shows yet which codes were left. */
    private boolean leftUnknown;

    private boolean lampLeft;

    private Optional<Instant> since = Optional.empty();
    private Optional<Instant> until = Optional.empty();
    private OptionalDouble kilometres = OptionalDouble.empty();
    private int starts;

    /** Driven, but not yet followed by a look at the lamp or the codes. */
    private double kilometresToCome;

    private boolean anyToCome;
    private int startsToCome;

    private HeldStretch(RepairAttempt repair) {
        this.repair = repair;
        boolean cleared = repair.codesCleared();
        Optional<Scan> known = cleared ? repair.scanAfter() : repair.scanAfter().or(repair::scanBefore);
        known.ifPresent(scan -> left.addAll(codes(scan)));
        leftUnknown = !cleared && known.filter(HeldStretch::showsCodes).isEmpty();
        lampLeft = known.flatMap(Scan::lamp).orElse(!cleared);
    }

    /**
     * Measures the stretch.
     *
     * @param drives of the vehicle, in any order; those before the repair, or after the next one, are left out
     */
    public static HeldSoFar of(RepairAttempt repair, Optional<Instant> nextRepair, List<DriveRecord> drives) {
        HeldStretch stretch = new HeldStretch(repair);
        List<DriveRecord> since = drives.stream()
                .filter(drive -> !drive.start().isBefore(repair.at()))
                .filter(drive ->
                        nextRepair.filter(next -> !drive.start().isBefore(next)).isEmpty())
                .sorted(Comparator.comparing(DriveRecord::start))
                .toList();
        for (DriveRecord drive : since) {
            Optional<HeldSoFar.Ended> ended = stretch.take(drive);
            if (ended.isPresent()) {
                return stretch.result(ended);
            }
        }
        return stretch.result(Optional.empty());
    }

    private Optional<HeldSoFar.Ended> take(DriveRecord drive) {
        Optional<Boolean> lamp = lamp(drive);
        if (lamp.orElse(false) && !lampLeft) {
            return ended(drive, Reason.of(HeldReason.LAMP_CAME));
        }
        lampLeft &= lamp.orElse(true);
        Set<TroubleCode> codes = codes(drive);
        boolean codesRead = drive.scans().stream().anyMatch(timed -> showsCodes(timed.scan()));
        if (leftUnknown && codesRead) {
            left.addAll(codes);
            leftUnknown = false;
        }
        Optional<TroubleCode> came = codes.stream()
                .filter(code -> left.stream().noneMatch(code::sameFaultAs))
                .min(Comparator.comparing(TroubleCode::text));
        if (came.isPresent()) {
            return ended(
                    drive,
                    Reason.of(HeldReason.CODE_CAME, Part.verbatim(came.get().text())));
        }
        left.removeIf(code -> codes.stream().noneMatch(code::sameFaultAs) && isGone(code, drive));
        boolean clean = !lampLeft && codes.isEmpty() && (lamp.isPresent() || codesRead);
        if (clean || since.isPresent() || repair.codesCleared()) {
            count(drive, clean);
        }
        return Optional.empty();
    }

    private void count(DriveRecord drive, boolean clean) {
        if (since.isEmpty()) {
            since = Optional.of(repair.codesCleared() ? repair.at() : drive.start());
        }
        startsToCome++;
        OptionalDouble driven = drive.summary().value(DriveQuantity.DISTANCE);
        kilometresToCome += driven.orElse(0);
        anyToCome |= driven.isPresent();
        if (!clean) {
            return;
        }
        until = Optional.of(drive.end().orElse(drive.start()));
        starts += startsToCome;
        startsToCome = 0;
        if (anyToCome) {
            kilometres = OptionalDouble.of(kilometres.orElse(0) + kilometresToCome);
            kilometresToCome = 0;
            anyToCome = false;
        }
        counted(drive).ifPresent(km -> kilometres = OptionalDouble.of(Math.max(km, kilometres.orElse(0))));
    }

    /** The car's own count since the clear, where the clear was at this repair or later. */
    private OptionalDouble counted(DriveRecord drive) {
        if (!repair.codesCleared()) {
            return OptionalDouble.empty();
        }
        double hours =
                Duration.between(repair.at(), drive.end().orElse(drive.start().plus(Duration.ofDays(1))))
                                .toMinutes()
                        / 60.0;
        return drive.scans().stream()
                .map(timed -> timed.scan().parameter(DISTANCE_SINCE_CLEAR))
                .filter(OptionalDouble::isPresent)
                .mapToDouble(OptionalDouble::getAsDouble)
                .filter(km -> km <= FASTEST * hours)
                .max();
    }

    private static boolean isGone(TroubleCode code, DriveRecord drive) {
        return drive.scans().stream().anyMatch(timed -> timed.scan().confirmed(code) == Scan.Presence.ABSENT);
    }

    private static Optional<HeldSoFar.Ended> ended(DriveRecord drive, Reason reason) {
        return Optional.of(new HeldSoFar.Ended(drive.start(), drive.id(), reason));
    }

    /** On, if the driver or any scan of the drive says so. */
    private static Optional<Boolean> lamp(DriveRecord drive) {
        Set<Boolean> said = new HashSet<>();
        drive.summary().milOn().ifPresent(said::add);
        drive.scans().forEach(timed -> timed.scan().lamp().ifPresent(said::add));
        return said.isEmpty() ? Optional.empty() : Optional.of(said.contains(true));
    }

    private static Set<TroubleCode> codes(DriveRecord drive) {
        Set<TroubleCode> codes = new HashSet<>();
        drive.scans().forEach(timed -> codes.addAll(codes(timed.scan())));
        return codes;
    }

    /** Pending or confirmed; a permanent code alone is one that waits for its monitor. */
    private static Set<TroubleCode> codes(Scan scan) {
        Set<TroubleCode> codes = new HashSet<>();
        for (Scan.Heard heard : scan.heard()) {
            if (heard.answer() instanceof Answer.CodeList list && list.kind() != Answer.CodeList.Kind.PERMANENT) {
                codes.addAll(list.codes());
            } else if (heard.answer() instanceof Answer.CodeStatuses statuses) {
                statuses.statuses().forEach((code, status) -> {
                    if ((status.value() & PENDING_OR_CONFIRMED) != 0) {
                        codes.add(code);
                    }
                });
            }
        }
        return codes;
    }

    private static boolean showsCodes(Scan scan) {
        return scan.heard().stream()
                .anyMatch(heard -> (heard.answer() instanceof Answer.CodeList list
                                && list.kind() != Answer.CodeList.Kind.PERMANENT)
                        || (heard.answer() instanceof Answer.CodeStatuses statuses
                                && (statuses.availability() & PENDING_OR_CONFIRMED) != 0
                                && statuses.requestedMask().isPresent()));
    }

    private HeldSoFar result(Optional<HeldSoFar.Ended> ended) {
        boolean seen = until.isPresent();
        Optional<Instant> from = seen ? since : Optional.empty();
        long days = seen
                ? Math.max(
                        0,
                        Duration.between(since.orElseThrow(), until.orElseThrow())
                                .toDays())
                : 0;
        return new HeldSoFar(from, until, kilometres, starts, days, ended);
    }
}
