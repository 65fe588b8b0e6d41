package dev.stayfixed.verification;

import dev.stayfixed.drive.DriveFacts;
import dev.stayfixed.obd.Scan.Presence;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Quantity;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Unit;
import java.util.Optional;

/**
 * Follows what the car still shows: MIL, confirmed code and permanent code, by 13 CCR 1968.2 (d)(2.2), (d)(2.3) and (d)(2.5). Used
 * once, by one thread.
 */
final class MemoryTrail {

    /** Makers differ whether it ends with the last passed trip or at the start of the next, so the next start is named. */
    private static final Reason SHOULD_BE_GONE = Reason.of(MemoryReason.SHOULD_BE_GONE);

    private final RepairedFault fault;
    private final RuleSet rules;
    private int passesInARow;
    private int warmUpsWithoutMil;
    private boolean milOff;
    private boolean clearedSinceFail;
    private boolean passedSinceClear;
    private boolean minimumCycleSinceClear;

    MemoryTrail(RepairedFault fault, RuleSet rules) {
        this.fault = fault;
        this.rules = rules;
    }

    MemoryTrail(MemoryTrail before) {
        this(before.fault, before.rules);
        passesInARow = before.passesInARow;
        warmUpsWithoutMil = before.warmUpsWithoutMil;
        milOff = before.milOff;
        clearedSinceFail = before.clearedSinceFail;
        passedSinceClear = before.passedSinceClear;
        minimumCycleSinceClear = before.minimumCycleSinceClear;
    }

    void add(Judgement judgement, DriveFacts facts) {
        switch (judgement.outcome()) {
            case PASSED -> passesInARow++;
            case FAILED, FAILED_CONFIRMED -> failedUnseen();
            case DID_NOT_RUN, RAN_UNPROVEN, CARRIED_OVER, CONTRADICTORY -> {
                if (rules.unmonitoredBreaksMilOff()) {
                    passesInARow = 0;
                }
            }
        }
        if (milOff && facts.warmUpCycle().isYes()) {
            warmUpsWithoutMil++;
        }
        followPermanent(judgement.outcome(), facts.minimumCycle().isYes());
    }

    /** A drive that had been left open turned out to have passed. */
    void passedAfterAll() {
        passesInARow++;
        passedSinceClear = true;
    }

    void failedUnseen() {
        passesInARow = 0;
        warmUpsWithoutMil = 0;
        passedSinceClear = false;
        minimumCycleSinceClear = false;
    }

    void cleared() {
        passesInARow = 0;
        warmUpsWithoutMil = 0;
        clearedSinceFail = true;
        passedSinceClear = false;
        minimumCycleSinceClear = false;
    }

    void read(Knowledge known) {
        milOff = known.mil().filter(on -> !on).isPresent();
        if (!milOff) {
            warmUpsWithoutMil = 0;
        }
        if (known.confirmed() == Presence.PRESENT) {
            clearedSinceFail = false;
        }
    }

    CodeMemory memory(Knowledge known) {
        return new CodeMemory(mil(known), confirmedCode(known), permanentCode(known));
    }

    /** A monitor without a minimum ratio needs the minimum-conditions cycle beside its pass (1968.2 (d)(2.5.2)). */
    private void followPermanent(Outcome outcome, boolean minimumCycle) {
        boolean passed = outcome == Outcome.PASSED;
        if (rules.permanentNeedsOneDrive() && !fault.group().hasMinimumRatio()) {
            passedSinceClear |= passed && minimumCycle;
            minimumCycleSinceClear |= passed && minimumCycle;
            return;
        }
        passedSinceClear |= passed;
        minimumCycleSinceClear |= minimumCycle && !outcome.isFail();
    }

    private CodeMemory.Line mil(Knowledge known) {
        return known.mil()
                .map(on -> on
                        ? new CodeMemory.Line(Optional.of(true), milEnds())
                        : new CodeMemory.Line(Optional.of(false), Reason.of(MemoryReason.MIL_OFF)))
                .orElseGet(() -> new CodeMemory.Line(Optional.empty(), Reason.of(MemoryReason.MIL_UNREAD)));
    }

    private Reason milEnds() {
        return passesInARow >= rules.milOffPasses()
                ? Reason.of(MemoryReason.MIL_WAS_ON, SHOULD_BE_GONE)
                : Reason.of(MemoryReason.MIL_ON, Part.count(rules.milOffPasses()), Part.count(passesInARow));
    }

    private CodeMemory.Line confirmedCode(Knowledge known) {
        Part code = Part.verbatim(fault.code().text());
        return switch (known.confirmed()) {
            case ABSENT -> new CodeMemory.Line(Optional.of(false), Reason.of(MemoryReason.NOT_CONFIRMED, code));
            case UNKNOWN -> new CodeMemory.Line(Optional.empty(), Reason.of(MemoryReason.CONFIRMED_UNREAD));
            case PRESENT ->
                new CodeMemory.Line(Optional.of(true), Reason.of(MemoryReason.CONFIRMED, code, confirmedEnds()));
        };
    }

    private Reason confirmedEnds() {
        if (!milOff) {
            return Reason.of(MemoryReason.UNTIL_MIL_OFF, Part.count(rules.erasureWarmUps()));
        }
        return warmUpsWithoutMil >= rules.erasureWarmUps()
                ? SHOULD_BE_GONE
                : Reason.of(
                        MemoryReason.ERASED_AFTER, Part.count(rules.erasureWarmUps()), Part.count(warmUpsWithoutMil));
    }

    private CodeMemory.Line permanentCode(Knowledge known) {
        Part code = Part.verbatim(fault.code().text());
        return switch (known.permanent()) {
            case ABSENT -> new CodeMemory.Line(Optional.of(false), Reason.of(MemoryReason.NOT_PERMANENT, code));
            case UNKNOWN -> new CodeMemory.Line(Optional.empty(), Reason.of(MemoryReason.PERMANENT_UNREAD));
            case PRESENT ->
                new CodeMemory.Line(Optional.of(true), Reason.of(MemoryReason.PERMANENT, code, permanentEnds()));
        };
    }

    private Reason permanentEnds() {
        if (!clearedSinceFail && passesInARow >= rules.milOffPasses()) {
            return SHOULD_BE_GONE;
        }
        if (!clearedSinceFail) {
            return Reason.of(MemoryReason.UNTIL_MIL_OUT, Part.count(passesInARow), Part.count(rules.milOffPasses()));
        }
        boolean needsMinimumCycle = !fault.group().hasMinimumRatio();
        if (passedSinceClear && (!needsMinimumCycle || minimumCycleSinceClear)) {
            return SHOULD_BE_GONE;
        }
        MemoryReason pass = passedSinceClear ? MemoryReason.PASS_SEEN : MemoryReason.PASS_NOT_SEEN;
        return needsMinimumCycle
                ? Reason.of(MemoryReason.AFTER_CLEAR_BOTH, pass, minimumDrive())
                : Reason.of(MemoryReason.AFTER_CLEAR_PASS, pass);
    }

    private Reason minimumDrive() {
        return Reason.of(
                minimumCycleSinceClear ? MemoryReason.DRIVE_SEEN : MemoryReason.DRIVE_NOT_SEEN,
                Quantity.whole(rules.drive().minimumRunTime(), Unit.SECOND),
                Quantity.whole(rules.drive().minimumFastTime(), Unit.SECOND),
                Quantity.whole(rules.drive().minimumIdle(), Unit.SECOND));
    }
}
