package dev.stayfixed.verification;

import dev.stayfixed.drive.DriveFacts;
import dev.stayfixed.obd.Scan.Presence;
import java.util.Optional;

/**
 * Follows what the car still shows: MIL, confirmed code and permanent code, by 13 CCR 1968.2 (d)(2.2), (d)(2.3) and (d)(2.5). Used
 * once, by one thread.
 */
final class MemoryTrail {

    /** Makers differ whether it ends with the last passed trip or at the start of the next, so the next start is named. */
    private static final String SHOULD_BE_GONE =
            "What the car needs to end it has happened; a scan after the next start should show it gone.";

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
                        : new CodeMemory.Line(Optional.of(false), "The MIL is off."))
                .orElseGet(() -> new CodeMemory.Line(
                        Optional.empty(), "No scan has read whether the MIL is commanded on (PID $01)."));
    }

    private String milEnds() {
        return passesInARow >= rules.milOffPasses()
                ? "The MIL was on at the last scan. %s".formatted(SHOULD_BE_GONE)
                : "The MIL is on. The car turns it off after %d passed trips in a row: %d seen so far."
                        .formatted(rules.milOffPasses(), passesInARow);
    }

    private CodeMemory.Line confirmedCode(Knowledge known) {
        String code = fault.code().text();
        return switch (known.confirmed()) {
            case ABSENT -> new CodeMemory.Line(Optional.of(false), code + " is not stored as a confirmed code.");
            case UNKNOWN ->
                new CodeMemory.Line(Optional.empty(), "No scan has read the confirmed codes (service $03).");
            case PRESENT -> new CodeMemory.Line(Optional.of(true), code + " is stored. " + confirmedEnds());
        };
    }

    private String confirmedEnds() {
        if (!milOff) {
            return "It stays until the MIL is off and %d warm-up cycles have passed.".formatted(rules.erasureWarmUps());
        }
        return warmUpsWithoutMil >= rules.erasureWarmUps()
                ? SHOULD_BE_GONE
                : "The car erases it after %d warm-up cycles with the MIL off: at least %d seen so far."
                        .formatted(rules.erasureWarmUps(), warmUpsWithoutMil);
    }

    private CodeMemory.Line permanentCode(Knowledge known) {
        String code = fault.code().text();
        return switch (known.permanent()) {
            case ABSENT -> new CodeMemory.Line(Optional.of(false), code + " is not stored as a permanent code.");
            case UNKNOWN ->
                new CodeMemory.Line(Optional.empty(), "No scan has read the permanent codes (service $0A).");
            case PRESENT ->
                new CodeMemory.Line(Optional.of(true), code + " is stored as a permanent code. " + permanentEnds());
        };
    }

    private String permanentEnds() {
        if (!clearedSinceFail && passesInARow >= rules.milOffPasses()) {
            return SHOULD_BE_GONE;
        }
        if (!clearedSinceFail) {
            return "Codes were not cleared, so it ends when the car turns the MIL off by itself: %d of %d passed trips in a row."
                    .formatted(passesInARow, rules.milOffPasses());
        }
        boolean needsMinimumCycle = !fault.group().hasMinimumRatio();
        if (passedSinceClear && (!needsMinimumCycle || minimumCycleSinceClear)) {
            return SHOULD_BE_GONE;
        }
        String pass = passedSinceClear ? "a passed trip (seen)" : "a passed trip (not yet seen)";
        String minimum = minimumCycleSinceClear ? " (seen)" : " (not yet seen)";
        return needsMinimumCycle
                ? "After the clear the car needs %s and one drive of %.0f s with %.0f s at 25 mph (40 km/h) or more and %.0f s of unbroken idle%s."
                        .formatted(
                                pass,
                                rules.drive().minimumRunTime(),
                                rules.drive().minimumFastTime(),
                                rules.drive().minimumIdle(),
                                minimum)
                : "After the clear the car needs " + pass + ".";
    }
}
