package dev.stayfixed.intake;

import dev.stayfixed.drive.condition.ConditionReport;
import dev.stayfixed.drive.condition.ConditionSet;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** What logs made of sets of conditions: a cache. Writes need the running transaction. */
@Component
class StoredConditionReports {

    private final JdbcClient jdbc;

    StoredConditionReports(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    void save(UUID driveId, int revision, Map<String, ConditionReport> reports) {
        reports.forEach((key, report) -> {
            jdbc.sql("delete from drive_condition where drive_id = ? and set_key = ?")
                    .params(driveId, key)
                    .update();
            jdbc.sql(
                            "insert into drive_condition (drive_id, set_key, revision, version, report) values (?, ?, ?, ?, ?)")
                    .params(driveId, key, revision, LogFacts.VERSION, StoredConditionReport.text(report))
                    .update();
        });
    }

    /** Those that are there, of these sets. */
    Map<String, ConditionReport> find(UUID driveId, int revision, Map<String, ConditionSet> sets) {
        return sets.entrySet().stream()
                .flatMap(e -> one(driveId, revision, e.getKey(), e.getValue()).stream()
                        .map(report -> Map.entry(e.getKey(), report)))
                .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue));
    }

    private Optional<ConditionReport> one(UUID driveId, int revision, String key, ConditionSet set) {
        return jdbc.sql("""
                        select report from drive_condition
                        where drive_id = ? and set_key = ? and revision = ? and version = ?""")
                .params(driveId, key, revision, LogFacts.VERSION)
                .query(String.class)
                .optional()
                .map(text -> StoredConditionReport.read(set, text));
    }
}
