package dev.stayfixed.verification;

import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.obd.InUseCounters;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.obd.Vin;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

/** Tells a record of another car, or of another control unit, from those that belong together. Used once, by one thread. */
final class Identity {

    /** What a record says of itself. */
    record Says(Kind kind, Optional<Reason> reason) {

        enum Kind {
            OWN,
            FOREIGN,
            /** The control unit was exchanged or reprogrammed: a second record goes on where a strange one had begun. */
            REPLACED
        }

        private static final Says OWN = new Says(Kind.OWN, Optional.empty());

        boolean isForeign() {
            return kind == Kind.FOREIGN;
        }

        boolean isReplaced() {
            return kind == Kind.REPLACED;
        }
    }

    /** A new series of ignition cycles is believed where the next record lies this close behind. Common practice, no source. */
    private static final int ONE_SERIES = 200;

    /** A stated start may be in another time zone, and a drive without a stated end may have been long. Likewise. */
    private static final Duration CLOCKS = Duration.ofHours(12);

    private final Owner owner;
    private Optional<Vin> vin = Optional.empty();
    private Optional<InUseCounters> strange = Optional.empty();
    private Optional<Instant> lastRead = Optional.empty();

    Identity(Owner owner) {
        this.owner = owner;
    }

    Identity(Identity before, Owner owner) {
        this(owner);
        vin = before.vin;
        strange = before.strange;
        lastRead = before.lastRead;
    }

    /** A scan in the workshop: the car that stands there is the one. */
    void learn(Scan scan, Instant at) {
        vin = vin.or(scan::vin);
        lastRead = Optional.of(at);
    }

    Says of(DriveRecord drive, Knowledge known) {
        Optional<Vin> number = vin.or(() -> vinIn(drive));
        Says said = drive.scans().stream()
                .map(timed -> of(timed.scan(), number, known, DrivingCycles.until(drive)))
                .filter(says -> says.kind() != Says.Kind.OWN)
                .findFirst()
                .orElse(Says.OWN);
        if (!said.isForeign() && !drive.scans().isEmpty()) {
            lastRead = Optional.of(DrivingCycles.until(drive));
            vin = number;
        }
        return said;
    }

    private static Optional<Vin> vinIn(DriveRecord drive) {
        return drive.scans().stream()
                .flatMap(timed -> timed.scan().vin().stream())
                .findFirst();
    }

    private Says of(Scan scan, Optional<Vin> number, Knowledge known, Instant until) {
        Optional<Reason> foreign = notThisCar(scan, number, known, until);
        if (foreign.isPresent()) {
            return new Says(Says.Kind.FOREIGN, foreign);
        }
        Scan own = owner.in(scan);
        return known.counters()
                .ignitionsBackIn(owner.counters(scan))
                .or(() -> outran(known, own))
                .map(reason -> strange(reason, own))
                .orElse(Says.OWN);
    }

    private Optional<Reason> notThisCar(Scan scan, Optional<Vin> number, Knowledge known, Instant until) {
        Optional<Vin> read = scan.vin();
        if (read.isPresent() && number.isPresent() && !read.equals(number)) {
            return Optional.of(Reason.of(
                    StepReason.OTHER_VIN,
                    Part.verbatim(read.get().text()),
                    Part.verbatim(number.get().text())));
        }
        Counters now = owner.counters(scan);
        return known.counters()
                .odometerBackIn(now)
                .or(() -> lastRead.flatMap(last -> known.counters()
                        .outgrownBy(now, Duration.between(last, until).plus(CLOCKS))));
    }

    private static Optional<Reason> outran(Knowledge known, Scan own) {
        return known.inUse()
                .flatMap(was -> own.inUse().flatMap(was::outran))
                .map(name -> Reason.of(StepReason.NUMERATOR_OUTRAN, Part.verbatim(name)));
    }

    private Says strange(Reason reason, Scan own) {
        Optional<InUseCounters> before = strange;
        strange = own.inUse();
        boolean goesOn = before.isPresent()
                && strange.isPresent()
                && before.get().ignitionCyclesTo(strange.get()).orElse(ONE_SERIES + 1) <= ONE_SERIES
                && before.get().outran(strange.get()).isEmpty();
        return goesOn
                ? new Says(Says.Kind.REPLACED, Optional.of(Reason.of(StepReason.GOES_ON, reason)))
                : new Says(Says.Kind.FOREIGN, Optional.of(reason));
    }
}
