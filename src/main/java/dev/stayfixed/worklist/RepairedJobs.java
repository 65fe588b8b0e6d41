package dev.stayfixed.worklist;

import dev.stayfixed.platform.CurrentShop;
import dev.stayfixed.platform.storage.Durably;
import dev.stayfixed.platform.storage.StoredTime;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;

/** The open jobs with a repair. */
@Service
public class RepairedJobs {

    private final JdbcClient jdbc;
    private final CurrentShop shop;
    private final Durably durably;

    RepairedJobs(JdbcClient jdbc, CurrentShop shop, Durably durably) {
        this.jdbc = jdbc;
        this.shop = shop;
        this.durably = durably;
    }

    /** When anything last came in of each. */
    public List<LastHeard> lastHeard() {
        return durably.read(
                () -> jdbc.sql("""
                        select j.id, j.vehicle_id, greatest(max(r.recorded_at), coalesce(max(d.received_at), max(r.recorded_at))) as heard_at
                        from job j join repair r on r.job_id = j.id left join drive d on d.vehicle_id = j.vehicle_id
                        where j.shop_id = ? and j.state = 'OPEN' group by j.id, j.vehicle_id""").param(shop.id()).query(RepairedJobs::row).list());
    }

    private static LastHeard row(ResultSet row, int number) throws SQLException {
        return new LastHeard(
                row.getObject("id", UUID.class),
                row.getObject("vehicle_id", UUID.class),
                StoredTime.in(row, "heard_at"));
    }
}
