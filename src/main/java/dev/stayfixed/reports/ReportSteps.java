package dev.stayfixed.reports;

import dev.stayfixed.jobs.ShopSettings.Units;
import dev.stayfixed.reports.ReportFacts.By;
import dev.stayfixed.verification.Evidence;
import dev.stayfixed.verification.EvidenceGrade;
import dev.stayfixed.verification.Verdict;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;

/** What moved the count, or pointedly did not, as facts of a report. */
final class ReportSteps {

    private ReportSteps() {}

    static ReportFacts.Step of(Verdict.Step step, Map<String, Instant> starts, Set<UUID> byDriver, Units units) {
        if (step instanceof Verdict.Step.Judged judged) {
            return new ReportFacts.Step(
                    starts.get(step.driveId()),
                    byDriver.contains(UUID.fromString(step.driveId())) ? By.DRIVER : By.WORKSHOP,
                    units.words(judged.judgement().outcome()),
                    units.words(step.reason()),
                    judged.judgement().evidence().stream()
                            .map(evidence -> said(evidence, units))
                            .toList(),
                    units.words(step.after().said()));
        }
        return plain(step, starts, outcome(step), units);
    }

    private static ReportReason outcome(Verdict.Step step) {
        if (step instanceof Verdict.Step.Restarted) {
            return ReportReason.COUNT_RESTARTED;
        }
        if (step instanceof Verdict.Step.UnseenFailure) {
            return ReportReason.FAILURE_NOT_RECORDED;
        }
        if (step instanceof Verdict.Step.UnseenPass) {
            return ReportReason.PASSED_NOT_RECORDED;
        }
        return step instanceof Verdict.Step.Gap ? ReportReason.GAP : ReportReason.TO_KNOW;
    }

    private static ReportFacts.Step plain(
            Verdict.Step step, Map<String, Instant> starts, ReportReason outcome, Units units) {
        return new ReportFacts.Step(
                starts.get(step.driveId()),
                null,
                units.words(outcome),
                units.words(step.reason()),
                List.of(),
                units.words(step.after().said()));
    }

    private static ReportFacts.Said said(Evidence evidence, Units units) {
        Integer grade = evidence.source() instanceof Evidence.Monitor monitor
                ? List.of(EvidenceGrade.values()).indexOf(monitor.grade()) + 1
                : null;
        return new ReportFacts.Said(grade, units.words(evidence.source().kind()), units.words(evidence.says()));
    }
}
