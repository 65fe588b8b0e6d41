package dev.stayfixed.histories;

import static dev.stayfixed.histories.Memory.*;

import dev.stayfixed.histories.Answer.Bit;
import dev.stayfixed.histories.Answer.InUse;
import dev.stayfixed.histories.Answer.Listing;
import dev.stayfixed.histories.Answer.TestValue;
import dev.stayfixed.histories.Answer.ThisCycle;
import dev.stayfixed.histories.CarRecord.Driven;
import dev.stayfixed.histories.CarRecord.Entry;
import dev.stayfixed.histories.CarRecord.Repaired;
import dev.stayfixed.histories.Gap.Taken;
import dev.stayfixed.histories.Reading.Phase;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.LongPredicate;
import java.util.function.LongUnaryOperator;

/**
 * Says of one fault what every history agrees on that fits its record. A history is any sequence of events that {@link Clauses} allows;
 * between two readings there may be as many driving cycles that nobody saw as {@link Gap} and the ignition counter leave; a reading
 * keeps the histories whose unit would have answered so.
 */
final class Oracle {

    enum Says {
        CONFIRMED_FIXED,
        RECURRED,
        NEITHER
    }

    /**
     * @param bad one history that fits and is not "so many passes in a row", an event a line; empty where none
     * @param steps what each reading left of the histories
     * @param fits false where an assumption was broken: at some reading no history was left
     * @param memories all that the unit may hold at the end
     */
    record Answered(Says says, List<String> bad, List<String> steps, boolean fits, List<Long> memories) {}

    private static final double FASTEST_KM_PER_HOUR = 200;

    private final CarRecord record;
    private final Clauses clauses;
    private final Owner owner;

    /** A clear that the scan after the repair shows is the one that was told. */
    private boolean clearIsTold;

    private final Known known = new Known();
    private final List<String> steps = new ArrayList<>();
    private Histories histories = new Histories();
    private Optional<Taken> last = Optional.empty();
    private boolean lastReadIgnition;
    private boolean repaired;
    private boolean fits = true;
    private Says says = Says.NEITHER;

    private Oracle(CarRecord record) {
        this.record = record;
        this.clauses = new Clauses(record);
        this.owner = new Owner(record);
    }

    static Answered ask(CarRecord record) {
        Oracle oracle = new Oracle(record);
        oracle.begin();
        for (int i = 0; i < record.entries().size(); i++) {
            oracle.follow(i, record.entries().get(i));
        }
        return new Answered(oracle.says, oracle.bad(), oracle.steps, oracle.fits, oracle.histories.memories());
    }

    private void begin() {
        histories = new Histories();
        clauses.anything().forEach(histories::begin);
    }

    private void follow(int place, Entry entry) {
        if (entry instanceof Repaired repair) {
            repair.before()
                    .ifPresent(r -> read(
                            r,
                            new Taken(
                                    place,
                                    false,
                                    false,
                                    r.phase(Phase.EITHER),
                                    repair.at(),
                                    repair.at(),
                                    r.counter(0x1F))));
            repair(repair, place);
            clearIsTold = repair.cleared();
            repair.after()
                    .ifPresent(r -> read(
                            r,
                            new Taken(
                                    place,
                                    false,
                                    true,
                                    r.phase(Phase.EITHER),
                                    repair.at(),
                                    repair.at(),
                                    r.counter(0x1F))));
            clearIsTold = false;
            return;
        }
        Driven drive = (Driven) entry;
        Optional<String> foreign = drive.readings().stream()
                .map(known::foreign)
                .flatMap(Optional::stream)
                .findFirst();
        if (foreign.isPresent()) {
            steps.add("%s left out: %s".formatted(drive.id(), foreign.get()));
            return;
        }
        if (drive.clearedBefore()) {
            clearedBefore(drive, place);
        }
        if (drive.readings().isEmpty()) {
            driven(drive, place);
        }
        for (Reading r : drive.before()) {
            read(r, new Taken(place, false, false, r.phase(Phase.KEY_ON), drive.start(), drive.end(), r.counter(0x1F)));
        }
        for (int i = 0; i < drive.after().size(); i++) {
            Reading r = drive.after().get(i);
            boolean isLast = i == drive.after().size() - 1;
            read(
                    r,
                    new Taken(
                            place, true, isLast, r.phase(Phase.RUNNING), drive.start(), drive.end(), r.counter(0x1F)));
        }
    }

    /** Nothing was read in it, and yet it was a driving cycle, or a part of the one before. */
    private void driven(Driven drive, int place) {
        Taken taken = new Taken(place, true, true, Phase.RUNNING, drive.start(), drive.end(), OptionalInt.empty());
        explore(Gap.between(last, taken, false, false), Phase.RUNNING, false, false);
        last = Optional.of(taken);
        lastReadIgnition = false;
    }

    private void repair(Repaired repair, int place) {
        toKeyOff();
        repaired = true;
        clauses.repaired();
        says = Says.NEITHER;
        change("repair", clauses::repair);
        if (repair.cleared() && !provesNoClear(place)) {
            clear("codes cleared at the repair");
            repair.before().ifPresent(known::clearedAtOdometerOf);
        }
        last = Optional.of(new Taken(place, false, true, Phase.KEY_ON, repair.at(), repair.at(), OptionalInt.empty()));
        lastReadIgnition = false;
        steps.add("repair: %d histories".formatted(histories.size()));
    }

    /** Assumption 9: counters since the clear stand higher than can have been driven since. */
    private boolean provesNoClear(int place) {
        Repaired repair = (Repaired) record.entries().get(place);
        OptionalInt odometer = lastOdometer(place);
        if (repair.after()
                .filter(r -> exceeds(r, repair, repair.at(), odometer))
                .isPresent()) {
            return true;
        }
        for (int i = place + 1; i < record.entries().size(); i++) {
            if (!(record.entries().get(i) instanceof Driven drive) || drive.clearedBefore()) {
                return false;
            }
            if (drive.readings().stream().anyMatch(r -> known.foreign(r).isPresent())) {
                continue;
            }
            if (drive.before().stream().anyMatch(r -> exceeds(r, repair, drive.start(), odometer))
                    || drive.after().stream().anyMatch(r -> exceeds(r, repair, drive.end(), odometer))) {
                return true;
            }
        }
        return false;
    }

    private OptionalInt lastOdometer(int place) {
        OptionalInt odometer = OptionalInt.empty();
        for (int i = 0; i <= place; i++) {
            for (Reading r : record.entries().get(i).readings()) {
                OptionalInt now = r.counter(Known.ODOMETER);
                odometer = now.isPresent() ? now : odometer;
            }
        }
        return odometer;
    }

    private static boolean exceeds(Reading r, Repaired repair, java.time.Instant at, OptionalInt odometer) {
        double hours = Duration.between(repair.at(), at).toSeconds() / 3600.0;
        OptionalInt now = r.counter(Known.ODOMETER);
        if (odometer.isPresent() && now.isPresent() && now.getAsInt() < odometer.getAsInt()) {
            return false;
        }
        double km = odometer.isPresent() && now.isPresent()
                ? (now.getAsInt() - odometer.getAsInt()) / 10.0
                : hours * FASTEST_KM_PER_HOUR;
        return r.counter(Known.KM_SINCE_CLEAR).orElse(0) > km + 2
                || r.counter(Known.MINUTES_SINCE_CLEAR).orElse(0) > hours * 60 + 2;
    }

    /** Told, so it is certain; it lies between two cycles, before this drive. */
    private void clearedBefore(Driven drive, int place) {
        toKeyOff();
        clear("told: codes cleared before " + drive.id());
        last = Optional.of(
                new Taken(place, false, false, Phase.KEY_ON, drive.start(), drive.end(), OptionalInt.empty()));
        lastReadIgnition = false;
    }

    private void toKeyOff() {
        explore(Gap.unlimited("before a repair or a told clear"), Phase.KEY_ON, false, false);
    }

    private void clear(String event) {
        clauses.resultKnown();
        change(event, clauses::clear);
        known.cleared();
    }

    private void read(Reading whole, Taken taken) {
        List<Reading> parts = whole.cutAtClears();
        for (int i = 0; i < parts.size(); i++) {
            if (i > 0 && !clearIsTold) {
                clear("$04 in the reading");
            }
            read(parts.get(i), taken, i == 0);
        }
        judge(taken);
    }

    private void read(Reading reading, Taken taken, boolean first) {
        owner.meet(reading);
        Optional<String> clear = known.cleared(reading, owner);
        boolean readsIgnition = reading.first(InUse.class).isPresent();
        if (first) {
            boolean since = known.ignitionGrowth(reading).isPresent();
            Gap gap = Gap.between(last, taken, since && lastReadIgnition, since);
            explore(gap, taken.phase(), clear.isPresent());
            last = Optional.of(taken);
            lastReadIgnition = readsIgnition;
        }
        clear.ifPresent(sign -> steps.add("cleared: " + sign));
        OptionalInt ignition = known.ignitionGrowth(reading);
        if (clear.isPresent()) {
            known.cleared();
        }
        keepWhatWouldAnswer(reading, ignition);
        known.learn(reading, owner);
        steps.add("%s: %d histories, passes %s"
                .formatted(
                        taken.after() ? "AFTER" : "BEFORE",
                        histories.size(),
                        histories.memories().stream()
                                .map(Memory::passesSoFar)
                                .distinct()
                                .sorted()
                                .toList()));
        if (histories.isEmpty()) {
            fits = false;
            begin();
            clauses.saidFixed(false);
            says = says == Says.RECURRED ? says : Says.NEITHER;
        }
    }

    /** Everything that can have happened between two readings: breadth first, so that the shortest history is found first. */
    private void explore(Gap gap, Phase phase, boolean cleared) {
        explore(gap, phase, cleared, true);
    }

    /** @param read a reading ends it */
    private void explore(Gap gap, Phase phase, boolean cleared, boolean read) {
        Histories found = histories.changed("", m -> GAP_STARTS.set(m, gap.countsRunning() && RUNNING.in(m) ? 1 : 0));
        for (int place = 0; place < found.size(); place++) {
            int from = place;
            long m = found.memory(place);
            clauses.next(m, (event, next) -> {
                boolean starts = !RUNNING.in(m) && RUNNING.in(next);
                if (!starts || gap.most() == Gap.ANY || GAP_STARTS.of(m) < gap.most()) {
                    found.add(next, found, from, event);
                }
            });
            if (cleared && !GAP_CLEARED.in(m)) {
                found.add(GAP_CLEARED.set(clauses.clear(m), 1), found, from, "codes cleared");
            }
        }
        histories = found.kept(m -> (phase == Phase.EITHER || RUNNING.in(m) == (phase == Phase.RUNNING))
                        && GAP_CLEARED.in(m) == cleared
                        && gap.accepts(m))
                .changed("", m -> GAP_CLEARED.set(GAP_STARTS.set(m, 0), 0))
                .changed("", m -> read ? GAP_PENDING.set(m, 0) : m);
    }

    private void keepWhatWouldAnswer(Reading reading, OptionalInt ignition) {
        boolean bitProves = record.fault().bitProves();
        stands(Listing.PENDING, reading, PENDING);
        stands(Listing.CONFIRMED, reading, CONFIRMED);
        stands(Listing.PERMANENT, reading, PERMANENT);
        owner.sinceClear(reading).ifPresent(r -> {
            if (!r.lamp()) {
                keep(m -> !LAMP.in(m));
            } else if (r.count() == 1
                    && owner.stands(Listing.CONFIRMED, reading).orElse(false)) {
                keep(LAMP::in);
            }
            if (bitProves && r.bit() == Bit.COMPLETE) {
                keep(COMPLETED_SINCE_CLEAR::in);
            }
        });
        if (bitProves) {
            owner.thisCycle(reading).ifPresent(this::thisCycle);
        }
        owner.status(reading).ifPresent(this::status);
        if (owner.leavesOut(reading)) {
            if (owner.listsUntested()) {
                status(0);
            } else {
                keep(m -> !PENDING.in(m) && !CONFIRMED.in(m));
            }
        }
        ignition.ifPresent(growth -> keep(m -> STARTS.of(m) == Math.min(growth, MANY)));
        if (ignition.orElse(0) == 1
                && record.fault().numerator() >= 0
                && known.numeratorGrowth(reading).orElse(0) == 1) {
            keep(COUNTED::in);
            shownToHaveRun();
        }
        if (reading.first(InUse.class).isPresent()) {
            change("", m -> COUNTED.set(STARTS.set(m, 0), 0));
            clauses.countersRead();
        }
        if (reading.first(TestValue.class).isPresent()) {
            Optional<TestValue> result = known.newResult(reading).filter(value -> clauses.followsResults());
            result.ifPresent(value -> {
                keep(m -> !RUNNING.in(m) || RESULT.of(m) >= (value.isInside() ? 1 : 2));
                shownToHaveRun();
            });
            change("", m -> RUNNING.in(m) ? RESULT.set(m, 0) : clauses.resultReadAtKeyOn(m));
            clauses.resultKnown();
        }
    }

    private void stands(Listing listing, Reading reading, Field field) {
        owner.stands(listing, reading).ifPresent(there -> {
            keep(m -> field.in(m) == there);
            if (there && listing == Listing.PENDING) {
                change("", m -> TRACELESS.set(m, 0));
            }
        });
    }

    /** Assumptions 10 and 14. */
    private void thisCycle(ThisCycle answer) {
        if (answer.bit() == Bit.COMPLETE) {
            keep(m -> !RUNNING.in(m) || SHOWN.of(m) != NOT_RUN);
            shownToHaveRun();
        } else {
            keep(m -> !RUNNING.in(m) || SHOWN.of(m) != PASSED);
        }
    }

    /** Assumptions 11 and 14. */
    private void status(int value) {
        keep(m -> PENDING.in(m) == ((value & 0x04) != 0)
                && CONFIRMED.in(m) == ((value & 0x08) != 0)
                && COMPLETED_SINCE_CLEAR.in(m) == ((value & 0x10) == 0)
                && FAILED_SINCE_CLEAR.in(m) == ((value & 0x20) != 0));
        int result = (value & 0x02) != 0 ? FAILED : (value & 0x40) != 0 ? NOT_RUN : PASSED;
        if ((value & 0x42) != 0x42) {
            keep(m -> !RUNNING.in(m) || SHOWN.of(m) == result);
        }
        if ((value & 0x04) != 0) {
            change("", m -> TRACELESS.set(m, 0));
        } else if (result != NOT_RUN) {
            shownToHaveRun();
        }
    }

    /** Assumption 5: a failure in this cycle, before this reading, is no longer without a trace. */
    private void shownToHaveRun() {
        change("", m -> RUNNING.in(m) && TRIP.of(m) == FAILED ? TRACELESS.set(m, 0) : m);
    }

    private void keep(LongPredicate fits) {
        histories = histories.kept(fits);
    }

    private void change(String event, LongUnaryOperator change) {
        histories = histories.changed(event, change);
    }

    private void judge(Taken taken) {
        boolean moreToCome = taken.after() && !taken.last();
        if (!repaired || moreToCome || says == Says.RECURRED) {
            return;
        }
        if (histories.all(CONFIRMED_SINCE_REPAIR::in)) {
            says(Says.RECURRED);
        } else if (says == Says.CONFIRMED_FIXED) {
            if (histories.all(FAILED_LATER::in)) {
                clauses.saidFixed(false);
                says(Says.NEITHER);
            }
        } else if (histories.all(m -> passesSoFar(m) >= record.fault().trips())) {
            change("", m -> FAILED_LATER.set(m, 0));
            clauses.saidFixed(true);
            says(Says.CONFIRMED_FIXED);
        }
    }

    private void says(Says now) {
        says = now;
        steps.add("-> " + now);
    }

    /** The shortest history that fits and has too few passes. */
    private List<String> bad() {
        return histories.shortest(m -> passesSoFar(m) < record.fault().trips());
    }
}
