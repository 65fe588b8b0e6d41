package dev.stayfixed.worklist;

import dev.stayfixed.jobs.Standing;
import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.platform.CurrentShop;
import dev.stayfixed.platform.storage.StoredTime;
import dev.stayfixed.verification.StateName;
import dev.stayfixed.verification.Trips;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Reads the jobs of one page with their vehicles and faults, in one query. */
@Component
class OpenJobRows {

    private static final String IN_FULL = """
            select j.id, j.opened_at, j.customer, j.reference, v.description, v.plate, v.vin,
                   (select max(d.start_at) from drive d where d.vehicle_id = j.vehicle_id) last_drive,
                   f.code, f.monitor_group, f.trips, f.required_passes, f.standing_state, f.standing_passes,
                   f.standing_decided, f.standing_comeback
            from job j
            join vehicle v on v.id = j.vehicle_id
            join fault f on f.job_id = j.id
            where j.shop_id = :shop and j.id in (:ids)
            order by j.id, f.position
            """;

    private final JdbcClient jdbc;
    private final CurrentShop shop;

    OpenJobRows(JdbcClient jdbc, CurrentShop shop) {
        this.jdbc = jdbc;
        this.shop = shop;
    }

    /** The jobs, in the order given. */
    List<OpenJob> inFull(List<OpenJobOrder.Ranked> wanted) {
        if (wanted.isEmpty()) {
            return List.of();
        }
        Map<UUID, OpenJobOrder.Ranked> byId = new HashMap<>();
        wanted.forEach(job -> byId.put(job.id(), job));
        Map<UUID, OpenJob> read = new HashMap<>();
        jdbc.sql(IN_FULL).param("shop", shop.id()).param("ids", byId.keySet()).query((ResultSet row) -> {
            UUID id = row.getObject("id", UUID.class);
            OpenJobOrder.Ranked ranked = byId.get(id);
            if (ranked != null) {
                OpenJob job = read.get(id);
                if (job == null) {
                    job = job(row, ranked);
                    read.put(id, job);
                }
                job.faults().add(line(row));
            }
        });
        return wanted.stream()
                .flatMap(job -> Optional.ofNullable(read.get(job.id())).stream())
                .toList();
    }

    private static OpenJob job(ResultSet row, OpenJobOrder.Ranked ranked) throws SQLException {
        return new OpenJob(
                ranked.id(),
                ranked.attention(),
                row.getString("description"),
                Optional.ofNullable(row.getString("plate")),
                Optional.ofNullable(row.getString("vin")),
                Optional.ofNullable(row.getString("customer")),
                Optional.ofNullable(row.getString("reference")),
                StoredTime.ifAny(row, "opened_at").orElseThrow(),
                StoredTime.ifAny(row, "last_drive"),
                new ArrayList<>());
    }

    private static OpenJob.Line line(ResultSet row) throws SQLException {
        int passes = row.getInt("standing_passes");
        boolean counted = !row.wasNull();
        return new OpenJob.Line(
                row.getString("code"),
                MonitorGroup.valueOf(row.getString("monitor_group")),
                Trips.valueOf(row.getString("trips")),
                new Standing(
                        StateName.valueOf(row.getString("standing_state")),
                        counted ? OptionalInt.of(passes) : OptionalInt.empty(),
                        row.getInt("required_passes"),
                        row.getBoolean("standing_decided"),
                        row.getBoolean("standing_comeback")));
    }
}
