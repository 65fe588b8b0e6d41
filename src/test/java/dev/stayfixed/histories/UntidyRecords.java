package dev.stayfixed.histories;

import dev.stayfixed.histories.Answer.Codes;
import dev.stayfixed.histories.Answer.Extent;
import dev.stayfixed.histories.Answer.Statuses;
import dev.stayfixed.histories.CarRecord.Driven;
import dev.stayfixed.histories.CarRecord.Entry;
import dev.stayfixed.histories.CarRecord.Repaired;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;

/** Makes the record of one repaired car, as untidy as it is asked to be: the same seed gives the same record. */
final class UntidyRecords {

    /** How the repair was. */
    enum Workmanship {
        GOOD,
        BAD,
        INTERMITTENT
    }

    /**
     * The record, and the truth at its last reading.
     *
     * @param proven at some reading enough trips had truly passed in a row since the repair
     */
    record Made(
            long seed,
            CarRecord record,
            Set<Untidiness> untidy,
            Workmanship workmanship,
            int passes,
            boolean proven,
            boolean lastTripFailed,
            boolean confirmedSinceRepair,
            boolean vanished,
            boolean pending,
            boolean confirmed,
            boolean lamp) {

        /** In truth the last trips all passed, as many as the fault needs. */
        boolean isFixed() {
            return passes >= record.fault().trips();
        }

        Made with(CarRecord complete) {
            return new Made(
                    seed,
                    complete,
                    untidy,
                    workmanship,
                    passes,
                    proven,
                    lastTripFailed,
                    confirmedSinceRepair,
                    vanished,
                    pending,
                    confirmed,
                    lamp);
        }

        /** Memory of a history that equals the truth. */
        boolean isTruth(long memory) {
            return Memory.PENDING.in(memory) == pending
                    && Memory.CONFIRMED.in(memory) == confirmed
                    && Memory.LAMP.in(memory) == lamp
                    && Memory.passesSoFar(memory) <= passes
                    && Memory.CONFIRMED_SINCE_REPAIR.in(memory) == confirmedSinceRepair;
        }
    }

    /** What a tool can ask, and whether it shows headers. */
    record Tool(Set<Ask> asks) {
        static Tool any(SplittableRandom random) {
            Set<Ask> asks = EnumSet.noneOf(Ask.class);
            for (Ask ask : Ask.values()) {
                double share = switch (ask) {
                    case PENDING -> 0.85;
                    case CONFIRMED, SINCE_CLEAR -> 0.75;
                    case THIS_CYCLE, LIVE -> 0.6;
                    case COUNTERS -> 0.5;
                    case IN_USE, VIN -> 0.4;
                    case STATUSES, TEST_VALUE, PERMANENT -> 0.3;
                    case SUPPORTED_CODES -> 0.2;
                };
                if (random.nextDouble() < share) {
                    asks.add(ask);
                }
            }
            return new Tool(asks);
        }
    }

    private static final Duration DAY = Duration.ofHours(14);

    private final long seed;
    private final SplittableRandom random;
    private final Set<Untidiness> untidy = EnumSet.noneOf(Untidiness.class);
    private final Set<Ask> tool;
    private final Broken broken;
    private final Watched fault;
    private final Workmanship workmanship;
    private final Car car;
    private final boolean headers;
    private final List<Entry> entries = new ArrayList<>();
    private final Set<Ask> readBefore = EnumSet.noneOf(Ask.class);
    private Instant now = Instant.parse("2026-01-05T07:00:00Z");
    private int drives;
    private boolean repaired;
    private double kmLastRead;
    private boolean clearToShow;
    private boolean clearToTell;
    private Optional<Made> atLastReading = Optional.empty();
    private Optional<Made> made = Optional.empty();

    private UntidyRecords(long seed, Watched fault, Optional<Tool> tool, boolean tidy, Broken broken) {
        this.seed = seed;
        this.random = new SplittableRandom(seed * 1_000_003 + 17);
        this.broken = broken;
        this.fault = fault;
        for (Untidiness each : Untidiness.values()) {
            boolean on = random.nextDouble() < each.share;
            if (on && !tidy) {
                untidy.add(each);
            }
        }
        this.tool = tool.orElseGet(() -> Tool.any(random)).asks();
        boolean secondOwns = fault.owner().equals(Watched.SECOND);
        if (secondOwns) {
            untidy.add(Untidiness.TWO_UNITS);
        }
        if (broken == Broken.SILENT_OWNER_WITHOUT_HEADERS) {
            untidy.add(Untidiness.TWO_UNITS);
            untidy.add(Untidiness.NO_HEADERS);
        }
        this.headers = !has(Untidiness.NO_HEADERS);
        this.workmanship = random.nextDouble() < 0.45
                ? Workmanship.GOOD
                : random.nextDouble() < 0.5 ? Workmanship.BAD : Workmanship.INTERMITTENT;
        this.car = new Car(
                fault,
                traits(),
                random,
                "1G1JC5444R72" + (10000 + random.nextInt(80000)),
                60_000 + random.nextInt(40_000));
    }

    /** The record of a seed, with everything at random. */
    static Made of(long seed) {
        return of(seed, Broken.NOTHING);
    }

    /** Likewise, of a car or a shop that breaks one assumption. */
    static Made of(long seed, Broken broken) {
        SplittableRandom pick = new SplittableRandom(seed ^ 0x5EED);
        return new UntidyRecords(
                        seed, Watched.all()[pick.nextInt(Watched.all().length)], Optional.empty(), false, broken)
                .make();
    }

    /** A record of this fault, read with this tool. */
    static Made of(long seed, Watched fault, Tool tool, boolean tidy) {
        return new UntidyRecords(seed, fault, Optional.of(tool), tidy, Broken.NOTHING).make();
    }

    private Car.Traits traits() {
        Car.Settles settles = has(Untidiness.ERASES_EARLY)
                ? Car.Settles.WITH_THE_PASS
                : has(Untidiness.ERASES_LATE) ? Car.Settles.AT_THE_NEXT_START : Car.Settles.AT_KEY_OFF;
        return new Car.Traits(
                broken == Broken.TRACELESS_ERASED_EARLY ? Car.Settles.WITH_THE_PASS : settles,
                has(Untidiness.CONFIRMS_SOONER),
                random.nextInt(4) > 0,
                has(Untidiness.OTHER_CODE),
                !has(Untidiness.HIDES_UNTESTED),
                random.nextInt(3) > 0,
                has(Untidiness.TWO_UNITS),
                broken);
    }

    private boolean has(Untidiness what) {
        return untidy.contains(what);
    }

    private boolean now(Untidiness what, double share) {
        return has(what) && random.nextDouble() < share;
    }

    private Made make() {
        int before = 1 + random.nextInt(3);
        for (int i = 0; i < before; i++) {
            later();
            cycle();
        }
        repair();
        int after = 2 + random.nextInt(6);
        for (int i = 0; i < after; i++) {
            between();
            cycle();
        }
        return made.orElseThrow();
    }

    private Made truth() {
        return new Made(
                seed,
                new CarRecord(fault, entries),
                Set.copyOf(untidy),
                workmanship,
                car.passesSoFar(),
                car.proven(),
                car.lastTripFailed(),
                car.confirmedSinceRepair(),
                car.vanished(),
                car.isPending(),
                car.isConfirmed(),
                car.lampRequested());
    }

    // The repair.

    private void repair() {
        later();
        boolean secondOwner = fault.owner().equals(Watched.SECOND);
        Optional<Reading> before = Optional.empty();
        if (secondOwner || random.nextDouble() < 0.8) {
            Set<Ask> asked = asks(false);
            if (secondOwner) {
                makeConfirmed();
                asked.addAll(List.of(Ask.CONFIRMED, Ask.PENDING));
                before = Optional.of(new Reading(headers, car.answers(asked, false)));
                learned(asked, before.get());
            } else {
                before = Optional.of(reading(asked, false));
            }
        }
        car.repair();
        repaired = true;
        atLastReading = Optional.empty();
        boolean notTaken = has(Untidiness.CLEAR_NOT_TAKEN);
        boolean cleared = !notTaken && random.nextDouble() < 0.6;
        if (cleared) {
            car.clear();
        }
        Optional<Reading> after = Optional.empty();
        if (notTaken || random.nextDouble() < 0.6) {
            Set<Ask> asked = asks(false);
            if (notTaken) {
                asked.add(Ask.COUNTERS);
            }
            Reading read = reading(asked, false);
            if (cleared && random.nextInt(3) == 0) {
                List<Answer> answers = new ArrayList<>(
                        List.of(new Answer.Cleared(Watched.ENGINE, random.nextBoolean() ? 0x44 : 0x54)));
                answers.addAll(read.answers());
                read = new Reading(headers, answers);
            }
            after = Optional.of(read);
        }
        entries.add(new Repaired(now, cleared || notTaken, before, after));
        remember();
    }

    /** A unit that the record has never met can deny nothing, so the code has to have been there. */
    private void makeConfirmed() {
        for (int i = 0; i < 2 && !car.isConfirmed(); i++) {
            car.start();
            car.run(300);
            car.monitorFails();
            car.run(300);
            now = now.plusSeconds(600);
            car.keyOff();
            later();
        }
    }

    // Between two cycles.

    private void later() {
        now = now.plus(DAY).plusSeconds(random.nextInt(20_000));
    }

    private void between() {
        if (has(Untidiness.SHORT_PAUSES) && random.nextInt(3) == 0) {
            now = now.plusSeconds(70 + random.nextInt(3_000));
        } else {
            later();
        }
        if (now(Untidiness.OTHER_CARS, 0.3)) {
            otherCar();
            later();
        }
        if (broken == Broken.CLEAR_WITHOUT_A_SIGN && random.nextInt(3) == 0) {
            car.clear();
        } else if (now(Untidiness.TOLD_CLEARS, 0.3)) {
            car.clear();
            clearToTell = true;
        } else if (now(Untidiness.UNSEEN_CLEARS, 0.4)
                && car.kmSinceClear() > 60
                && readBefore.contains(Ask.COUNTERS)
                && kmLastRead > 60) {
            car.clear();
            clearToShow = true;
        }
    }

    private void otherCar() {
        Car other = new Car(
                fault,
                new Car.Traits(
                        Car.Settles.AT_KEY_OFF,
                        false,
                        true,
                        false,
                        true,
                        true,
                        has(Untidiness.TWO_UNITS),
                        Broken.NOTHING),
                random.split(),
                "2HGES16575H5" + (10000 + random.nextInt(80000)),
                broken == Broken.OTHER_CAR_UNRECOGNISED ? 150_000 : 2_000);
        Set<Ask> asked = asks(true);
        asked.remove(Ask.IN_USE);
        if (broken == Broken.OTHER_CAR_UNRECOGNISED) {
            asked.removeAll(Set.of(Ask.VIN, Ask.COUNTERS));
        } else if (readBefore.contains(Ask.VIN)) {
            asked.add(Ask.VIN);
        } else if (readBefore.contains(Ask.COUNTERS)) {
            asked.add(Ask.COUNTERS);
        } else {
            return;
        }
        Instant start = now;
        other.start();
        other.run(600);
        other.monitorPasses();
        other.run(600);
        now = now.plusSeconds(1200);
        entries.add(new Driven(
                name(), start, now, false, List.of(), List.of(new Reading(headers, other.answers(asked, false)))));
    }

    private String name() {
        return "drive " + ++drives;
    }

    // A driving cycle and what is recorded of it.

    private enum Test {
        PASS,
        FAIL
    }

    private void cycle() {
        boolean unrecorded = !clearToShow && !clearToTell && now(Untidiness.UNRECORDED_DRIVES, 0.35);
        boolean recorded = !unrecorded && (repaired || random.nextInt(3) == 0);
        if (!recorded) {
            car.start();
            drive(900);
            later(tests());
            drive(600);
            car.keyOff();
            return;
        }
        if (!clearToShow && now(Untidiness.DRIVES_WITHOUT_SCANS, 0.3)) {
            withoutScans();
        } else if (!clearToShow && now(Untidiness.CUT_IN_TWO, 0.5)) {
            cutInTwo();
        } else {
            oneRecord();
        }
    }

    private void withoutScans() {
        Instant start = now;
        boolean told = told();
        car.start();
        drive(600);
        later(tests());
        drive(300);
        entries.add(new Driven(name(), start, now, told, List.of(), List.of()));
        car.keyOff();
    }

    private void oneRecord() {
        boolean told = told();
        List<Reading> before = new ArrayList<>();
        Instant start = now;
        if (!has(Untidiness.END_ONLY) || random.nextInt(6) == 0) {
            Set<Ask> asked = asks(false);
            if (clearToShow) {
                asked.add(Ask.COUNTERS);
            }
            before.add(reading(asked, false));
            clearToShow = false;
        }
        car.start();
        List<Reading> after = new ArrayList<>();
        boolean restarted = now(Untidiness.RESTARTS, 0.4) || (broken == Broken.SILENT_RESTART && random.nextBoolean());
        if (restarted) {
            drive(400);
            later(tests());
            drive(200);
            car.keyOff();
            now = now.plusSeconds(120);
            car.start();
        }
        drive(300);
        for (Test test : tests()) {
            run(test);
            drive(120);
            if (!clearToShow && !restarted && now(Untidiness.SEVERAL_SCANS, 0.5)) {
                after.add(reading(asks(true), hybrid()));
                drive(30);
            }
        }
        drive(200);
        Set<Ask> last = asks(true);
        if (restarted && broken != Broken.SILENT_RESTART) {
            last.add(Ask.LIVE);
        } else if (broken == Broken.SILENT_RESTART) {
            last.removeAll(Set.of(Ask.LIVE, Ask.IN_USE));
        }
        if (clearToShow) {
            last.add(Ask.COUNTERS);
            clearToShow = false;
        }
        boolean keyOn = !restarted && now(Untidiness.KEY_ON_SCANS, 0.5);
        if (!keyOn || random.nextBoolean()) {
            after.add(reading(last, hybrid()));
            if (now(Untidiness.CLEARS_IN_SCANS, 0.4)) {
                Reading read = after.remove(after.size() - 1);
                List<Answer> answers = new ArrayList<>(read.answers());
                answers.add(new Answer.Cleared(Watched.ENGINE, 0x44));
                after.add(new Reading(headers, answers));
                car.clear();
                atLastReading = Optional.of(truth());
            }
        }
        Instant end = now;
        car.keyOff();
        if (keyOn) {
            Set<Ask> asked = asks(false);
            asked.add(Ask.LIVE);
            asked.remove(Ask.TEST_VALUE);
            now = now.plusSeconds(90);
            after.add(reading(asked, false));
            end = now;
        }
        entries.add(new Driven(name(), start, end, told, before, after));
        remember();
    }

    /** One cycle in two records: a few seconds between them, or longer, where counters or run time may tell, or nothing. */
    private void cutInTwo() {
        boolean told = told();
        Instant start = now;
        car.start();
        drive(300);
        List<Test> tests = tests();
        later(tests.subList(0, tests.size() / 2));
        drive(100);
        Reading first = reading(asks(true), hybrid());
        entries.add(new Driven(name(), start, now, told, List.of(), List.of(first)));
        remember();
        drive(random.nextBoolean() ? 1 + random.nextInt(4) : 70 + random.nextInt(1_200));
        Instant again = now;
        drive(100);
        later(tests.subList(tests.size() / 2, tests.size()));
        drive(200);
        Reading second = reading(asks(true), hybrid());
        entries.add(new Driven(name(), again, now, false, List.of(), List.of(second)));
        remember();
        car.keyOff();
    }

    private boolean told() {
        boolean told = clearToTell;
        clearToTell = false;
        return told;
    }

    private boolean hybrid() {
        return has(Untidiness.HYBRID) && random.nextBoolean();
    }

    private void drive(int seconds) {
        car.run(seconds);
        now = now.plusSeconds(seconds);
    }

    private void later(List<Test> tests) {
        for (Test test : tests) {
            run(test);
            drive(60);
        }
    }

    private void run(Test test) {
        if (test == Test.PASS) {
            car.monitorPasses();
        } else {
            car.monitorFails();
        }
    }

    /** What the monitor does in this cycle. */
    private List<Test> tests() {
        if (random.nextDouble() > 0.75) {
            return List.of();
        }
        boolean fails = !repaired
                || switch (workmanship) {
                    case GOOD -> false;
                    case BAD -> true;
                    case INTERMITTENT -> random.nextInt(2) == 0;
                };
        if (repaired && has(Untidiness.CHANGES_ITS_MIND) && fails && random.nextBoolean()) {
            return random.nextBoolean() ? List.of(Test.FAIL, Test.PASS) : List.of(Test.PASS, Test.FAIL);
        }
        return List.of(fails ? Test.FAIL : Test.PASS);
    }

    // Readings.

    private Set<Ask> asks(boolean engineRan) {
        Set<Ask> asked = EnumSet.noneOf(Ask.class);
        asked.addAll(tool);
        if (has(Untidiness.PARTIAL_READINGS)) {
            asked.removeIf(ask -> random.nextInt(4) == 0);
        }
        if (asked.isEmpty()) {
            asked.add(engineRan ? Ask.PENDING : Ask.CONFIRMED);
        }
        return asked;
    }

    private Reading reading(Set<Ask> asked, boolean hybrid) {
        List<Answer> answers = car.answers(asked, hybrid);
        Reading read = new Reading(headers, spoil(answers));
        learned(asked, read);
        return read;
    }

    private void learned(Set<Ask> asked, Reading read) {
        car.showed(read);
        atLastReading = Optional.of(truth());
        readBefore.addAll(asked);
        read.counter(Known.KM_SINCE_CLEAR).ifPresent(km -> kmLastRead = km);
    }

    /** An entry is complete: the record up to here, with the truth at its last reading. */
    private void remember() {
        if (repaired) {
            made = Optional.of(atLastReading.orElseGet(this::truth).with(new CarRecord(fault, entries)));
        }
    }

    private List<Answer> spoil(List<Answer> whole) {
        List<Answer> spoiled = new ArrayList<>();
        boolean silent = headers && now(Untidiness.SILENT_UNIT, 0.5);
        String silentUnit = random.nextInt(3) > 0 ? fault.owner() : Watched.ENGINE;
        boolean ownerSilent = broken == Broken.SILENT_OWNER_WITHOUT_HEADERS && random.nextInt(2) == 0;
        Set<Answer.Listing> unanswered = EnumSet.allOf(Answer.Listing.class);
        unanswered.removeIf(listing -> !now(Untidiness.NO_DATA, 0.15));
        for (Answer answer : whole) {
            boolean list = answer instanceof Codes || answer instanceof Statuses;
            if (list && ownerSilent && answer.unit().equals(fault.owner())) {
                continue;
            }
            if (list && silent && answer.unit().equals(silentUnit) && random.nextInt(3) > 0) {
                continue;
            }
            if (answer instanceof Codes codes && unanswered.contains(codes.listing())) {
                if (codes.unit().equals(Watched.ENGINE)) {
                    spoiled.add(new Answer.NoData(codes.unit(), "%02X".formatted(codes.listing().service)));
                }
                continue;
            }
            Extent extent = list ? extent() : Extent.WHOLE;
            spoiled.add(with(answer, extent));
        }
        return spoiled;
    }

    private Extent extent() {
        if (now(Untidiness.CUT_ANSWERS, 0.15)) {
            return random.nextBoolean() ? Extent.CUT : Extent.ERROR_MARK;
        }
        return !headers && now(Untidiness.PADDED_ANSWERS, 0.7) ? Extent.PADDED : Extent.WHOLE;
    }

    private static Answer with(Answer answer, Extent extent) {
        if (answer instanceof Codes c && c.codes().size() <= 2) {
            return new Codes(c.unit(), c.listing(), c.codes(), extent);
        }
        if (answer instanceof Statuses s && (extent == Extent.CUT || extent == Extent.ERROR_MARK)) {
            return new Statuses(s.unit(), s.subfunction(), s.bytes(), extent);
        }
        return answer;
    }
}
