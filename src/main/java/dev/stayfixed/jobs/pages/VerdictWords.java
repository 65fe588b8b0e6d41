package dev.stayfixed.jobs.pages;

import dev.stayfixed.jobs.Standing;
import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.obd.TroubleCode;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.verification.RepairAttempt;
import dev.stayfixed.verification.RepairedFault;
import dev.stayfixed.verification.RuleSet;
import dev.stayfixed.verification.StateName;
import dev.stayfixed.verification.Verification;
import dev.stayfixed.verification.WaysToProve;
import dev.stayfixed.worklist.Attention;
import dev.stayfixed.worklist.OpenJob;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** Verdicts in one sentence. */
public final class VerdictWords {

    private VerdictWords() {}

    /** What a standing means, for whoever asks "is it fixed?". */
    public static Reason sentence(TroubleCode code, MonitorGroup group, Standing standing) {
        Part monitor = WaysToProve.test(code, group);
        Part passes = Part.count(standing.passes().orElse(0));
        Part needed = Part.count(standing.needed());
        return switch (standing.state()) {
            case AWAITING_REPAIR -> Reason.of(VerdictReason.OPEN_FOR_REPAIR, Part.verbatim(code.text()));
            case WAITING_FOR_FIRST_TRIP -> Reason.of(VerdictReason.NOT_PROVEN, monitor, needed);
            case PASSING -> Reason.of(VerdictReason.ON_THE_WAY, monitor, passes, needed);
            case CONFIRMED_FIXED ->
                standing.needed() == 1
                        ? Reason.of(VerdictReason.FIXED_BY_ONE, monitor)
                        : Reason.of(VerdictReason.FIXED, monitor, needed);
            case FAILED_ONCE ->
                Reason.of(standing.comeback() ? VerdictReason.FAILED_AGAIN_ONCE : VerdictReason.DOUBTFUL);
            case RECURRED -> Reason.of(standing.comeback() ? VerdictReason.CAME_BACK : VerdictReason.NOT_FIXED);
        };
    }

    /** What is next in a job, in a few words: the fault that holds it up longest says it. */
    public static Optional<Reason> next(OpenJob job) {
        if (job.attention() == Attention.CONTRADICTORY) {
            return Optional.of(Reason.of(VerdictReason.READ_AGAIN));
        }
        return job.faults().stream()
                .filter(f -> f.standing().state() == mostPressing(job))
                .findFirst()
                .map(VerdictWords::next);
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

    private static Reason next(OpenJob.Line fault) {
        Standing standing = fault.standing();
        Part code = Part.verbatim(fault.code());
        Part monitor = WaysToProve.test(TroubleCode.parse(fault.code()), fault.group());
        return switch (standing.state()) {
            case RECURRED -> Reason.of(VerdictReason.FIND_CAUSE, code);
            case FAILED_ONCE -> Reason.of(VerdictReason.ONE_DRIVE_DECIDES, monitor, code);
            case AWAITING_REPAIR -> Reason.of(VerdictReason.RECORD_REPAIR, code);
            case WAITING_FOR_FIRST_TRIP ->
                Reason.of(VerdictReason.DRIVES_NEEDED, Part.count(standing.needed()), monitor);
            case PASSING ->
                Reason.of(
                        VerdictReason.MORE_DRIVES_NEEDED,
                        Part.count(standing.needed() - standing.passes().orElse(0)),
                        monitor);
            case CONFIRMED_FIXED -> Reason.of(VerdictReason.CLOSE_JOB);
        };
    }

    /** What will prove a repair that is yet to be made, of a vehicle that was read so. */
    public static Reason proof(RepairedFault fault, Optional<Scan> read) {
        RepairAttempt repair = new RepairAttempt("next", Instant.EPOCH, false, read, Optional.empty());
        return new Verification(RuleSet.STANDARD)
                .of(fault, List.of(repair), List.of())
                .next()
                .orElseThrow();
    }
}
