package dev.stayfixed.histories;

import dev.stayfixed.histories.Answer.Bit;
import dev.stayfixed.histories.Answer.Extent;
import dev.stayfixed.histories.Answer.Listing;
import dev.stayfixed.histories.Answer.TestValue;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * One car with one fault, event by event: what its control units remember, and beside it what truly happened. It takes one course of
 * those that the rules leave a unit; its traits say which.
 */
final class Car {

    /** When a passed trip erases the pending code and counts towards the lamp (13 CCR 1968.2 (d)(2.2) leaves it to the maker). */
    enum Settles {
        WITH_THE_PASS,
        AT_KEY_OFF,
        AT_THE_NEXT_START
    }

    /**
     * @param otherCode another code of the same unit lights the lamp
     * @param showsBitAfterFailure PID $41 shows a group complete whose test failed
     */
    record Traits(
            Settles settles,
            boolean confirmsSooner,
            boolean storesPermanent,
            boolean otherCode,
            boolean listsUntested,
            boolean showsBitAfterFailure,
            boolean twoUnits,
            Broken broken) {}

    private static final String OTHER_CODE = "P0171";
    private static final String UNTESTED_CODE = "P0300";
    private static final int LOWEST = 100;
    private static final int HIGHEST = 400;

    final Watched fault;
    private final Traits traits;
    private final SplittableRandom random;
    private final String vin;

    // What the unit remembers of the fault.
    private boolean pending;
    private boolean confirmed;
    private boolean lamp;
    private int passesTowardsLampOut;
    private boolean permanent;
    private boolean cleared;
    private boolean completedSinceClear;
    private boolean failedSinceClear;
    private boolean ranInCycle;
    private boolean failedInCycle;
    private boolean lastTripFailed;
    private int failedTripsInARow;
    private boolean settled = true;
    private boolean pendingMustGo;
    private boolean otherCode;
    private boolean bitSinceClear;
    private boolean bitInCycle;
    private boolean othersComplete;
    private TestValue result = new TestValue(Watched.ENGINE, 180, LOWEST, HIGHEST);

    // Counters.
    private int ignitionCycles;
    private int numerator;
    private boolean counted;
    private double odometer;
    private double kmSinceClear;
    private double secondsSinceClear;
    private int warmUps;
    private int runTime;
    private boolean running;

    // The truth.
    private boolean repaired;
    private boolean tripRan;
    private boolean tripFailed;
    /** Of the failure that stored the pending code: some reading showed it. */
    private boolean failureIsKnown = true;

    private boolean readSinceFailure = true;
    private boolean vanished;
    private int passes;
    private int fails;
    private boolean confirmedSinceRepair;
    private boolean lastTripTrulyFailed;
    private boolean proven;

    Car(Watched fault, Traits traits, SplittableRandom random, String vin, int odometerKm) {
        this.fault = fault;
        this.traits = traits;
        this.random = random;
        this.vin = vin;
        this.odometer = odometerKm;
        this.otherCode = traits.otherCode();
        this.ignitionCycles = 200 + odometerKm / 100 + random.nextInt(50);
        this.numerator = ignitionCycles / 2;
        this.kmSinceClear = 300 + random.nextInt(3000);
        this.secondsSinceClear = kmSinceClear * 70;
        this.warmUps = 20 + random.nextInt(100);
        this.completedSinceClear = true;
        this.bitSinceClear = true;
        this.othersComplete = true;
    }

    // What happens.

    void start() {
        settle();
        settled = true;
        pendingGoes();
        running = true;
        ranInCycle = false;
        failedInCycle = false;
        bitInCycle = false;
        counted = false;
        tripRan = false;
        tripFailed = false;
        runTime = 0;
        ignitionCycles++;
        if (traits.broken() == Broken.PENDING_LOST && random.nextInt(3) == 0) {
            pending = false;
            lastTripFailed = false;
        }
    }

    void run(int seconds) {
        runTime += seconds;
        odometer += seconds * 0.012;
        kmSinceClear += seconds * 0.012;
        secondsSinceClear += seconds;
        if (runTime > 500 && runTime - seconds <= 500) {
            warmUps = Math.min(255, warmUps + 1);
        }
        othersComplete |= runTime > 1200 && random.nextInt(3) == 0;
        if (!fault.bitProves() && random.nextInt(3) == 0) {
            bitInCycle = true;
            bitSinceClear = true;
        }
        boolean another = (traits.broken() == Broken.BIT_OF_ANOTHER_TEST
                        || traits.broken() == Broken.SHARED_NUMERATOR
                        || traits.broken() == Broken.RESULT_OF_ANOTHER_TEST)
                && random.nextInt(2) == 0;
        if (another) {
            anotherTestRan();
        }
    }

    private void anotherTestRan() {
        switch (traits.broken()) {
            case BIT_OF_ANOTHER_TEST -> bitInCycle = true;
            case SHARED_NUMERATOR -> count();
            default -> result = new TestValue(Watched.ENGINE, 120 + random.nextInt(200), LOWEST, HIGHEST);
        }
    }

    private void count() {
        if (!counted) {
            counted = true;
            numerator++;
        }
    }

    void monitorPasses() {
        decided();
        result = new TestValue(Watched.ENGINE, 120 + random.nextInt(200), LOWEST, HIGHEST);
        if (!tripFailed && !tripRan) {
            tripRan = true;
            settled = false;
        }
        ranInCycle = true;
        if (traits.settles() == Settles.WITH_THE_PASS && !tripFailed && !failedInCycle) {
            settle();
        }
        boolean early = traits.settles() == Settles.WITH_THE_PASS
                && (failureIsKnown || traits.broken() == Broken.TRACELESS_ERASED_EARLY);
        if (early && !failedInCycle) {
            erasePending();
        }
    }

    void monitorFails() {
        decided();
        result = new TestValue(Watched.ENGINE, HIGHEST + 1 + random.nextInt(100), LOWEST, HIGHEST);
        tripRan = true;
        ranInCycle = true;
        failedSinceClear = true;
        if (failedInCycle) {
            return;
        }
        failedInCycle = true;
        settled = true;
        pending = true;
        failureIsKnown = false;
        readSinceFailure = false;
        passesTowardsLampOut = 0;
        if (!tripFailed) {
            tripFailed = true;
            passes = 0;
        }
        failedTripsInARow++;
        boolean late = traits.broken() == Broken.SECOND_FAILURE_NOT_CONFIRMED && failedTripsInARow < 3;
        boolean confirms = fault.trips() == 1 || (lastTripFailed && !late);
        boolean sooner = traits.confirmsSooner() && random.nextInt(2) == 0;
        if (repaired) {
            fails++;
            confirmedSinceRepair |= fails >= fault.trips();
        }
        if (confirms || sooner) {
            confirm();
        }
    }

    private void confirm() {
        confirmedSinceRepair |= repaired && (!confirmed || !lamp);
        confirmed = true;
        lamp = true;
        permanent |= traits.storesPermanent();
        cleared = false;
    }

    private void decided() {
        completedSinceClear = true;
        if (fault.bitProves()) {
            bitSinceClear = true;
        }
        count();
    }

    /** What a passed trip does to the lamp: once in a trip. */
    private void settle() {
        if (settled) {
            return;
        }
        settled = true;
        int needed = traits.broken() == Broken.LAMP_OUT_EARLY ? 1 : 3;
        if (lamp && ++passesTowardsLampOut >= needed) {
            lamp = false;
            permanent = false;
        } else if (!lamp && permanent && cleared && random.nextInt(3) > 0) {
            permanent = false;
        }
    }

    private void pendingGoes() {
        if (pendingMustGo) {
            erasePending();
            pendingMustGo = false;
        }
    }

    private void erasePending() {
        vanished |= pending && !readSinceFailure;
        pending = false;
    }

    void keyOff() {
        running = false;
        pendingMustGo = ranInCycle && !failedInCycle && !tripFailed;
        if (ranInCycle) {
            lastTripFailed = failedInCycle;
            failedTripsInARow = failedInCycle ? failedTripsInARow : 0;
        }
        if (traits.settles() != Settles.AT_THE_NEXT_START) {
            settle();
            pendingGoes();
        }
        if (tripRan) {
            lastTripTrulyFailed = tripFailed;
            if (!tripFailed) {
                passes++;
                fails = 0;
            }
        }
        tripRan = false;
        tripFailed = false;
        ranInCycle = false;
        failedInCycle = false;
        bitInCycle = false;
    }

    void clear() {
        pending = false;
        pendingMustGo = false;
        confirmed = false;
        lamp = false;
        otherCode = false;
        passesTowardsLampOut = 0;
        completedSinceClear = false;
        failedSinceClear = false;
        ranInCycle = false;
        failedInCycle = false;
        lastTripFailed = false;
        failedTripsInARow = 0;
        settled = true;
        cleared = true;
        bitSinceClear = false;
        bitInCycle = false;
        othersComplete = false;
        result = new TestValue(Watched.ENGINE, 0, 0, 0);
        kmSinceClear = 0;
        secondsSinceClear = 0;
        warmUps = 0;
        fails = 0;
        if (!tripFailed) {
            tripRan = false;
        }
    }

    void repair() {
        repaired = true;
        passes = 0;
        fails = 0;
        passesTowardsLampOut = 0;
        settled = true;
        confirmedSinceRepair = false;
        proven = false;
        lastTripTrulyFailed = false;
    }

    // What it answers.

    /** The answers of every unit to these requests; what it shows of a failure is known from now on. */
    List<Answer> answers(Set<Ask> asked, boolean hybrid) {
        List<Answer> answers = new ArrayList<>();
        for (Ask ask : Ask.values()) {
            if (asked.contains(ask)) {
                answer(ask, hybrid, answers);
            }
        }
        proven |= repaired && passesSoFar() >= fault.trips();
        return answers;
    }

    /** Assumption 5: told by whoever keeps the record, when a whole answer of the owner showed the failure or the code. */
    void showed(Reading reading) {
        boolean listed = reading.all(Answer.Codes.class)
                .anyMatch(c -> c.listing() == Listing.PENDING
                        && c.extent() == Extent.WHOLE
                        && c.codes().contains(fault.code()));
        boolean status = reading.all(Answer.Statuses.class)
                .anyMatch(s -> s.extent() == Extent.WHOLE && (s.bytes().getOrDefault(fault.code(), 0) & 0x04) != 0);
        boolean bit = fault.bitProves()
                && failedInCycle
                && reading.headers()
                && reading.all(Answer.ThisCycle.class)
                        .anyMatch(t -> t.unit().equals(Watched.ENGINE) && t.bit() == Bit.COMPLETE);
        failureIsKnown |= listed || status || bit;
        readSinceFailure = true;
    }

    private void answer(Ask ask, boolean hybrid, List<Answer> to) {
        switch (ask) {
            case VIN -> to.add(new Answer.Vin(Watched.ENGINE, vin));
            case SINCE_CLEAR -> each(unit -> sinceClear(unit), to);
            case THIS_CYCLE -> each(unit -> new Answer.ThisCycle(unit, bitInCycle(unit)), to);
            case CONFIRMED -> each(unit -> codes(unit, Listing.CONFIRMED, confirmed), to);
            case PENDING -> each(unit -> codes(unit, Listing.PENDING, pending), to);
            case PERMANENT -> each(unit -> codes(unit, Listing.PERMANENT, permanent), to);
            case IN_USE -> to.add(new Answer.InUse(Watched.ENGINE, ignitionCycles, numerator));
            case TEST_VALUE -> {
                if (fault.monitorId() >= 0) {
                    to.add(result);
                }
            }
            case SUPPORTED_CODES -> to.add(new Answer.Statuses(fault.owner(), 0x0A, all(fault.owner()), Extent.WHOLE));
            case STATUSES -> each(unit -> new Answer.Statuses(unit, 0x02, listed(unit), Extent.WHOLE), to);
            case COUNTERS -> {
                counter(to, 0x30, warmUps);
                counter(to, 0x31, (int) kmSinceClear);
                counter(to, 0x4E, (int) secondsSinceClear / 60);
                counter(to, 0xA6, (int) (odometer * 10));
            }
            case LIVE -> {
                counter(to, 0x0C, running && !hybrid ? 800 : 0);
                counter(to, 0x1F, running ? runTime : 0);
            }
        }
    }

    private static void counter(List<Answer> to, int pid, int value) {
        to.add(new Answer.Counter(Watched.ENGINE, pid, value));
    }

    private void each(java.util.function.Function<String, Answer> answer, List<Answer> to) {
        to.add(answer.apply(Watched.ENGINE));
        if (traits.twoUnits()) {
            to.add(answer.apply(Watched.SECOND));
        }
    }

    private Answer sinceClear(String unit) {
        boolean owns = unit.equals(fault.owner());
        boolean on = owns && (lamp || otherCode);
        int count = owns ? (confirmed ? 1 : 0) + (otherCode ? 1 : 0) : 0;
        boolean engine = unit.equals(Watched.ENGINE);
        Bit bit = fault.groupBit() < 0 || !engine ? Bit.NOT_SUPPORTED : bitSinceClear ? Bit.COMPLETE : Bit.INCOMPLETE;
        return new Answer.SinceClear(unit, on, count, bit, !engine || othersComplete);
    }

    private Bit bitInCycle(String unit) {
        if (fault.groupBit() < 0 || !unit.equals(Watched.ENGINE)) {
            return Bit.NOT_SUPPORTED;
        }
        boolean complete =
                bitInCycle || (fault.bitProves() && ranInCycle && (!failedInCycle || traits.showsBitAfterFailure()));
        return complete ? Bit.COMPLETE : random.nextInt(4) == 0 ? Bit.NOT_SUPPORTED : Bit.INCOMPLETE;
    }

    private Answer codes(String unit, Listing listing, boolean stored) {
        Set<String> codes = new TreeSet<>();
        if (unit.equals(fault.owner())) {
            if (stored) {
                codes.add(fault.code());
            }
            if (otherCode && listing != Listing.PENDING) {
                codes.add(OTHER_CODE);
            }
        }
        return new Answer.Codes(unit, listing, codes, Extent.WHOLE);
    }

    private Map<String, Integer> all(String unit) {
        Map<String, Integer> all = new TreeMap<>();
        all.put(UNTESTED_CODE, 0x50);
        if (unit.equals(fault.owner())) {
            all.put(fault.code(), status());
        }
        return all;
    }

    private Map<String, Integer> listed(String unit) {
        Map<String, Integer> listed = all(unit);
        listed.values().removeIf(status -> status == 0 || (!traits.listsUntested() && (status & 0x2F) == 0));
        if (traits.broken() == Broken.LISTS_UNTESTED_SOMETIMES && (status() & 0x2F) == 0) {
            listed.remove(fault.code());
        }
        return listed;
    }

    private int status() {
        return (failedInCycle ? 0x03 : 0)
                | (pending ? 0x04 : 0)
                | (confirmed ? 0x08 : 0)
                | (completedSinceClear ? 0 : 0x10)
                | (failedSinceClear ? 0x20 : 0)
                | (running && ranInCycle ? 0 : 0x40)
                | (lamp ? 0x80 : 0);
    }

    // The truth.

    /** Passed trips in a row since the repair, the present cycle with them. */
    int passesSoFar() {
        return passes + (running && tripRan && !tripFailed ? 1 : 0);
    }

    boolean confirmedSinceRepair() {
        return confirmedSinceRepair;
    }

    boolean lastTripFailed() {
        return (running && tripRan) ? tripFailed : lastTripTrulyFailed;
    }

    /** At some reading since the repair enough trips had passed in a row. */
    boolean proven() {
        return proven;
    }

    /** Some failure stored its pending code and lost it between two readings. */
    boolean vanished() {
        return vanished;
    }

    boolean isPending() {
        return pending;
    }

    boolean isConfirmed() {
        return confirmed;
    }

    boolean lampRequested() {
        return lamp;
    }

    boolean isRunning() {
        return running;
    }

    double kmSinceClear() {
        return kmSinceClear;
    }

    double odometer() {
        return odometer;
    }
}
