package dev.stayfixed.verification;

import dev.stayfixed.reason.Reason;
import java.util.List;
import java.util.Optional;

/**
 * Where one repaired fault stands, and why.
 *
 * @param state of the latest repair attempt
 * @param attempts every attempt in the order of time, the latest last; each with its own count
 * @param memory what the driver and an inspection will see beside the verdict
 * @param next what the next drive must bring; empty once decided
 * @param doubt a history that still fits and would be bad; empty once decided
 * @param ruleSet id of the rule set that judged
 */
public record Verdict(
        VerificationState state,
        List<Attempt> attempts,
        CodeMemory memory,
        Optional<Reason> next,
        Optional<Doubt> doubt,
        String ruleSet) {

    public Verdict {
        attempts = List.copyOf(attempts);
    }

    /**
     * One repair attempt.
     *
     * @param repairId as in the repair's record
     * @param steps in the order of time
     */
    public record Attempt(String repairId, VerificationState state, List<Step> steps) {
        public Attempt {
            steps = List.copyOf(steps);
        }

        public List<Judgement> judgements() {
            return steps.stream()
                    .filter(Step.Judged.class::isInstance)
                    .map(s -> ((Step.Judged) s).judgement())
                    .toList();
        }
    }

    /** Something that moved, or pointedly did not move, the count. */
    public sealed interface Step {
        String driveId();

        Reason reason();

        VerificationState after();

        /** A drive was judged. */
        record Judged(String driveId, Judgement judgement, VerificationState after) implements Step {
            @Override
            public Reason reason() {
                return judgement.reason();
            }
        }

        /** Codes were cleared or memory was lost: the count restarted. */
        record Restarted(String driveId, Reason reason, VerificationState after) implements Step {}

        /** The record shows a failed trip in a drive that was not recorded. */
        record UnseenFailure(String driveId, Reason reason, VerificationState after) implements Step {}

        /** The record shows a passed trip in a drive that was not recorded. */
        record UnseenPass(String driveId, Reason reason, VerificationState after) implements Step {}

        /** Something to know that moved nothing. */
        record Remark(String driveId, Reason reason, VerificationState after) implements Step {}

        /** Distance or ignition cycles between two records that nobody recorded: neither helps nor hurts. */
        record Gap(String driveId, Reason reason, VerificationState after) implements Step {}
    }

    /** Passed trips at the end of the latest attempt with no failure and no restart among them. */
    public int passesInARow() {
        int passes = 0;
        for (Step step : attempts.isEmpty()
                ? List.<Step>of()
                : attempts.get(attempts.size() - 1).steps()) {
            if (step instanceof Step.Judged judged) {
                Outcome outcome = judged.judgement().outcome();
                passes = outcome == Outcome.PASSED ? passes + 1 : outcome.isFail() ? 0 : passes;
            } else if (step instanceof Step.UnseenPass) {
                passes++;
            } else if (!(step instanceof Step.Gap) && !(step instanceof Step.Remark)) {
                passes = 0;
            }
        }
        return passes;
    }

    /** Of the drive that was judged last for the latest attempt. */
    public Optional<Judgement> latestJudgement() {
        List<Step> steps = attempts.isEmpty()
                ? List.of()
                : attempts.get(attempts.size() - 1).steps();
        for (int at = steps.size() - 1; at >= 0; at--) {
            if (steps.get(at) instanceof Step.Judged judged) {
                return Optional.of(judged.judgement());
            }
        }
        return Optional.empty();
    }

    /** Every drive judged for the latest attempt. */
    public List<Judgement> judgements() {
        return attempts.isEmpty()
                ? List.of()
                : attempts.get(attempts.size() - 1).judgements();
    }
}
