package dev.stayfixed.intake;

import dev.stayfixed.judging.FaultVerdict;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.verification.Judgement;
import dev.stayfixed.verification.Verdict;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** What a drive does to each fault, read off the verdicts. */
final class Effects {

    private Effects() {}

    /** Faults on which the drive has a say, for which it comes too early, or which stand elsewhere than before. */
    static List<Effect> of(UUID driveId, List<FaultVerdict> verdicts) {
        return verdicts.stream()
                .flatMap(verdict -> effect(driveId.toString(), verdict).stream())
                .toList();
    }

    private static Optional<Effect> effect(String driveId, FaultVerdict verdict) {
        Optional<Verdict.Step> step = step(driveId, verdict.verdict());
        boolean moved = !verdict.faultCase().standing().equals(verdict.standing());
        Optional<Reason> before = step.isPresent() ? Optional.empty() : BeforeRepair.reason(driveId, verdict);
        if (step.isEmpty() && before.isEmpty() && !moved) {
            return Optional.empty();
        }
        Optional<Judgement> judgement = step.flatMap(Verdict.Step::judged);
        return Optional.of(new Effect(
                verdict.faultCase().jobId(),
                verdict.faultCase().faultId(),
                verdict.faultCase().fault().code(),
                judgement.map(Judgement::outcome),
                step.map(Verdict.Step::reason)
                        .or(() -> before)
                        .orElseGet(() -> Reason.of(EffectReason.NO_LONGER_JUDGED)),
                verdict.faultCase().standing(),
                verdict.standing()));
    }

    /** The judgement of the drive, in whatever attempt; else whatever step it caused. */
    private static Optional<Verdict.Step> step(String driveId, Verdict verdict) {
        List<Verdict.Step> steps = verdict.attempts().stream()
                .flatMap(a -> a.steps().stream())
                .filter(s -> s.driveId().equals(driveId))
                .toList();
        return steps.stream()
                .filter(s -> s.judged().isPresent())
                .findFirst()
                .or(() -> steps.stream().findFirst());
    }
}
