package dev.stayfixed.judging.api;

import dev.stayfixed.drive.Finding;
import dev.stayfixed.drive.condition.Condition;
import dev.stayfixed.drive.condition.ConditionReport;
import dev.stayfixed.drive.condition.ConditionResult;
import dev.stayfixed.drive.condition.Interval;
import dev.stayfixed.drive.condition.TypicalCondition;
import dev.stayfixed.jobs.AgreedConditions;
import dev.stayfixed.jobs.ConditionForm;
import dev.stayfixed.jobs.FaultConditions;
import dev.stayfixed.judging.FaultReport;
import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.verification.RecordedConditions.Origin;
import dev.stayfixed.web.api.ReasonAnswer;
import java.time.Instant;
import java.util.List;
import java.util.OptionalLong;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Conditions that recorded signals are held against, of one fault. */
public record ConditionsAnswer(
        UUID jobId, UUID faultId, String code, Origin origin, String source, boolean inOrder, List<Said> conditions) {

    /** A condition, and what it says in words. */
    public record Said(
            ConditionForm condition, String words, ReasonAnswer wordsFacts, String toDo, ReasonAnswer toDoFacts) {
        public static Said of(Condition condition) {
            return new Said(
                    ConditionForm.of(condition),
                    ReasonAnswer.text(condition.said()),
                    ReasonAnswer.of(condition.said()),
                    ReasonAnswer.text(condition.toDo()),
                    ReasonAnswer.of(condition.toDo()));
        }
    }

    /** Typical conditions of a monitor group, or of a kind of circuit: never evidence unless the shop adopts them for a fault. */
    public record Typical(
            MonitorGroup group,
            String name,
            boolean typical,
            String source,
            String caution,
            boolean inOrder,
            List<Said> conditions) {
        public static Typical of(TypicalCondition typical) {
            return new Typical(
                    typical.group(),
                    typical.circuit()
                            .map(ReasonAnswer::text)
                            .orElse(typical.group().name()),
                    true,
                    ReasonAnswer.text(typical.source()),
                    ReasonAnswer.text(typical.caution()),
                    typical.set().inOrder(),
                    typical.set().conditions().stream().map(Said::of).toList());
        }
    }

    /**
     * What a drive made of the conditions of the faults of its vehicle.
     *
     * @param from when the first row was written; the intervals count from there, in ms
     */
    public record OfDrive(UUID driveId, @Nullable Instant from, List<Report> faults) {}

    /**
     * What a drive made of the conditions of one fault.
     *
     * @param origin TYPICAL_ADOPTED or SERVICE_INFORMATION; missing for typical ones that nobody adopted
     * @param counts whether it is evidence
     */
    public record Report(
            UUID jobId,
            UUID faultId,
            String code,
            @Nullable Origin origin,
            boolean counts,
            Finding.Held held,
            String reason,
            ReasonAnswer reasonFacts,
            List<Result> results) {

        public static Report of(FaultReport fault) {
            ConditionReport report = fault.report();
            Finding overall = report.overall();
            return new Report(
                    fault.fault().jobId(),
                    fault.fault().faultId(),
                    fault.fault().code().text(),
                    fault.fault().agreed().map(AgreedConditions::origin).orElse(null),
                    fault.counts(),
                    overall.held(),
                    ReasonAnswer.text(overall.reason()),
                    ReasonAnswer.of(overall.reason()),
                    report.results().stream().map(Result::of).toList());
        }
    }

    /** What a drive made of one condition; times in ms since the first row. */
    public record Result(
            String condition,
            Finding.Held held,
            String reason,
            ReasonAnswer reasonFacts,
            @Nullable String toDo,
            @Nullable ReasonAnswer toDoFacts,
            OptionalLong metAt,
            List<Interval> intervals) {
        public static Result of(ConditionResult result) {
            return new Result(
                    ReasonAnswer.text(result.condition().said()),
                    result.finding().held(),
                    ReasonAnswer.text(result.finding().reason()),
                    ReasonAnswer.of(result.finding().reason()),
                    ReasonAnswer.text(result.toDo()),
                    ReasonAnswer.of(result.toDo()),
                    result.metAt(),
                    result.held());
        }
    }

    public static ConditionsAnswer of(FaultConditions fault, AgreedConditions agreed) {
        return new ConditionsAnswer(
                fault.jobId(),
                fault.faultId(),
                fault.code().text(),
                agreed.origin(),
                agreed.source(),
                agreed.set().inOrder(),
                agreed.set().conditions().stream().map(Said::of).toList());
    }
}
