package dev.stayfixed.learning;

import dev.stayfixed.intake.VehicleJudged;
import dev.stayfixed.jobs.Job;
import dev.stayfixed.jobs.Jobs;
import dev.stayfixed.jobs.Repair;
import dev.stayfixed.jobs.Standing;
import dev.stayfixed.platform.CurrentShop;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.context.event.EventListener;
import org.springframework.core.annotation.Order;
import org.springframework.jdbc.core.SqlParameterValue;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Keeps how each repair attempt went: a copy of the verdicts, written anew whenever the vehicle is judged. */
@Component
class Attempts {

    private final JdbcClient jdbc;
    private final CurrentShop shop;
    private final Jobs jobs;

    Attempts(JdbcClient jdbc, CurrentShop shop, Jobs jobs) {
        this.jdbc = jdbc;
        this.shop = shop;
        this.jobs = jobs;
    }

    @Order(1)
    @EventListener
    void on(VehicleJudged judged) {
        Map<String, String> repairs = new HashMap<>();
        judged.verdicts().stream()
                .map(v -> v.faultCase().jobId())
                .distinct()
                .map(jobs::get)
                .map(Job::repairs)
                .flatMap(List<Repair>::stream)
                .forEach(r -> repairs.put(r.id().toString(), r.details().description()));
        Outcomes outcomes = new Outcomes(judged.vehicleId(), judged.drives(), repairs);
        jdbc.sql("delete from attempt_outcome where vehicle_id = ?")
                .param(judged.vehicleId())
                .update();
        judged.verdicts().stream().flatMap(v -> outcomes.of(v).stream()).forEach(this::insert);
    }

    private void insert(Attempt a) {
        jdbc.sql("""
                        insert into attempt_outcome (repair_id, fault_id, shop_id, vehicle_id, job_id, position, code, monitor_group,
                            repair, performed_at, state, proven_at, drives_to_proof, failed_at, followed_until, km_followed,
                            km_to_failure)
                        values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""")
                .params(a.repairId(), a.faultId(), shop.id(), a.vehicleId(), a.jobId(), a.position(), a.code())
                .params(a.group(), a.repair(), at(a.performedAt()), a.state().name())
                .param(time(a.provenAt()))
                .param(new SqlParameterValue(
                        Types.INTEGER,
                        a.drivesToProof().isPresent() ? a.drivesToProof().getAsInt() : null))
                .param(time(a.failedAt()))
                .param(at(a.followedUntil()))
                .param(a.kmFollowed())
                .param(new SqlParameterValue(
                        Types.DOUBLE,
                        a.kmToFailure().isPresent() ? a.kmToFailure().getAsDouble() : null))
                .update();
    }

    List<Attempt> all() {
        return jdbc.sql("select * from attempt_outcome where shop_id = ? order by performed_at, repair_id, fault_id")
                .param(shop.id())
                .query(Attempts::attempt)
                .list();
    }

    /** Of one vehicle, the earliest first. */
    List<Attempt> ofVehicle(UUID vehicleId) {
        return jdbc.sql("select * from attempt_outcome where vehicle_id = ? order by performed_at, repair_id, fault_id")
                .param(vehicleId)
                .query(Attempts::attempt)
                .list();
    }

    private static OffsetDateTime at(Instant instant) {
        return instant.atOffset(ZoneOffset.UTC);
    }

    private static SqlParameterValue time(Optional<Instant> instant) {
        return new SqlParameterValue(
                Types.TIMESTAMP_WITH_TIMEZONE, instant.map(Attempts::at).orElse(null));
    }

    private static Optional<Instant> instant(ResultSet row, String column) throws SQLException {
        return Optional.ofNullable(row.getObject(column, OffsetDateTime.class)).map(OffsetDateTime::toInstant);
    }

    private static Attempt attempt(ResultSet row, int number) throws SQLException {
        @Nullable Integer drives = row.getObject("drives_to_proof", Integer.class);
        @Nullable Double km = row.getObject("km_to_failure", Double.class);
        return new Attempt(
                row.getObject("repair_id", UUID.class),
                row.getObject("fault_id", UUID.class),
                row.getObject("vehicle_id", UUID.class),
                row.getObject("job_id", UUID.class),
                row.getInt("position"),
                row.getString("code"),
                row.getString("monitor_group"),
                row.getString("repair"),
                row.getObject("performed_at", OffsetDateTime.class).toInstant(),
                Standing.State.valueOf(row.getString("state")),
                instant(row, "proven_at"),
                drives == null ? OptionalInt.empty() : OptionalInt.of(drives),
                instant(row, "failed_at"),
                row.getObject("followed_until", OffsetDateTime.class).toInstant(),
                row.getDouble("km_followed"),
                km == null ? OptionalDouble.empty() : OptionalDouble.of(km));
    }
}
