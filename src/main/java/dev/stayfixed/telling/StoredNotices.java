package dev.stayfixed.telling;

import dev.stayfixed.platform.CurrentShop;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.SqlParameterValue;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** The tables shop_notices and job_notices. A missing row stands for settings that nobody has touched. */
@Repository
class StoredNotices {

    private final JdbcClient jdbc;
    private final CurrentShop shop;

    StoredNotices(JdbcClient jdbc, CurrentShop shop) {
        this.jdbc = jdbc;
        this.shop = shop;
    }

    ShopNotices ofShop() {
        return jdbc.sql("select * from shop_notices where shop_id = ?")
                .param(shop.id())
                .query(StoredNotices::shop)
                .optional()
                .orElseGet(ShopNotices::untouched);
    }

    void keep(ShopNotices n) {
        jdbc.sql("delete from shop_notices where shop_id = ?").param(shop.id()).update();
        jdbc.sql("""
                        insert into shop_notices (shop_id, version, technician_email, technician_kinds, driver_kinds, signature,
                                                  silent_days, comeback_days, comeback_distance)
                        values (?, ?, ?, ?, ?, ?, ?, ?, ?)""")
                .param(shop.id())
                .param(n.version())
                .param(text(n.technicianEmail()))
                .param(Kinds.text(n.technicianKinds()))
                .param(Kinds.text(n.driverKinds()))
                .param(text(n.signature()))
                .param(n.silentDays())
                .param(n.comebackDays())
                .param(new SqlParameterValue(
                        Types.DOUBLE,
                        n.comebackDistance().isPresent() ? n.comebackDistance().getAsDouble() : null))
                .update();
    }

    JobNotices ofJob(UUID jobId) {
        return jdbc.sql("""
                        select n.*, (select count(*) from mail_recipient r
                                     where r.shop_id = n.shop_id and r.address = n.driver_email and r.stopped_at is not null) as stopped
                        from job_notices n where n.shop_id = ? and n.job_id = ?""")
                .params(shop.id(), jobId)
                .query(StoredNotices::job)
                .optional()
                .orElseGet(JobNotices::untouched);
    }

    void keep(UUID jobId, JobNotices n) {
        jdbc.sql("delete from job_notices where shop_id = ? and job_id = ?")
                .params(shop.id(), jobId)
                .update();
        jdbc.sql("""
                        insert into job_notices (job_id, shop_id, version, technician_email, driver_email, technician_kinds,
                                                 driver_kinds, silent_days, driver_language)
                        values (?, ?, ?, ?, ?, ?, ?, ?, ?)""")
                .param(jobId)
                .param(shop.id())
                .param(n.version())
                .param(text(n.technicianEmail()))
                .param(text(n.driverEmail()))
                .param(text(n.technicianKinds().map(Kinds::text)))
                .param(text(n.driverKinds().map(Kinds::text)))
                .param(new SqlParameterValue(
                        Types.INTEGER,
                        n.silentDays().isPresent() ? n.silentDays().getAsInt() : null))
                .param(text(n.driverLanguage()))
                .update();
    }

    private static SqlParameterValue text(Optional<String> text) {
        return new SqlParameterValue(Types.VARCHAR, text.orElse(null));
    }

    private static ShopNotices shop(ResultSet row, int number) throws SQLException {
        Double distance = row.getObject("comeback_distance", Double.class);
        return new ShopNotices(
                row.getInt("version"),
                Optional.ofNullable(row.getString("technician_email")),
                Kinds.of(row.getString("technician_kinds")),
                Kinds.of(row.getString("driver_kinds")),
                Optional.ofNullable(row.getString("signature")),
                row.getInt("silent_days"),
                row.getInt("comeback_days"),
                distance == null ? OptionalDouble.empty() : OptionalDouble.of(distance));
    }

    private static JobNotices job(ResultSet row, int number) throws SQLException {
        @Nullable Integer days = row.getObject("silent_days", Integer.class);
        return new JobNotices(
                row.getInt("version"),
                Optional.ofNullable(row.getString("technician_email")),
                Optional.ofNullable(row.getString("driver_email")),
                Optional.ofNullable(row.getString("driver_language")),
                Optional.ofNullable(row.getString("technician_kinds")).map(Kinds::of),
                Optional.ofNullable(row.getString("driver_kinds")).map(Kinds::of),
                days == null ? OptionalInt.empty() : OptionalInt.of(days),
                row.getLong("stopped") > 0);
    }
}
