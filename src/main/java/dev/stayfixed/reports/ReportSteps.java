package dev.stayfixed.reports;

import dev.stayfixed.jobs.ShopSettings.Units;
import dev.stayfixed.reason.Kind;
import dev.stayfixed.reports.ReportFacts.By;
import dev.stayfixed.verification.Evidence;
import dev.stayfixed.verification.EvidenceGrade;
import dev.stayfixed.verification.Judgement;
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
        return new ReportFacts.Step(
                starts.get(step.driveId()),
                step.judged().isEmpty()
                        ? null
                        : byDriver.contains(UUID.fromString(step.driveId())) ? By.DRIVER : By.WORKSHOP,
                units.words(outcome(step)),
                units.words(step.reason()),
                step.judged().map(Judgement::evidence).orElse(List.of()).stream()
                        .map(evidence -> said(evidence, units))
                        .toList(),
                units.words(step.after().said()));
    }

    private static Kind outcome(Verdict.Step step) {
        return switch (step.kind()) {
            case JUDGED -> step.judged().orElseThrow().outcome();
            case RESTARTED -> ReportReason.COUNT_RESTARTED;
            case UNSEEN_FAILURE -> ReportReason.FAILURE_NOT_RECORDED;
            case UNSEEN_PASS -> ReportReason.PASSED_NOT_RECORDED;
            case GAP -> ReportReason.GAP;
            case REMARK -> ReportReason.TO_KNOW;
        };
    }

    private static ReportFacts.Said said(Evidence evidence, Units units) {
        Integer grade = evidence.source() instanceof Evidence.Monitor monitor
                ? List.of(EvidenceGrade.values()).indexOf(monitor.grade()) + 1
                : null;
        return new ReportFacts.Said(grade, units.words(evidence.source().kind()), units.words(evidence.says()));
    }
}
