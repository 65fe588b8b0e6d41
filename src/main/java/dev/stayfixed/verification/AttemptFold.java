package dev.stayfixed.verification;

import dev.stayfixed.drive.DriveFacts;
import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.drive.DriveRecord.Moment;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.obd.Scan.Presence;
import dev.stayfixed.obd.StatusByte;
import dev.stayfixed.verification.TwoTripRule.Unseen.Left;
import dev.stayfixed.verification.VerificationState.Count;
import dev.stayfixed.verification.VerificationState.FailedOnce;
import dev.stayfixed.verification.VerificationState.WaitingForFirstTrip;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Carries what is known from drive to drive through one fault's history. Used once, by one thread. */
final class AttemptFold {

    private final RepairedFault fault;
    private final RuleSet rules;
    private final TwoTripRule rule;
    private final Count count;
    private final MemoryTrail trail;
    private Knowledge known = Knowledge.NOTHING;
    private RecordedSince since = RecordedSince.NOTHING;
    private VerificationState state = new VerificationState.AwaitingRepair();
    private List<Verdict.Step> steps = new ArrayList<>();
    private int cyclesWithoutSimilarConditions;
    private Optional<Open> open = Optional.empty();

    /** A drive that only the next start can decide, and where its step stands. */
    private record Open(DriveRecord drive, int step, Judgement onceErased) {}

    AttemptFold(RepairedFault fault, RuleSet rules) {
        this.fault = fault;
        this.rules = rules;
        this.rule = new TwoTripRule(rules);
        this.count = new Count(fault.trips(), fault.requiredPasses());
        this.trail = new MemoryTrail(fault, rules);
    }

    /** A drive from before the repair: nothing is scored. */
    void remember(DriveRecord drive) {
        Stream.of(Moment.BEFORE, Moment.AFTER)
                .flatMap(moment -> drive.scans(moment).stream())
                .forEach(this::learn);
    }

    void begin(RepairAttempt repair) {
        state = new WaitingForFirstTrip();
        steps = new ArrayList<>();
        cyclesWithoutSimilarConditions = 0;
        open = Optional.empty();
        repair.scanBefore().ifPresent(this::learn);
        if (repair.codesCleared()) {
            forget();
        }
        repair.scanAfter().ifPresent(scan -> {
            if (!known.lossesTo(scan, fault).isEmpty()) {
                forget();
            }
            learn(scan);
        });
    }

    void add(DriveRecord drive) {
        if (drive.clearedBefore()) {
            restart(
                    drive,
                    "the person who recorded it says that codes were cleared or the battery was disconnected before it");
        }
        for (Scan scan : drive.scans(Moment.BEFORE)) {
            startOf(drive, scan);
        }
        List<Scan> after = drive.scans(Moment.AFTER);
        boolean sound =
                after.stream().allMatch(s -> TwoTripRule.contradiction(known, s).isEmpty());
        boolean clearedDuring = sound && after.stream().anyMatch(scan -> lossBefore(drive, scan));
        TwoTripRule.Decision decision = decide(drive, after, clearedDuring);
        if (sound) {
            after.forEach(scan -> gapBefore(drive, scan, since.with(drive)));
        }
        decision.unseen().ifPresent(unseen -> unseenFailure(drive, unseen));
        score(drive, decision.judgement());
        open = decision.onceErased().map(passed -> new Open(drive, steps.size() - 1, passed));
        if (sound) {
            after.forEach(this::learn);
            forgetBaselines(decision.judgement(), after);
            if (after.stream().anyMatch(Scan::codesCleared)) {
                restart(drive, "codes were cleared in the scan that ended this drive");
            }
        }
        since = after.isEmpty() || !sound ? since.with(drive) : RecordedSince.NOTHING;
    }

    Verdict.Attempt attempt(String repairId) {
        return new Verdict.Attempt(repairId, state, steps);
    }

    CodeMemory memory() {
        return trail.memory(known);
    }

    /** Scans from before the start: they tell what happened since the last record, not what this drive did. */
    private void startOf(DriveRecord drive, Scan scan) {
        if (TwoTripRule.contradiction(known, scan).isPresent()) {
            return;
        }
        List<String> losses = known.lossesTo(scan, fault);
        if (!losses.isEmpty()) {
            restart(drive, String.join("; ", losses));
        }
        open.filter(o -> wasErasedByTheCar(scan)).ifPresent(this::passedAfterAll);
        gapBefore(drive, scan, since);
        if (came(known.confirmed(), scan.confirmed(fault.code()))) {
            unseenFailure(drive, beforeTheStart("confirmed", Left.CONFIRMED_CODE));
        } else if (came(known.pending(), scan.pending(fault.code()))) {
            unseenFailure(drive, beforeTheStart("pending", Left.PENDING_CODE));
        } else if (known.knownNotFailedSinceClear()
                && known.statusIn(scan, fault)
                        .filter(StatusByte::failedSinceClear)
                        .isPresent()) {
            unseenFailure(drive, beforeTheStart("marked failed since the clear", Left.MARK_ONLY));
        } else if (state instanceof FailedOnce
                && known.pending() == Presence.PRESENT
                && scan.pending(fault.code()) == Presence.ABSENT) {
            restartCount(drive, "the pending code was erased by the car: a trip that nobody recorded passed");
        }
        learn(scan);
        if (scan.codesCleared()) {
            restart(drive, "codes were cleared in the scan before this drive");
        }
        since = RecordedSince.NOTHING;
    }

    private boolean wasErasedByTheCar(Scan scan) {
        return known.pending() == Presence.PRESENT
                && scan.pending(fault.code()) == Presence.ABSENT
                && known.counters().leaveNoDriveTo(Counters.read(scan));
    }

    private void passedAfterAll(Open drive) {
        state = state.passed(count, drive.drive().start());
        trail.passedAfterAll();
        steps.set(drive.step(), new Verdict.Step.Judged(drive.drive().id(), drive.onceErased(), state));
        open = Optional.empty();
    }

    private TwoTripRule.Unseen beforeTheStart(String what, Left left) {
        return new TwoTripRule.Unseen(fault.code().text() + " was " + what + " before this drive began", left);
    }

    private static boolean came(Presence before, Presence now) {
        return before == Presence.ABSENT && now == Presence.PRESENT;
    }

    /** Restarts the count where memory was lost, and says whether it was lost in the middle of this drive. */
    private boolean lossBefore(DriveRecord drive, Scan scan) {
        List<String> losses = known.lossesTo(scan, fault);
        if (losses.isEmpty()) {
            return false;
        }
        restart(drive, String.join("; ", losses));
        return !drive.scans(Moment.BEFORE).isEmpty();
    }

    /** Several scans of one drive: a fail in any is a fail, and a record that contradicts itself scores nothing. */
    private TwoTripRule.Decision decide(DriveRecord drive, List<Scan> after, boolean clearedDuring) {
        TwoTripRule.Setting setting = new TwoTripRule.Setting(known, clearedDuring, cyclesWithoutSimilarConditions);
        return after.stream()
                .map(scan -> rule.judge(fault, setting, drive, scan))
                .min(Comparator.comparingInt(
                        decision -> weight(decision.judgement().outcome())))
                .orElseGet(() -> rule.judgeWithoutScan(fault, setting, drive));
    }

    private static int weight(Outcome outcome) {
        return switch (outcome) {
            case CONTRADICTORY -> 0;
            case FAILED_CONFIRMED -> 1;
            case FAILED -> 2;
            case PASSED -> 3;
            case RAN_UNPROVEN -> 4;
            case CARRIED_OVER -> 5;
            case DID_NOT_RUN -> 6;
        };
    }

    private void score(DriveRecord drive, Judgement judgement) {
        state = switch (judgement.outcome()) {
            case PASSED -> state.passed(count, drive.start());
            case FAILED -> state.failed(count, drive.start(), false);
            case FAILED_CONFIRMED -> state.failed(count, drive.start(), true);
            case DID_NOT_RUN, RAN_UNPROVEN, CARRIED_OVER, CONTRADICTORY -> state;
        };
        boolean scored =
                judgement.outcome() == Outcome.PASSED || judgement.outcome().isFail();
        cyclesWithoutSimilarConditions =
                scored ? 0 : cyclesWithoutSimilarConditions + (judgement.outcome() == Outcome.RAN_UNPROVEN ? 1 : 0);
        trail.add(judgement, DriveFacts.of(drive.summary(), fault.ignition(), rules.drive()));
        steps.add(new Verdict.Step.Judged(drive.id(), judgement, state));
    }

    private void unseenFailure(DriveRecord drive, TwoTripRule.Unseen unseen) {
        state = state.failed(count, drive.start(), unseen.left() == Left.CONFIRMED_CODE);
        if (unseen.left() == Left.MARK_ONLY) {
            state = state.restarted();
        }
        trail.failedUnseen();
        steps.add(new Verdict.Step.UnseenFailure(drive.id(), unseen.reason(), state));
    }

    private void gapBefore(DriveRecord drive, Scan scan, RecordedSince recorded) {
        recorded.gap(known.counters(), Counters.read(scan))
                .ifPresent(reason -> steps.add(new Verdict.Step.Gap(drive.id(), reason, state)));
    }

    private void restart(DriveRecord drive, String reason) {
        forget();
        restartCount(drive, reason);
    }

    private void restartCount(DriveRecord drive, String reason) {
        state = state.restarted();
        cyclesWithoutSimilarConditions = 0;
        steps.add(new Verdict.Step.Restarted(drive.id(), reason, state));
    }

    private void forget() {
        open = Optional.empty();
        known = known.cleared();
        since = RecordedSince.NOTHING;
        trail.cleared();
    }

    private void learn(Scan scan) {
        known = known.after(scan, fault);
        trail.read(known);
    }

    private void forgetBaselines(Judgement judgement, List<Scan> after) {
        if (judgement.outcome() == Outcome.PASSED || judgement.outcome().isFail()) {
            known = known.scored(
                    after.stream().anyMatch(s -> s.sinceClear().isPresent()),
                    after.stream().anyMatch(s -> s.inUse().isPresent()),
                    after.stream().anyMatch(s -> !s.testResults().isEmpty()));
        }
    }
}
