package dev.stayfixed.judging.api;

import dev.stayfixed.jobs.api.StandingAnswer;
import dev.stayfixed.judging.FaultProofs;
import dev.stayfixed.judging.FaultVerdict;
import dev.stayfixed.verification.Assumption;
import dev.stayfixed.verification.CodeMemory;
import dev.stayfixed.verification.Doubt;
import dev.stayfixed.verification.Evidence;
import dev.stayfixed.verification.EvidenceGrade;
import dev.stayfixed.verification.Judgement;
import dev.stayfixed.verification.Outcome;
import dev.stayfixed.verification.RepairAttempt;
import dev.stayfixed.verification.RuleSet;
import dev.stayfixed.verification.Verdict;
import dev.stayfixed.web.api.ReasonAnswer;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * The verdict on each fault of a job, with all the evidence.
 *
 * @param assumptions what the set of histories rests on, numbered, as the rule set states it
 */
record VerdictAnswer(UUID jobId, String ruleSet, List<String> assumptions, List<OfFault> faults) {

    /** @param proofs by the fault's id */
    static VerdictAnswer of(UUID jobId, List<FaultVerdict> verdicts, Map<UUID, FaultProofs> proofs) {
        return new VerdictAnswer(
                jobId,
                RuleSet.STANDARD.id(),
                numbered(RuleSet.STANDARD.assumptions()),
                verdicts.stream()
                        .map(verdict -> OfFault.of(
                                verdict, proofs.getOrDefault(verdict.faultCase().faultId(), FaultProofs.NONE)))
                        .toList());
    }

    private static List<String> numbered(List<Assumption> assumptions) {
        return IntStream.range(0, assumptions.size())
                .mapToObj(at -> (at + 1) + ". " + ReasonAnswer.text(assumptions.get(at)))
                .toList();
    }

    /**
     * The verdict on one fault.
     *
     * @param next what the next drive must bring
     * @param doubt while it is not decided: a history that still fits and would be bad, and the reading that would rule it out
     * @param proofs what the verdict rests on, and what stands beside it
     * @param memory what the driver and an inspection will see, beside the verdict
     */
    record OfFault(
            UUID faultId,
            String code,
            String ruleSet,
            StandingAnswer standing,
            @Nullable String next,
            @Nullable ReasonAnswer nextFacts,
            @Nullable Doubted doubt,
            ProofsAnswer proofs,
            Memory memory,
            List<Attempt> attempts) {

        static OfFault of(FaultVerdict v, FaultProofs proofs) {
            return new OfFault(
                    v.faultCase().faultId(),
                    v.faultCase().fault().code().text(),
                    v.verdict().ruleSet(),
                    StandingAnswer.of(v.standing()),
                    ReasonAnswer.text(v.verdict().next()),
                    ReasonAnswer.of(v.verdict().next()),
                    v.verdict().doubt().map(Doubted::of).orElse(null),
                    ProofsAnswer.of(v.standing(), proofs),
                    Memory.of(v.verdict().memory()),
                    v.verdict().attempts().stream().map(a -> Attempt.of(a, v)).toList());
        }
    }

    /** Why it is not decided. */
    record Doubted(String history, ReasonAnswer historyFacts, String reading, ReasonAnswer readingFacts) {
        static Doubted of(Doubt doubt) {
            return new Doubted(
                    ReasonAnswer.text(doubt.history()),
                    ReasonAnswer.of(doubt.history()),
                    ReasonAnswer.text(doubt.reading()),
                    ReasonAnswer.of(doubt.reading()));
        }
    }

    /** The lamp and the stored codes. */
    record Memory(Line mil, Line confirmedCode, Line permanentCode) {

        record Line(@Nullable Boolean present, String explanation, ReasonAnswer explanationFacts) {
            static Line of(CodeMemory.Line line) {
                return new Line(
                        line.present().orElse(null),
                        ReasonAnswer.text(line.explanation()),
                        ReasonAnswer.of(line.explanation()));
            }
        }

        static Memory of(CodeMemory memory) {
            return new Memory(Line.of(memory.mil()), Line.of(memory.confirmedCode()), Line.of(memory.permanentCode()));
        }
    }

    /** One repair and what came after it. */
    record Attempt(UUID repairId, @Nullable Instant performedAt, StandingAnswer standing, List<Step> steps) {

        static Attempt of(Verdict.Attempt attempt, FaultVerdict v) {
            return new Attempt(
                    UUID.fromString(attempt.repairId()),
                    v.faultCase().repairs().stream()
                            .filter(r -> r.id().equals(attempt.repairId()))
                            .map(RepairAttempt::at)
                            .findFirst()
                            .orElse(null),
                    StandingAnswer.of(v.standing(attempt.state())),
                    attempt.steps().stream()
                            .map(step -> Step.of(step, v.driveStarts().get(step.driveId())))
                            .toList());
        }
    }

    /**
     * Something that moved the count, or pointedly did not.
     *
     * @param driveId the drive in which it showed
     * @param outcome of a judged drive
     * @param evidence strongest first; of a judged drive
     * @param standingAfter in words
     */
    record Step(
            Verdict.Step.Kind kind,
            String driveId,
            @Nullable Instant driveStart,
            @Nullable Outcome outcome,
            @Nullable String outcomeWords,
            String reason,
            ReasonAnswer reasonFacts,
            List<Said> evidence,
            String standingAfter) {

        static Step of(Verdict.Step step, @Nullable Instant start) {
            String after = ReasonAnswer.text(step.after().said());
            Optional<Judgement> judged = step.judged();
            return new Step(
                    step.kind(),
                    step.driveId(),
                    start,
                    judged.map(Judgement::outcome).orElse(null),
                    judged.map(Judgement::outcome).map(ReasonAnswer::text).orElse(null),
                    ReasonAnswer.text(step.reason()),
                    ReasonAnswer.of(step.reason()),
                    judged.map(Judgement::evidence).orElse(List.of()).stream()
                            .map(Said::of)
                            .toList(),
                    after);
        }
    }

    /**
     * One thing that the record says.
     *
     * @param grade of evidence on the monitor; missing for code lists and for the record as a whole
     */
    record Said(@Nullable EvidenceGrade grade, String source, String says, ReasonAnswer saysFacts) {
        static Said of(Evidence evidence) {
            EvidenceGrade grade = evidence.source() instanceof Evidence.Monitor monitor ? monitor.grade() : null;
            return new Said(
                    grade,
                    ReasonAnswer.text(evidence.source().kind()),
                    ReasonAnswer.text(evidence.says()),
                    ReasonAnswer.of(evidence.says()));
        }
    }
}
