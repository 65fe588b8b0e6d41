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
            return steps.stream().map(Step::judged).flatMap(Optional::stream).toList();
        }
    }

    /** Something that moved, or pointedly did not move, the count. */
    public sealed interface Step {

        /** What it is. */
        enum Kind {
            /** A drive was judged. */
            JUDGED,
            /** Codes were cleared or memory was lost: the count restarted. */
            RESTARTED,
            /** The record shows a failed trip in a drive that was not recorded. */
            UNSEEN_FAILURE,
            /** The record shows a passed trip in a drive that was not recorded. */
            UNSEEN_PASS,
            /** Something to know that moved nothing. */
            REMARK,
            /** Distance or ignition cycles between two records that nobody recorded: neither helps nor hurts. */
            GAP
        }

        Kind kind();

        String driveId();

        Reason reason();

        VerificationState after();

        /** Of a drive that was judged, and of nothing else. */
        default Optional<Judgement> judged() {
            return Optional.empty();
        }

        /** A drive was judged. */
        record Judged(String driveId, Judgement judgement, VerificationState after) implements Step {
            @Override
            public Kind kind() {
                return Kind.JUDGED;
            }

            @Override
            public Reason reason() {
                return judgement.reason();
            }

            @Override
            public Optional<Judgement> judged() {
                return Optional.of(judgement);
            }
        }

        /** Everything else. */
        record Noted(Kind kind, String driveId, Reason reason, VerificationState after) implements Step {
            public Noted {
                if (kind == Kind.JUDGED) {
                    throw new IllegalArgumentException(
                            "a note of drive " + driveId + ": found JUDGED, expected another kind");
                }
            }
        }
    }

    /** Passed trips at the end of the latest attempt with no failure and no restart among them. */
    public int passesInARow() {
        int passes = 0;
        for (Step step : attempts.isEmpty()
                ? List.<Step>of()
                : attempts.get(attempts.size() - 1).steps()) {
            passes = switch (step.kind()) {
                case JUDGED -> afterTrip(passes, step);
                case UNSEEN_PASS -> passes + 1;
                case RESTARTED, UNSEEN_FAILURE -> 0;
                case GAP, REMARK -> passes;
            };
        }
        return passes;
    }

    private static int afterTrip(int passes, Step step) {
        Optional<Outcome> outcome = step.judged().map(Judgement::outcome);
        return outcome.filter(Outcome.PASSED::equals).isPresent()
                ? passes + 1
                : outcome.filter(Outcome::isFail).isPresent() ? 0 : passes;
    }

    /** Of the drive that was judged last for the latest attempt. */
    public Optional<Judgement> latestJudgement() {
        List<Step> steps = attempts.isEmpty()
                ? List.of()
                : attempts.get(attempts.size() - 1).steps();
        for (int at = steps.size() - 1; at >= 0; at--) {
            Optional<Judgement> judged = steps.get(at).judged();
            if (judged.isPresent()) {
                return judged;
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
