package dev.stayfixed.verification;

import dev.stayfixed.drive.DriveFacts;
import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.drive.DriveRecord.Moment;
import dev.stayfixed.drive.Finding;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Shape;
import dev.stayfixed.verification.DrivingCycles.Link;
import dev.stayfixed.verification.UnitState.Trip;
import dev.stayfixed.verification.VerificationState.Count;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;

/**
 * Carries the histories that fit from record to record through one fault's life. For one thread.
 *
 * <p>Between two records the set widens by what nobody recorded; each reading narrows it. The verdict is what all that are left agree
 * on.
 */
final class AttemptFold {

    private final RepairedFault fault;
    private final RuleSet rules;
    private final Abilities abilities;
    private final TwoTripRule rule;
    private final Count count;
    private final MemoryTrail trail;
    private final Owner owner;
    private final Identity identity;
    private final IgnitionCycles ignitions;
    private Histories histories;
    private int cyclesSinceCounted;
    private int perhapsCycles;
    private Knowledge known = Knowledge.NOTHING;
    private RecordedSince since = RecordedSince.NOTHING;
    private VerificationState state = new VerificationState.AwaitingRepair();
    private List<Verdict.Step> steps = new ArrayList<>();
    private int counted;
    private int cyclesWithoutSimilarConditions;
    private Optional<DriveRecord> last = Optional.empty();
    private boolean cycleIsOpen;
    /** The code was read as not confirmed, since the repair or since that was confirmed fixed. */
    private boolean denied;

    private Optional<Undecided> undecided = Optional.empty();
    private Optional<Reason> remark = Optional.empty();
    private int seen;

    /** A drive whose outcome the next reading may still decide, and where its step stands. */
    private record Undecided(DriveRecord drive, Judgement judgement, int step) {}

    AttemptFold(
            RepairedFault fault,
            RuleSet rules,
            Abilities abilities,
            Owner owner,
            Histories.Asked asked,
            IgnitionCycles ignitions) {
        this.fault = fault;
        this.rules = rules;
        this.abilities = abilities;
        this.rule = new TwoTripRule(fault, abilities);
        this.count = new Count(fault.trips(), fault.requiredPasses());
        this.trail = new MemoryTrail(fault, rules);
        this.owner = owner;
        this.identity = new Identity(owner);
        this.ignitions = ignitions;
        this.histories = Histories.unknown(fault.trips(), asked);
    }

    /**
     * Goes on where another one stands, which stays as it is.
     *
     * @param owner like that one's
     * @param ignitions that say of the drives so far what that one's said
     */
    AttemptFold(AttemptFold before, Owner owner, IgnitionCycles ignitions) {
        this.fault = before.fault;
        this.rules = before.rules;
        this.abilities = before.abilities;
        this.rule = before.rule;
        this.count = before.count;
        this.trail = new MemoryTrail(before.trail);
        this.owner = owner;
        this.identity = new Identity(before.identity, owner);
        this.ignitions = ignitions;
        this.histories = before.histories;
        this.cyclesSinceCounted = before.cyclesSinceCounted;
        this.perhapsCycles = before.perhapsCycles;
        this.known = before.known;
        this.since = before.since;
        this.state = before.state;
        this.steps = new ArrayList<>(before.steps);
        this.counted = before.counted;
        this.cyclesWithoutSimilarConditions = before.cyclesWithoutSimilarConditions;
        this.last = before.last;
        this.cycleIsOpen = before.cycleIsOpen;
        this.denied = before.denied;
        this.undecided = before.undecided;
        this.remark = before.remark;
        this.seen = before.seen;
    }

    /** The place behind the last drive that anything so far rests on, or {@link IgnitionCycles.Room#ALL}. */
    int seen() {
        return seen;
    }

    /** A drive from before the repair: it tells what the control unit has stored, and nothing is scored. */
    void remember(DriveRecord drive) {
        add(drive);
        steps = new ArrayList<>();
        undecided = Optional.empty();
    }

    /**
     * @param notTaken why the clear that was stated at this repair cannot have happened
     * @param next the first drive after it
     */
    void begin(RepairAttempt repair, Optional<Reason> notTaken, Optional<DriveRecord> next) {
        repair.scanBefore().ifPresent(scan -> {
            identity.learn(scan, repair.at());
            readBeforeRepair(scan, beforeScan(scan).orElseGet(() -> atMostBeforeNext(repair.scanAfter(), next)));
        });
        betweenCycles(atMostBeforeNext(repair.scanAfter(), next));
        Optional<Reason> perhapsNot = notTaken.or(() -> perhapsNotTaken(repair));
        if (repair.codesCleared() && notTaken.isEmpty() && perhapsNot.isPresent()) {
            histories = histories.or(histories.afterClear());
        } else if (repair.codesCleared() && notTaken.isEmpty()) {
            forget();
            boolean odometerRead = repair.scanBefore()
                    .filter(scan -> owner.counters(scan).odometer().isPresent())
                    .isPresent();
            known = odometerRead ? known.clearedHere() : known;
        }
        denied = false;
        boolean startedSince = repair.scanAfter()
                .filter(scan -> !DrivingCycles.isAtKeyOn(scan))
                .filter(scan -> DrivingCycles.showsEngine(scan)
                        || beforeScan(scan).filter(room -> !room.allows(1)).isEmpty())
                .isPresent();
        repair.scanAfter().ifPresent(scan -> {
            Scan own = owner.in(scan);
            identity.learn(scan, repair.at());
            if (!known.lossesTo(own, fault).isEmpty() || scan.codesCleared()) {
                forget();
            }
            readAtRest(own);
        });
        histories = histories.afterRepair(repair.codesCleared() && notTaken.isEmpty());
        state = new VerificationState.WaitingForFirstTrip();
        steps = new ArrayList<>();
        counted = 0;
        cyclesWithoutSimilarConditions = 0;
        undecided = Optional.empty();
        last = Optional.empty();
        histories = startedSince ? histories.or(histories.endOfRecorded()) : histories;
        remark = notTaken.map(reason -> Reason.of(StepReason.CLEAR_DID_NOT_TAKE, reason))
                .or(() -> perhapsNot.map(reason -> Reason.of(StepReason.CLEAR_MAY_NOT_HAVE_TAKEN, reason)));
    }

    void add(DriveRecord drive) {
        remark.ifPresent(
                reason -> steps.add(new Verdict.Step.Noted(Verdict.Step.Kind.REMARK, drive.id(), reason, state)));
        remark = Optional.empty();
        Identity.Says identified = identity.of(drive, known);
        if (identified.isForeign()) {
            putAside(drive, identified.reason().orElseThrow());
            return;
        }
        Link link = last.map(before -> ignitions.link(before, drive)).orElse(Link.NEW);
        Unrecorded unrecorded = unrecordedBefore(drive);
        boolean ran = DrivingCycles.engineRan(drive);
        boolean wasDecided = link == Link.SAME && undecided.isEmpty();
        open(drive, link, unrecorded);
        if (identified.isReplaced()) {
            known = known.ofAnotherUnit();
            restart(drive, identified.reason().orElseThrow(), histories.map(UnitState::doubted));
        }
        Knowledge before = known;
        Reader reader = new Reader(drive, ran, link, unrecorded);
        reader.readStart();
        reader.readDrive();
        settle(drive);
        Judgement judgement = ran ? rule.judge(reader.read(before)) : Judgement.withoutDrivingCycle(drive.id());
        score(drive, wasDecided && !judgement.outcome().isFail() ? judgement.ofTheSameCycle() : judgement);
        reader.close();
        last = Optional.of(drive);
        since = drive.scans(Moment.AFTER).isEmpty() ? since.with(drive) : RecordedSince.NOTHING;
    }

    private void open(DriveRecord drive, Link link, Unrecorded unrecorded) {
        if (link == Link.SAME) {
            histories = drive.scans(Moment.BEFORE).isEmpty() ? histories : histories.goingOn();
            return;
        }
        Histories sameCycle = histories;
        betweenCycles(unrecorded);
        if (link == Link.EITHER) {
            goesOn(sameCycle.goingOn(), drive).ifPresent(same -> histories = histories.or(same));
        }
        if (drive.clearedBefore()) {
            restart(
                    drive,
                    Reason.of(StepReason.SAID_CLEARED),
                    histories.afterClear().throughUnrecorded(Unrecorded.ANY));
        }
    }

    /** Whether the engine ran at a scan in the workshop is seldom known: it may have been read in a cycle, or after one. */
    private void readBeforeRepair(Scan scan, Unrecorded before) {
        Scan own = owner.in(scan);
        Optional<Histories> running = DrivingCycles.isAtKeyOn(scan) ? Optional.empty() : readRunning(own, before);
        Optional<Histories> ranOn =
                running.map(cycle -> afterLearning(cycle, own, false).endOfRecorded());
        betweenCycles(before);
        boolean atRest = new Narrowing(fault, known, own, false, denied)
                .explaining(histories)
                .isPresent();
        readAtRest(own);
        histories = ranOn.map(cycle -> atRest ? histories.or(cycle) : cycle).orElse(histories);
    }

    /** That a driving cycle is under way at this scan: the one that was recorded last, or one that nobody did. */
    private Optional<Histories> readRunning(Scan own, Unrecorded before) {
        Optional<Histories> same =
                cycleIsOpen && before.least() == 0 ? Optional.of(histories.goingOn()) : Optional.empty();
        Optional<Histories> another = before.butOne()
                .map(between -> (cycleIsOpen ? histories.endOfRecorded() : histories)
                        .throughUnrecorded(between)
                        .goingOn());
        Optional<Histories> begun =
                same.map(cycle -> another.map(cycle::or).orElse(cycle)).or(() -> another);
        boolean sound = TwoTripRule.contradiction(fault, known, own, List.of()).isEmpty();
        List<MonitorReading> readings = sound && !fault.needsSimilarConditions()
                ? MonitorEvidence.inCycle(fault, known, own).stream()
                        .filter(r -> r.grade().suffices(fault.weakestAccepted()))
                        .toList()
                : List.of();
        for (MonitorReading reading : readings) {
            begun = begun.flatMap(cycle -> cycle.fitting(reading.fits()));
        }
        Narrowing narrowing = new Narrowing(fault, known, own, false, denied);
        return begun.flatMap(narrowing::explaining).map(cycle -> narrowing.by(cycle, readings, sound, true));
    }

    /** By the ignition counter, where it was read there and before. */
    private Optional<Unrecorded> beforeScan(Scan scan) {
        OptionalInt cycles = known.counters().ignitionCyclesTo(owner.counters(scan));
        return cycles.isPresent()
                ? Optional.of(Unrecorded.between(
                        cycles.getAsInt() - cyclesSinceCounted - perhapsCycles, cycles.getAsInt() - cyclesSinceCounted))
                : Optional.empty();
    }

    /** Some of the cycles until the counter is read next. */
    private Unrecorded atMostBeforeNext(Optional<Scan> atRepair, Optional<DriveRecord> next) {
        return atRepair.flatMap(this::beforeScan)
                .or(() -> next.map(this::unrecordedBefore))
                .map(between -> new Unrecorded(0, between.most()))
                .orElse(Unrecorded.ANY);
    }

    /** A lamp that burns right after it: codes were not cleared, or another fault has lit it at once, if no counter tells. */
    private Optional<Reason> perhapsNotTaken(RepairAttempt repair) {
        return repair.scanAfter()
                .filter(scan -> repair.codesCleared() && !scan.codesCleared())
                .map(owner::in)
                .filter(own -> own.isLampSaidToBeOn() && !Counters.read(own).countsSinceTheClear())
                .map(own -> Reason.of(StepReason.LAMP_RIGHT_AFTER_CLEAR));
    }

    private Unrecorded unrecordedBefore(DriveRecord drive) {
        IgnitionCycles.Room room = ignitions.before(drive, known.counters(), cyclesSinceCounted, perhapsCycles);
        seen = Math.max(seen, room.seen());
        return room.cycles();
    }

    private void betweenCycles(Unrecorded unrecorded) {
        histories = (cycleIsOpen ? histories.endOfRecorded() : histories).throughUnrecorded(unrecorded);
        cycleIsOpen = false;
    }

    /** That it is still the cycle before; a first reading that says otherwise rules it out. */
    private Optional<Histories> goesOn(Histories sameCycle, DriveRecord drive) {
        Optional<Histories> left = Optional.of(sameCycle);
        for (Scan scan : drive.scans(Moment.BEFORE)) {
            for (MonitorReading reading : new MonitorEvidence(fault, known, drive).ofThisCycle(owner.in(scan))) {
                left = left.flatMap(histories -> histories.fitting(reading.fits()));
            }
        }
        return left;
    }

    Verdict.Attempt attempt(String repairId) {
        return new Verdict.Attempt(repairId, state, steps);
    }

    CodeMemory memory() {
        return trail.memory(known);
    }

    Optional<Doubt> doubt() {
        return Doubt.of(fault, state, histories, known, abilities, last);
    }

    /** Reads the scans of one record, one after the other. */
    private final class Reader {
        private final DriveRecord drive;
        private final boolean ran;
        private final Link link;
        private final Unrecorded unrecorded;
        private final List<Scan> read = new ArrayList<>();
        private final List<MonitorReading> readings = new ArrayList<>();
        private Optional<Reason> contradiction = Optional.empty();
        private boolean cleared;
        private boolean ended;

        Reader(DriveRecord drive, boolean ran, Link link, Unrecorded unrecorded) {
            this.drive = drive;
            this.ran = ran;
            this.link = link;
            this.unrecorded = unrecorded;
        }

        /** Scans from before the start: they tell what happened since the last record, not what this drive did. */
        void readStart() {
            for (Scan scan : drive.scans(Moment.BEFORE)) {
                Scan own = owner.in(scan);
                List<Reason> losses = known.lossesTo(own, fault);
                if (!losses.isEmpty()) {
                    restart(drive, Shape.EACH.of(losses), clearedUnseen());
                }
                gapBefore(drive, scan, since);
                readAtRest(own);
                settle(drive);
                standAndSay(drive);
                if (scan.codesCleared()) {
                    restart(drive, Reason.of(StepReason.CLEARED_BEFORE), histories.afterClear());
                }
                since = RecordedSince.NOTHING;
            }
        }

        void readDrive() {
            List<Scan> after = drive.scans(Moment.AFTER);
            if (!cycleIsOpen) {
                startedMoreThanOnce(after);
            }
            cyclesSinceCounted += ran && link == Link.NEW ? 1 : 0;
            perhapsCycles += ran && link == Link.EITHER ? 1 : 0;
            cycleIsOpen = cycleIsOpen || ran;
            for (int i = 0; i < after.size(); i++) {
                if (i > 0) {
                    startedAgainBetween(after.get(i - 1), after.get(i));
                }
                readEnd(owner.in(after.get(i)), after.get(i));
            }
            if (after.isEmpty()) {
                withoutScan();
            }
        }

        /** One record may hold several cycles: the ignition counter before and after it tells. */
        private void startedMoreThanOnce(List<Scan> after) {
            List<Scan> before = drive.scans(Moment.BEFORE);
            if (before.isEmpty() || after.isEmpty()) {
                return;
            }
            Scan opening = owner.in(before.get(before.size() - 1));
            Scan first = owner.in(after.get(0));
            boolean onlyAfter =
                    opening.ignitionCycles().isEmpty() && first.ignitionCycles().isPresent();
            DrivingCycles.countedBetween(opening, first)
                    .or(() -> onlyAfter
                            ? unrecorded.most().stream()
                                    .mapToObj(Unrecorded::atMost)
                                    .findFirst()
                            : Optional.empty())
                    .ifPresent(more -> histories = histories.throughUnrecorded(more));
        }

        /** Several scans may hold two cycles: the ignition counter, or a run time that began anew, tells. */
        private void startedAgainBetween(Scan earlier, Scan later) {
            Link inside = DrivingCycles.link(earlier, later);
            if (inside == Link.SAME) {
                return;
            }
            Histories same = histories;
            betweenCycles(DrivingCycles.unrecorded(earlier, later));
            histories = inside == Link.EITHER ? histories.or(same) : histories;
            cycleIsOpen = ran;
        }

        private void readEnd(Scan own, Scan scan) {
            Optional<Reason> impossible = known.counters().contradictionTo(Counters.read(own));
            List<Reason> losses = impossible.isPresent() ? List.of() : known.lossesTo(own, fault);
            if (!losses.isEmpty()) {
                lost(losses);
            }
            gapBefore(drive, scan, since.with(drive));
            boolean atKeyOn = DrivingCycles.isAtKeyOn(scan) || !ran;
            MonitorEvidence evidence = new MonitorEvidence(fault, known, drive);
            List<MonitorReading> found = atKeyOn ? evidence.atKeyOn(own) : evidence.in(own);
            Optional<Reason> doubt = TwoTripRule.contradiction(fault, known, own, found);
            if (ran && !ended) {
                histories = histories.goingOn();
            }
            if (ran && atKeyOn && !ended) {
                histories = histories.endOfRecorded();
                ended = true;
            }
            boolean unsure = doubt.isPresent() || (scan.codesCleared() && !scan.endsWithTheClear());
            List<MonitorReading> counting = found.stream()
                    .filter(r -> !unsure || r.isBad())
                    .filter(r -> doubt.isEmpty() || r.grade() == EvidenceGrade.STATUS_BYTE)
                    .map(this::asItCounts)
                    .toList();
            found.stream().filter(this::tells).forEach(readings::add);
            histories = new Narrowing(fault, known, own, pendingInCycle(), denied)
                    .by(
                            histories,
                            counting,
                            !unsure,
                            similar().filter(f -> !f.isYes()).isEmpty());
            read.add(own);
            contradiction = contradiction.or(() -> doubt);
            if (doubt.isEmpty()) {
                learn(own, atKeyOn);
            }
            if (scan.codesCleared()) {
                cleared = true;
                histories = histories.clearedInCycle(true);
                known = known.cleared();
            }
        }

        /** A clear that shows only at the end of a drive lay before it, or in it: then a failure may hide in front of it. */
        private void lost(List<Reason> losses) {
            boolean inTheDrive = !read.isEmpty() || !drive.scans(Moment.BEFORE).isEmpty();
            cleared = cleared || inTheDrive;
            Histories inCycle = histories.goingOn().clearedInCycle(inTheDrive);
            restart(drive, Shape.EACH.of(losses), inTheDrive ? inCycle : inCycle.or(clearedUnseen()));
        }

        /** Between two cycles, or, where there was one, in the middle of one that had failed before it: that one stays a failed trip. */
        private Histories clearedUnseen() {
            Histories between = histories.afterClear();
            Histories anywhere = unrecorded.allows(1)
                    ? between.or(histories.goingOn().clearedInCycle(false).endOfRecorded())
                    : between;
            return anywhere.throughUnrecorded(sinceTheClear());
        }

        /** The clear lay somewhere among the cycles that nobody recorded; it does not touch the count of ignition cycles. */
        private Unrecorded sinceTheClear() {
            return new Unrecorded(0, unrecorded.most());
        }

        private boolean pendingInCycle() {
            return !ended && read.stream().anyMatch(scan -> scan.pending(fault.code()) == Scan.Presence.PRESENT);
        }

        /** Readiness that every history had complete already says nothing of this drive. */
        private boolean tells(MonitorReading reading) {
            return reading.grade() != EvidenceGrade.READINESS || !histories.all(reading.fits());
        }

        /** Only evidence that the shop accepts counts, and a pass only under similar conditions where this fault needs them. */
        private MonitorReading asItCounts(MonitorReading reading) {
            if (!reading.ran()) {
                return reading;
            }
            boolean accepted = reading.grade().suffices(fault.weakestAccepted());
            if (accepted && similar().filter(finding -> !finding.isYes()).isEmpty()) {
                return reading;
            }
            return reading.says() == MonitorReading.Says.RAN_AND_PASSED && reading.grade() == EvidenceGrade.STATUS_BYTE
                    ? reading.leaving(state -> state.cycle() != Trip.FAILED)
                    : reading.leaving(state -> true);
        }

        private void withoutScan() {
            histories = ran ? histories.goingOn() : histories;
            readings.addAll(new MonitorEvidence(fault, known, drive).withoutScan());
            for (MonitorReading reading : readings) {
                histories = histories.fitting(asItCounts(reading).fits()).orElse(histories);
            }
            lampSeen();
        }

        /** The first failure of a one-trip fault lights the MIL, so a driver who saw it off saw no failure. */
        private void lampSeen() {
            boolean off = drive.summary().milOn().filter(on -> !on).isPresent();
            if (off && fault.trips() == Trips.ONE) {
                histories =
                        histories.fitting(state -> state.cycle() != Trip.FAILED).orElse(histories);
            }
        }

        TwoTripRule.Read read(Knowledge before) {
            lampSeen();
            List<MonitorReading> ordered = readings.stream()
                    .distinct()
                    .sorted(java.util.Comparator.comparing(MonitorReading::grade))
                    .toList();
            return new TwoTripRule.Read(
                    drive,
                    before,
                    read,
                    ordered,
                    histories.plainest(),
                    result(),
                    contradiction,
                    cleared,
                    link,
                    similar());
        }

        private Function<UnitState, Trip> result() {
            return ended ? UnitState::previous : UnitState::trip;
        }

        private Optional<Finding> similar() {
            if (!fault.needsSimilarConditions()) {
                return Optional.empty();
            }
            int cycles = cyclesWithoutSimilarConditions + 1;
            Finding found = new SimilarConditions(rules).metIn(drive.summary(), fault.freezeFrame());
            return Optional.of(
                    !found.isYes() && cycles >= rules.cyclesWithoutSimilarConditions()
                            ? Finding.yes(Reason.of(TripReason.CYCLES_WITHOUT, Part.count(cycles)))
                            : found);
        }

        void close() {
            cycleIsOpen = cycleIsOpen && !ended;
            if (drive.scans(Moment.AFTER).stream().anyMatch(Scan::codesCleared)) {
                Knowledge sinceThen = known;
                restart(drive, Reason.of(StepReason.CLEARED_AT_END), histories);
                known = sinceThen;
                trail.read(known);
            }
        }
    }

    /** A scan with no driving cycle under way. */
    private void readAtRest(Scan own) {
        boolean sound = TwoTripRule.contradiction(fault, known, own, List.of()).isEmpty();
        List<MonitorReading> readings = MonitorEvidence.atRest(fault, known, own).stream()
                .filter(r -> r.grade().suffices(fault.weakestAccepted()))
                .toList();
        histories = new Narrowing(fault, known, own, false, denied)
                .by(histories, sound ? readings : List.of(), sound, true);
        if (sound) {
            learn(own, true);
        }
    }

    private static Histories afterLearning(Histories histories, Scan own, boolean atKeyOn) {
        return histories.map(state -> {
            UnitState.Tally tally = own.inUse().isPresent() ? state.tally().numeratorRead() : state.tally();
            return state.with(own.testResults().isEmpty() || atKeyOn ? tally : tally.resultRead());
        });
    }

    private void learn(Scan own, boolean atKeyOn) {
        histories = afterLearning(histories, own, atKeyOn);
        boolean cyclesRead = own.ignitionCycles().isPresent();
        cyclesSinceCounted = cyclesRead ? 0 : cyclesSinceCounted;
        perhapsCycles = cyclesRead ? 0 : perhapsCycles;
        known = known.after(own, fault);
        denied = denied || own.confirmed(fault.code()) == Scan.Presence.ABSENT;
        trail.read(known);
    }

    /** Where no history is left without a trip that nobody recorded, that trip is certain, and is said. */
    private void settle(DriveRecord drive) {
        decideTheOneBefore();
        int certain = histories.fewestGuesses();
        if (certain == 0) {
            return;
        }
        Histories likely = histories.plainest();
        boolean failed = likely.all(s -> s.unseen() == Trip.FAILED);
        boolean passed = likely.all(s -> s.unseen() == Trip.PASSED);
        histories = histories.map(state -> state.withFewerGuesses(certain));
        if (failed) {
            counted = 0;
            trail.failedUnseen();
            stand(drive.start());
            steps.add(new Verdict.Step.Noted(Verdict.Step.Kind.UNSEEN_FAILURE, drive.id(), unseenFailure(), state));
        } else if (passed) {
            counted++;
            trail.passedAfterAll();
            stand(drive.start());
            steps.add(new Verdict.Step.Noted(
                    Verdict.Step.Kind.UNSEEN_PASS,
                    drive.id(),
                    Reason.of(StepReason.UNSEEN_PASS, Part.verbatim(fault.code().text())),
                    state));
        } else {
            standAndSay(drive);
        }
    }

    /** A reading may move the count by what it says of the drives before it. */
    private void standAndSay(DriveRecord drive) {
        VerificationState before = state;
        stand(drive.start());
        if (!state.equals(before)) {
            steps.add(new Verdict.Step.Noted(
                    Verdict.Step.Kind.REMARK, drive.id(), Reason.of(StepReason.LEAVES_ONLY, state.said()), state));
        }
    }

    private Reason unseenFailure() {
        StepReason what = known.confirmed() == Scan.Presence.PRESENT
                ? StepReason.UNSEEN_FAILURE_CONFIRMED
                : known.pending() == Scan.Presence.PRESENT
                        ? StepReason.UNSEEN_FAILURE_PENDING
                        : StepReason.UNSEEN_FAILURE_MARKED;
        return Reason.of(what, Part.verbatim(fault.code().text()));
    }

    /** A drive that was left open, and that this reading decides. */
    private void decideTheOneBefore() {
        Optional<Undecided> open =
                undecided.filter(u -> last.filter(u.drive()::equals).isPresent());
        Optional<Trip> trip = histories.agreed(UnitState::previous).filter(t -> t != Trip.NOT_RUN);
        if (open.isEmpty() || trip.isEmpty() || cycleIsOpen) {
            return;
        }
        Verdict.Step was = steps.get(open.get().step());
        Judgement decided = open.get().judgement().decidedLater(trip.get());
        counted = trip.get() == Trip.PASSED ? counted + 1 : 0;
        if (trip.get() == Trip.PASSED) {
            trail.passedAfterAll();
        } else {
            trail.failedUnseen();
        }
        steps.set(open.get().step(), new Verdict.Step.Judged(was.driveId(), decided, was.after()));
        undecided = Optional.empty();
    }

    private void score(DriveRecord drive, Judgement judgement) {
        Outcome outcome = judgement.outcome();
        counted = outcome == Outcome.PASSED ? counted + 1 : outcome.isFail() ? 0 : counted;
        boolean scored = outcome == Outcome.PASSED || outcome.isFail();
        cyclesWithoutSimilarConditions =
                scored ? 0 : cyclesWithoutSimilarConditions + (outcome == Outcome.RAN_UNPROVEN ? 1 : 0);
        trail.add(judgement, DriveFacts.of(drive.summary(), fault.ignition(), rules.drive()));
        if (scored) {
            stand(drive.start());
        } else {
            standAndSay(drive);
        }
        steps.add(new Verdict.Step.Judged(drive.id(), judgement, state));
        undecided = scored ? Optional.empty() : Optional.of(new Undecided(drive, judgement, steps.size() - 1));
    }

    private void stand(Instant when) {
        VerificationState now = state.given(histories, count, counted, when);
        if (now.name() == StateName.CONFIRMED_FIXED && state.name() != StateName.CONFIRMED_FIXED) {
            histories = histories.map(UnitState::standing);
            denied = false;
        }
        state = now;
    }

    private void putAside(DriveRecord drive, Reason reason) {
        Judgement judgement =
                new Judgement(drive.id(), Outcome.CONTRADICTORY, reason, List.of(Evidence.record(reason)));
        trail.add(judgement, DriveFacts.of(drive.summary(), fault.ignition(), rules.drive()));
        steps.add(new Verdict.Step.Judged(drive.id(), judgement, state));
        since = since.with(drive);
    }

    private void gapBefore(DriveRecord drive, Scan scan, RecordedSince recorded) {
        recorded.gap(known.counters(), Counters.read(scan))
                .ifPresent(
                        reason -> steps.add(new Verdict.Step.Noted(Verdict.Step.Kind.GAP, drive.id(), reason, state)));
    }

    private void restart(DriveRecord drive, Reason reason, Histories after) {
        forget();
        histories = after;
        counted = 0;
        cyclesWithoutSimilarConditions = 0;
        state = state.restarted();
        steps.add(new Verdict.Step.Noted(Verdict.Step.Kind.RESTARTED, drive.id(), reason, state));
    }

    private void forget() {
        undecided = Optional.empty();
        histories = histories.afterClear();
        known = known.cleared();
        since = RecordedSince.NOTHING;
        trail.cleared();
    }
}
