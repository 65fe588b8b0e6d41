package dev.stayfixed.reports;

import dev.stayfixed.jobs.Standing;
import dev.stayfixed.judging.FaultVerdict;
import dev.stayfixed.verification.Evidence;
import dev.stayfixed.verification.EvidenceGrade;
import dev.stayfixed.verification.Judgement;
import dev.stayfixed.verification.Outcome;
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
     * @param leftOut drives that a person left out, each in a sentence
     */
    static List<String> by(List<FaultVerdict> verdicts, boolean interim, long onWordAlone, List<String> leftOut) {
        List<String> notCovered = new ArrayList<>();
        if (interim) {
            notCovered.add(
                    "The job was open when this report was made: drives that follow can change every verdict in it.");
        }
        verdicts.forEach(verdict -> ofFault(verdict, notCovered));
        if (onWordAlone > 0) {
            notCovered.add(onWordAlone + (onWordAlone == 1 ? " drive was" : " drives were")
                    + " stated by a person and came without a scan of the control unit.");
        }
        notCovered.addAll(leftOut);
        notCovered.add("Faults that are not named in this report were not followed.");
        notCovered.add("The verdicts say what the recorded drives show. They do not promise that a part will last.");
        notCovered.add(
                "This is no inspection result. Readiness, the MIL and permanent codes are judged by the inspection under the"
                        + " rule in force there, and codes cleared with the repair may leave monitors incomplete.");
        return List.copyOf(notCovered);
    }

    private static void ofFault(FaultVerdict verdict, List<String> notCovered) {
        String code = verdict.faultCase().fault().code().text();
        if (verdict.standing().state() != Standing.State.CONFIRMED_FIXED) {
            notCovered.add(
                    code + " is not confirmed fixed: " + verdict.standing().words() + ".");
        }
        List<Judgement> passes = verdict.verdict().judgements().stream()
                .filter(judgement -> judgement.outcome() == Outcome.PASSED)
                .toList();
        restingOn(OF_THE_GROUP, passes)
                .ifAny(count ->
                        notCovered.add("%s: %s on evidence that covers the whole %s monitor, not this code by itself."
                                .formatted(
                                        code,
                                        rest(count),
                                        verdict.faultCase().fault().group().label())));
        restingOn(EnumSet.of(EvidenceGrade.ENABLING_CONDITIONS, EvidenceGrade.MIL_OFF), passes)
                .ifAny(count -> notCovered.add("%s: %s on conditions or on the lamp; the monitor itself was not heard."
                        .formatted(code, rest(count))));
        long gaps = steps(verdict, Verdict.Step.Gap.class);
        if (gaps > 0) {
            notCovered.add("%s: the car was driven %s without a record; what happened then is not known."
                    .formatted(
                            code,
                            gaps == 1
                                    ? "once between the recorded drives"
                                    : gaps + " times between the recorded drives"));
        }
        long contradictions = verdict.verdict().judgements().stream()
                .filter(judgement -> judgement.outcome() == Outcome.CONTRADICTORY)
                .count();
        if (contradictions > 0) {
            notCovered.add("%s: the record of %s with itself and was not scored."
                    .formatted(
                            code, contradictions == 1 ? "one drive disagrees" : contradictions + " drives disagrees"));
        }
    }

    private static String rest(long count) {
        return count == 1 ? "1 passed drive rests" : count + " passed drives rest";
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

    private static long steps(FaultVerdict verdict, Class<? extends Verdict.Step> kind) {
        return verdict.verdict().attempts().stream()
                .flatMap(attempt -> attempt.steps().stream())
                .filter(kind::isInstance)
                .count();
    }
}
