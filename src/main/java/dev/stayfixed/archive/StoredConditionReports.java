package dev.stayfixed.archive;

import dev.stayfixed.drive.condition.ConditionReport;
import dev.stayfixed.drive.condition.ConditionSet;
import dev.stayfixed.platform.CurrentShop;
import java.util.HashMap;
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
    private final CurrentShop shop;

    StoredConditionReports(JdbcClient jdbc, CurrentShop shop) {
        this.jdbc = jdbc;
        this.shop = shop;
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

    /** Those that are there of these sets, by drive; only of the latest revision of each. */
    Map<UUID, Map<String, ConditionReport>> ofVehicle(UUID vehicleId, Map<String, ConditionSet> sets) {
        Map<UUID, Map<String, ConditionReport>> found = new HashMap<>();
        jdbc.sql("""
                        select c.drive_id, c.set_key, c.report from drive_condition c
                        join drive d on d.id = c.drive_id and d.revision = c.revision
                        where d.shop_id = ? and d.vehicle_id = ? and c.version = ?""").params(shop.id(), vehicleId, LogFacts.VERSION).query(row -> {
            ConditionSet set = sets.get(row.getString(2));
            if (set != null) {
                found.computeIfAbsent(row.getObject(1, UUID.class), drive -> new HashMap<>())
                        .put(row.getString(2), StoredConditionReport.read(set, row.getString(3)));
            }
        });
        return found;
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
