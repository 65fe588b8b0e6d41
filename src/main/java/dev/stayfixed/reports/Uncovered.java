package dev.stayfixed.reports;

import dev.stayfixed.judging.FaultVerdict;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.verification.Evidence;
import dev.stayfixed.verification.EvidenceGrade;
import dev.stayfixed.verification.Judgement;
import dev.stayfixed.verification.Outcome;
import dev.stayfixed.verification.StateName;
import dev.stayfixed.verification.Verdict;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/** What nobody may read into a verdict, said beside it. */
final class Uncovered {

    private static final Set<EvidenceGrade> OF_THE_GROUP =
            EnumSet.of(EvidenceGrade.CYCLE_READINESS, EvidenceGrade.IN_USE_COUNTER, EvidenceGrade.READINESS);

    private Uncovered() {}

    /**
     * All of it.
     *
     * @param onWordAlone drives on which the verdicts rest and that came without any scan
     * @param leftOut drives that a person left out
     */
    static List<Reason> by(List<FaultVerdict> verdicts, boolean interim, long onWordAlone, List<Reason> leftOut) {
        List<Reason> notCovered = new ArrayList<>();
        if (interim) {
            notCovered.add(Reason.of(ReportReason.JOB_WAS_OPEN));
        }
        verdicts.forEach(verdict -> ofFault(verdict, notCovered));
        if (onWordAlone > 0) {
            notCovered.add(Reason.of(ReportReason.ON_WORD_ALONE, Part.count(onWordAlone)));
        }
        notCovered.addAll(leftOut);
        notCovered.add(Reason.of(ReportReason.OTHER_FAULTS_NOT_FOLLOWED));
        notCovered.add(Reason.of(ReportReason.NO_PROMISE));
        notCovered.add(Reason.of(ReportReason.NO_INSPECTION_RESULT));
        return List.copyOf(notCovered);
    }

    private static void ofFault(FaultVerdict verdict, List<Reason> notCovered) {
        Part code = Part.verbatim(verdict.faultCase().fault().code().text());
        if (verdict.standing().state() != StateName.CONFIRMED_FIXED) {
            notCovered.add(Reason.of(
                    ReportReason.NOT_CONFIRMED_FIXED, code, verdict.standing().said()));
        }
        List<Judgement> passes = verdict.verdict().judgements().stream()
                .filter(judgement -> judgement.outcome() == Outcome.PASSED)
                .toList();
        restingOn(OF_THE_GROUP, passes)
                .ifAny(count -> notCovered.add(Reason.of(
                        ReportReason.RESTS_ON_GROUP,
                        code,
                        Part.count(count),
                        verdict.faultCase().fault().group())));
        restingOn(EnumSet.of(EvidenceGrade.ENABLING_CONDITIONS, EvidenceGrade.MIL_OFF), passes)
                .ifAny(count -> notCovered.add(Reason.of(ReportReason.RESTS_ON_CONDITIONS, code, Part.count(count))));
        new Count(steps(verdict, Verdict.Step.Kind.GAP))
                .ifAny(count -> notCovered.add(Reason.of(ReportReason.DRIVEN_UNRECORDED, code, Part.count(count))));
        new Count(verdict.verdict().judgements().stream()
                        .filter(judgement -> judgement.outcome() == Outcome.CONTRADICTORY)
                        .count())
                .ifAny(count -> notCovered.add(Reason.of(ReportReason.RECORDS_DISAGREE, code, Part.count(count))));
    }

    private static Count restingOn(Set<EvidenceGrade> grades, List<Judgement> passes) {
        return new Count(passes.stream()
                .filter(pass -> pass.strongest().source() instanceof Evidence.Monitor monitor
                        && grades.contains(monitor.grade()))
                .count());
    }

    private record Count(long value) {
        void ifAny(java.util.function.LongConsumer use) {
            if (value > 0) {
                use.accept(value);
            }
        }
    }

    private static long steps(FaultVerdict verdict, Verdict.Step.Kind kind) {
        return verdict.verdict().attempts().stream()
                .flatMap(attempt -> attempt.steps().stream())
                .filter(step -> step.kind() == kind)
                .count();
    }
}
