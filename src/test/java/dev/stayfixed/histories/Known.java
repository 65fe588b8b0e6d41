package dev.stayfixed.histories;

import dev.stayfixed.histories.Answer.Bit;
import dev.stayfixed.histories.Answer.InUse;
import dev.stayfixed.histories.Answer.Listing;
import dev.stayfixed.histories.Answer.SinceClear;
import dev.stayfixed.histories.Answer.TestValue;
import dev.stayfixed.histories.Answer.Vin;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;

/** What was last read of everything that is held against the next reading: counters, readiness, results, number of the vehicle. */
final class Known {

    static final int KM_SINCE_CLEAR = 0x31;
    static final int WARM_UPS_SINCE_CLEAR = 0x30;
    static final int MINUTES_SINCE_CLEAR = 0x4E;
    static final int ODOMETER = 0xA6;

    private static final int COUNTERS_HOLD_AT = 65_535;
    private static final int WRAPS_FROM = 65_000;
    private static final double ROUNDING_KM = 2;

    private final Map<Integer, Integer> counters = new HashMap<>();
    private Optional<int[]> odometerAndKm = Optional.empty();
    private final Map<String, SinceClear> readiness = new HashMap<>();
    private Optional<Integer> status = Optional.empty();
    private boolean confirmedListed;
    private Optional<InUse> inUse = Optional.empty();
    private Optional<TestValue> testValue = Optional.empty();
    private Optional<String> vin = Optional.empty();

    /** Assumption 15: the sign that this reading is of another vehicle or unit. */
    Optional<String> foreign(Reading reading) {
        Optional<String> number = reading.first(Vin.class).map(Vin::number);
        if (number.isPresent() && vin.isPresent() && !number.equals(vin)) {
            return Optional.of("another VIN");
        }
        OptionalInt odometer = reading.counter(ODOMETER);
        if (odometer.isPresent() && odometer.getAsInt() < counters.getOrDefault(ODOMETER, 0)) {
            return Optional.of("the odometer ran back");
        }
        Optional<InUse> now = reading.first(InUse.class);
        if (now.isEmpty() || inUse.isEmpty()) {
            return Optional.empty();
        }
        if (now.get().ignitionCycles() < inUse.get().ignitionCycles()
                && inUse.get().ignitionCycles() < WRAPS_FROM) {
            return Optional.of("the ignition counter ran back");
        }
        // One more than the cycles that began: the cycle in which it was last read may have been counted only after
        // that.
        return numeratorGrowth(reading).orElse(0) > ignitionGrowth(reading).orElse(0) + 1
                ? Optional.of("the numerator grew by more than the ignition counter")
                : Optional.empty();
    }

    /** Assumption 9: the sign that codes were cleared since what is known. */
    Optional<String> cleared(Reading reading, Owner owner) {
        for (int pid : new int[] {KM_SINCE_CLEAR, WARM_UPS_SINCE_CLEAR, MINUTES_SINCE_CLEAR}) {
            OptionalInt now = reading.counter(pid);
            if (now.isPresent() && now.getAsInt() < counters.getOrDefault(pid, 0)) {
                return Optional.of("$%02X went down from %d to %d".formatted(pid, counters.get(pid), now.getAsInt()));
            }
        }
        if (lags(reading)) {
            return Optional.of("km since the clear grew less than the odometer");
        }
        if (readiness(reading).anyMatch(this::fellBack)) {
            return Optional.of("readiness fell back");
        }
        Optional<Integer> now = owner.status(reading);
        if (now.isPresent() && status.isPresent()) {
            boolean completedLost = (status.get() & 0x10) == 0 && (now.get() & 0x10) != 0;
            boolean failedLost = (status.get() & 0x20) != 0 && (now.get() & 0x20) == 0;
            if (completedLost || failedLost) {
                return Optional.of("the status fell back from %02X to %02X".formatted(status.get(), now.get()));
            }
        }
        boolean permanentAlone = owner.stands(Listing.PERMANENT, reading).orElse(false)
                && !owner.stands(Listing.CONFIRMED, reading).orElse(true);
        return permanentAlone && confirmedListed
                ? Optional.of("a permanent code beside an empty list that had the code")
                : Optional.empty();
    }

    /** Of each unit that can be told from the others. */
    private static Stream<SinceClear> readiness(Reading reading) {
        return reading.headers() || reading.all(SinceClear.class).count() == 1
                ? reading.all(SinceClear.class)
                : Stream.empty();
    }

    private boolean fellBack(SinceClear now) {
        SinceClear before = readiness.get(now.unit());
        return before != null
                && ((before.bit() == Bit.COMPLETE && now.bit() == Bit.INCOMPLETE)
                        || (before.others() && !now.others()));
    }

    private boolean lags(Reading reading) {
        OptionalInt odometer = reading.counter(ODOMETER);
        OptionalInt km = reading.counter(KM_SINCE_CLEAR);
        if (odometer.isEmpty() || km.isEmpty() || odometerAndKm.isEmpty() || km.getAsInt() >= COUNTERS_HOLD_AT) {
            return false;
        }
        double driven = (odometer.getAsInt() - odometerAndKm.get()[0]) / 10.0;
        return driven - (km.getAsInt() - odometerAndKm.get()[1]) > ROUNDING_KM;
    }

    OptionalInt ignitionGrowth(Reading reading) {
        Optional<InUse> now = reading.first(InUse.class);
        if (now.isEmpty() || inUse.isEmpty()) {
            return OptionalInt.empty();
        }
        return OptionalInt.of((now.get().ignitionCycles() - inUse.get().ignitionCycles()) & 0xFFFF);
    }

    OptionalInt numeratorGrowth(Reading reading) {
        Optional<InUse> now = reading.first(InUse.class);
        return now.isEmpty() || inUse.isEmpty()
                ? OptionalInt.empty()
                : OptionalInt.of(now.get().numerator() - inUse.get().numerator());
    }

    /** Assumption 13: a value other than the one known; nothing where none is known. */
    Optional<TestValue> newResult(Reading reading) {
        return reading.first(TestValue.class)
                .filter(now -> !now.isNone())
                .filter(now -> testValue.isPresent() && !testValue.get().equals(now));
    }

    void cleared() {
        counters.keySet().removeIf(pid -> pid != ODOMETER);
        odometerAndKm = Optional.empty();
        readiness.clear();
        status = Optional.empty();
        confirmedListed = false;
        testValue = Optional.of(new TestValue(Watched.ENGINE, 0, 0, 0));
    }

    /** Cleared on the spot where this was read: from there the km since the clear grow with the odometer. */
    void clearedAtOdometerOf(Reading reading) {
        reading.counter(ODOMETER).ifPresent(odometer -> odometerAndKm = Optional.of(new int[] {odometer, 0}));
    }

    void learn(Reading reading, Owner owner) {
        reading.all(Answer.Counter.class).forEach(c -> counters.put(c.pid(), c.value()));
        OptionalInt odometer = reading.counter(ODOMETER);
        OptionalInt km = reading.counter(KM_SINCE_CLEAR);
        if (odometer.isPresent() && km.isPresent()) {
            odometerAndKm = Optional.of(new int[] {odometer.getAsInt(), km.getAsInt()});
        }
        readiness(reading).forEach(now -> readiness.put(now.unit(), now));
        status = owner.status(reading).or(() -> status);
        confirmedListed = owner.stands(Listing.CONFIRMED, reading).orElse(confirmedListed);
        inUse = reading.first(InUse.class).or(() -> inUse);
        testValue = reading.first(TestValue.class).or(() -> testValue);
        vin = vin.or(() -> reading.first(Vin.class).map(Vin::number));
    }
}
