package dev.stayfixed.judging.entry;

import dev.stayfixed.drive.condition.Condition;
import dev.stayfixed.drive.condition.ConditionSet;
import dev.stayfixed.drive.condition.TypicalCondition;
import dev.stayfixed.drive.condition.TypicalConditions;
import dev.stayfixed.jobs.AgreedConditions;
import dev.stayfixed.jobs.ConditionForm;
import dev.stayfixed.jobs.FaultConditions;
import dev.stayfixed.platform.Given;
import dev.stayfixed.platform.problem.Mistake;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.verification.RecordedConditions.Origin;
import dev.stayfixed.wording.Wording;
import io.swagger.v3.oas.annotations.media.Schema;
import jakarta.validation.Valid;
import jakarta.validation.constraints.Size;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Conditions of a fault.
 *
 * @param origin SERVICE_INFORMATION if missing; TYPICAL_ADOPTED takes over the typical ones of the fault's circuit or monitor
 *     group, and comes without conditions
 * @param source which service information
 * @param inOrder whether they have to be met one after another; false if missing
 */
@Schema(name = "Request")
public record ConditionsEntry(
        @Nullable Origin origin,

        @Nullable @Size(max = 300, message = "at most {max} characters")
        String source,

        @Nullable Boolean inOrder,

        @Nullable @Size(max = MOST, message = "at most {max} conditions")
        List<@Valid ConditionForm> conditions) {

    /** Conditions of one fault. */
    public static final int MOST = 30;

    public AgreedConditions agreed(FaultConditions fault) {
        List<ConditionForm> given = conditions == null ? List.of() : conditions;
        return origin == Origin.TYPICAL_ADOPTED ? adopted(fault, given) : stated(fault, given);
    }

    private static AgreedConditions adopted(FaultConditions fault, List<ConditionForm> given) {
        if (!given.isEmpty()) {
            throw Refused.content(new Mistake(
                    "conditions",
                    given.size() + " conditions",
                    "none beside TYPICAL_ADOPTED; conditions of your own are SERVICE_INFORMATION"));
        }
        TypicalCondition typical = TypicalConditions.of(fault.code(), fault.group())
                .orElseThrow(() -> Refused.content(new Mistake(
                        "origin",
                        Origin.TYPICAL_ADOPTED,
                        "SERVICE_INFORMATION with conditions, as there are no typical ones for "
                                + fault.code().text())));
        return new AgreedConditions(typical.set(), Origin.TYPICAL_ADOPTED, Wording.METRIC.words(typical.source()));
    }

    private AgreedConditions stated(FaultConditions fault, List<ConditionForm> given) {
        if (given.isEmpty()) {
            throw Refused.content(new Mistake("conditions", null, "at least one condition"));
        }
        List<Condition> each = IntStream.range(0, given.size())
                .mapToObj(i -> Refused.unless(
                        "conditions[" + i + "]", () -> given.get(i).facts()))
                .toList();
        return new AgreedConditions(
                new ConditionSet(fault.code().text(), Boolean.TRUE.equals(inOrder), each),
                Origin.SERVICE_INFORMATION,
                Given.optional(source).orElse(""));
    }
}
