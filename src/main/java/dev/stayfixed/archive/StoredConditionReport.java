package dev.stayfixed.archive;

import dev.stayfixed.drive.Finding;
import dev.stayfixed.drive.condition.ConditionReport;
import dev.stayfixed.drive.condition.ConditionResult;
import dev.stayfixed.drive.condition.ConditionSet;
import dev.stayfixed.drive.condition.Interval;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What a log made of a set of conditions, without the conditions themselves. */
record StoredConditionReport(List<Result> results) {

    private static final JsonMapper JSON = JsonMapper.shared();

    /** One result for each condition, in the order of the set. */
    record Result(Finding.Held held, JsonNode reason, OptionalLong metAt, List<Interval> intervals) {}

    static String text(ConditionReport report) {
        return JSON.writeValueAsString(new StoredConditionReport(report.results().stream()
                .map(r -> new Result(
                        r.finding().held(), StoredReason.node(r.finding().reason()), r.metAt(), r.held()))
                .toList()));
    }

    static ConditionReport read(ConditionSet set, String text) {
        List<Result> stored = JSON.readValue(text, StoredConditionReport.class).results();
        List<ConditionResult> results = new ArrayList<>();
        for (int i = 0; i < stored.size(); i++) {
            Result result = stored.get(i);
            results.add(new ConditionResult(
                    set.conditions().get(i),
                    new Finding(result.held(), StoredReason.read(result.reason())),
                    result.metAt(),
                    result.intervals()));
        }
        return new ConditionReport(set, results);
    }
}
