package dev.stayfixed.worklist;

import dev.stayfixed.jobs.JobMoved;
import dev.stayfixed.judging.VehicleJudged;
import dev.stayfixed.platform.CurrentShop;
import dev.stayfixed.platform.storage.StoredTime;
import jakarta.persistence.EntityManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.springframework.context.event.EventListener;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Keeps the place of every open job in their list: what it needs, and since when nothing is heard of it. */
@Component
class OpenJobPlaces {

    /** The open jobs of a vehicle, and those whose place is still kept, with what is kept. */
    private static final String OF_VEHICLE = """
            select j.id, j.shop_id, j.state, j.opened_at, f.faults, f.fixed, f.back, f.failed_once, f.contradictory, f.awaiting,
                   (select max(r.performed_at) from repair r where r.job_id = j.id) last_repair,
                   (select d.start_at from drive d where d.vehicle_id = j.vehicle_id
                    order by d.vehicle_id desc, d.start_at desc limit 1) last_drive,
                   o.need, o.news_at
            from job j
            join (select a.job_id,
                         count(*) faults,
                         sum(case when a.standing_state = 'CONFIRMED_FIXED' then 1 else 0 end) fixed,
                         sum(case when a.standing_state = 'RECURRED' or a.standing_comeback then 1 else 0 end) back,
                         sum(case when a.standing_state = 'FAILED_ONCE' then 1 else 0 end) failed_once,
                         sum(case when a.standing_contradictory then 1 else 0 end) contradictory,
                         sum(case when a.standing_state = 'AWAITING_REPAIR' then 1 else 0 end) awaiting
                  from fault a join job b on b.id = a.job_id where b.shop_id = :shop and b.vehicle_id = :vehicle group by a.job_id) f on f.job_id = j.id
            left join open_job o on o.job_id = j.id
            where j.shop_id = :shop and j.vehicle_id = :vehicle and (j.state = 'OPEN' or o.job_id is not null)
            """;

    private final JdbcClient jdbc;
    private final EntityManager entities;
    private final CurrentShop shop;

    OpenJobPlaces(JdbcClient jdbc, EntityManager entities, CurrentShop shop) {
        this.jdbc = jdbc;
        this.entities = entities;
        this.shop = shop;
    }

    @EventListener
    void on(VehicleJudged judged) {
        keep(judged.vehicleId());
    }

    @EventListener
    void on(JobMoved moved) {
        keep(moved.vehicleId());
    }

    /** Where a job stands in the list. */
    private record Place(Attention need, Instant news) {}

    /** What is kept of a job, and what should be; empty where it is not in the list. */
    private record Kept(UUID jobId, UUID shopId, Optional<Place> before, Optional<Place> now) {

        static Kept of(ResultSet row, int number) throws SQLException {
            Optional<Instant> kept = StoredTime.ifAny(row, "news_at");
            String need = row.getString("need");
            return new Kept(
                    row.getObject("id", UUID.class),
                    row.getObject("shop_id", UUID.class),
                    kept.map(news -> new Place(Attention.valueOf(need), news)),
                    row.getString("state").equals("OPEN")
                            ? Optional.of(new Place(Attention.of(facts(row)), news(row)))
                            : Optional.empty());
        }

        private static Attention.Facts facts(ResultSet row) throws SQLException {
            return new Attention.Facts(
                    row.getInt("faults"),
                    row.getInt("fixed"),
                    row.getInt("back"),
                    row.getInt("failed_once"),
                    row.getInt("contradictory"),
                    row.getInt("awaiting"));
        }

        private static Instant news(ResultSet row) throws SQLException {
            Instant opened = StoredTime.in(row, "opened_at");
            return Stream.of(StoredTime.ifAny(row, "last_repair"), StoredTime.ifAny(row, "last_drive"))
                    .flatMap(Optional::stream)
                    .filter(opened::isBefore)
                    .max(Instant::compareTo)
                    .orElse(opened);
        }
    }

    private void keep(UUID vehicleId) {
        entities.flush();
        jdbc.sql(OF_VEHICLE).param("shop", shop.id()).param("vehicle", vehicleId).query(Kept::of).list().stream()
                .filter(job -> !job.before().equals(job.now()))
                .forEach(job -> write(vehicleId, job));
    }

    private void write(UUID vehicleId, Kept job) {
        if (job.now().isEmpty()) {
            jdbc.sql("delete from open_job where shop_id = ? and job_id = ?")
                    .params(job.shopId(), job.jobId())
                    .update();
            return;
        }
        Place now = job.now().get();
        String write = job.before().isPresent()
                ? "update open_job set need = :need, can_stall = :stall, news_at = :news where shop_id = :shop and job_id = :job"
                : "insert into open_job (job_id, shop_id, vehicle_id, need, can_stall, news_at)"
                        + " values (:job, :shop, :vehicle, :need, :stall, :news)";
        jdbc.sql(write)
                .param("job", job.jobId())
                .param("shop", job.shopId())
                .param("vehicle", vehicleId)
                .param("need", now.need().name())
                .param("stall", now.need().canStall())
                .param("news", StoredTime.of(now.news()))
                .update();
    }
}
