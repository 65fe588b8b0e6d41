package dev.stayfixed.jobs.pages;

import dev.stayfixed.jobs.Standing;
import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.obd.TroubleCode;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.verification.RepairAttempt;
import dev.stayfixed.verification.RepairedFault;
import dev.stayfixed.verification.RuleSet;
import dev.stayfixed.verification.StateName;
import dev.stayfixed.verification.Verification;
import dev.stayfixed.verification.WaysToProve;
import dev.stayfixed.wording.Wording;
import dev.stayfixed.worklist.OpenJob;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** Verdicts in one sentence. */
public final class VerdictWords {

    private VerdictWords() {}

    /** What a standing means, for whoever asks "is it fixed?". */
    public static String sentence(TroubleCode code, MonitorGroup group, Standing standing) {
        String monitor = Wording.METRIC.words(WaysToProve.test(code, group));
        int passes = standing.passes().orElse(0);
        int needed = standing.needed();
        return switch (standing.state()) {
            case AWAITING_REPAIR ->
                "%s is open: no repair is recorded yet, so no drive counts for it.".formatted(code.text());
            case WAITING_FOR_FIRST_TRIP ->
                "Not proven yet: %s has not run since the repair; %s needed.".formatted(monitor, cleanTrips(needed));
            case PASSING ->
                "On the way: %s ran and passed on %d of %d clean trips in a row.".formatted(monitor, passes, needed);
            case CONFIRMED_FIXED ->
                "Confirmed fixed: %s ran and passed on %s."
                        .formatted(monitor, needed == 1 ? "the one trip it needs" : needed + " trips in a row");
            case FAILED_ONCE ->
                standing.comeback()
                        ? "Came back: it failed on one trip after it was confirmed fixed; the next trip decides."
                        : "Doubtful: it failed on one trip; if the next trip fails too, the fault is back.";
            case RECURRED ->
                standing.comeback()
                        ? "Came back: the fault failed again after it was confirmed fixed."
                        : "Not fixed: the fault is back after this repair.";
        };
    }

    private static String cleanTrips(int needed) {
        return needed == 1 ? "one clean trip is" : needed + " clean trips in a row are";
    }

    /** What is next in a job, in a few words: the fault that holds it up longest says it. */
    public static String next(OpenJob job) {
        return job.faults().stream()
                .filter(f -> f.standing().state() == mostPressing(job))
                .findFirst()
                .map(VerdictWords::next)
                .orElse("");
    }

    private static StateName mostPressing(OpenJob job) {
        List<StateName> order = List.of(
                StateName.RECURRED,
                StateName.FAILED_ONCE,
                StateName.AWAITING_REPAIR,
                StateName.WAITING_FOR_FIRST_TRIP,
                StateName.PASSING,
                StateName.CONFIRMED_FIXED);
        return order.stream()
                .filter(state ->
                        job.faults().stream().anyMatch(f -> f.standing().state() == state))
                .findFirst()
                .orElse(StateName.CONFIRMED_FIXED);
    }

    private static String next(OpenJob.Line fault) {
        Standing standing = fault.standing();
        String run = "with " + Wording.METRIC.words(WaysToProve.test(TroubleCode.parse(fault.code()), fault.group()))
                + " run";
        return switch (standing.state()) {
            case RECURRED -> "Find the cause; record the next repair of " + fault.code() + ".";
            case FAILED_ONCE -> "One drive " + run + " decides on " + fault.code() + ".";
            case AWAITING_REPAIR -> "Record the repair of " + fault.code() + ".";
            case WAITING_FOR_FIRST_TRIP -> drives(standing.needed()) + " " + run + ".";
            case PASSING -> moreDrives(standing.needed() - standing.passes().orElse(0)) + " " + run + ".";
            case CONFIRMED_FIXED -> "Close the job.";
        };
    }

    private static String moreDrives(int count) {
        return count == 1 ? "1 more drive" : count + " more drives";
    }

    private static String drives(int count) {
        return count == 1 ? "1 drive" : count + " drives";
    }

    /** What will prove a repair that is yet to be made. */
    public static Reason proof(RepairedFault fault) {
        RepairAttempt repair = new RepairAttempt("next", Instant.EPOCH, false, Optional.empty(), Optional.empty());
        return new Verification(RuleSet.STANDARD)
                .of(fault, List.of(repair), List.of())
                .next()
                .orElseThrow();
    }
}
