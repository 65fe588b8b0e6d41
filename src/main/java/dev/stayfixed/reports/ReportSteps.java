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
                    judged.judgement().outcome().words(),
                    units.words(judged.judgement().reason()),
                    judged.judgement().evidence().stream()
                            .map(evidence -> said(evidence, units))
                            .toList(),
                    step.after().words());
        }
        if (step instanceof Verdict.Step.Restarted restarted) {
            return plain(step, starts, "count restarted", units.words(restarted.reason()));
        }
        if (step instanceof Verdict.Step.UnseenFailure unseen) {
            return plain(step, starts, "failure not recorded", units.words(unseen.reason()));
        }
        if (step instanceof Verdict.Step.Gap gap) {
            return plain(step, starts, "gap", units.words(gap.reason()));
        }
        throw new IllegalStateException("a step that a report has no words for: " + step);
    }

    private static ReportFacts.Step plain(
            Verdict.Step step, Map<String, Instant> starts, String outcome, String reason) {
        return new ReportFacts.Step(
                starts.get(step.driveId()),
                null,
                outcome,
                reason,
                List.of(),
                step.after().words());
    }

    private static ReportFacts.Said said(Evidence evidence, Units units) {
        Integer grade = evidence.source() instanceof Evidence.Monitor monitor
                ? List.of(EvidenceGrade.values()).indexOf(monitor.grade()) + 1
                : null;
        return new ReportFacts.Said(grade, evidence.source().words(), units.words(evidence.says()));
    }
}
