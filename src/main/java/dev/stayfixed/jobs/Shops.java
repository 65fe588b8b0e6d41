package dev.stayfixed.jobs;

import dev.stayfixed.platform.CurrentShop;
import dev.stayfixed.platform.storage.Durably;
import java.time.ZoneId;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;

/** The settings of the shop that is at work. */
@Service
public class Shops {

    private final JdbcClient jdbc;
    private final CurrentShop shop;
    private final Durably durably;

    Shops(JdbcClient jdbc, CurrentShop shop, Durably durably) {
        this.jdbc = jdbc;
        this.shop = shop;
        this.durably = durably;
    }

    /** Does the same in each shop, one after another; what goes wrong in one keeps no other from its turn, and is thrown at the end. */
    public void each(Runnable work) {
        List<UUID> all = durably.readThrough(
                Durably.SHOPS,
                () -> jdbc.sql("select id from shop order by created_at, id")
                        .query(UUID.class)
                        .list());
        RuntimeException wrong = null;
        for (UUID id : all) {
            try {
                shop.in(id, work);
            } catch (RuntimeException e) {
                if (wrong == null) {
                    wrong = e;
                } else {
                    wrong.addSuppressed(e);
                }
            }
        }
        if (wrong != null) {
            throw wrong;
        }
    }

    public ShopSettings settings() {
        return durably.read(() -> jdbc.sql("select name, time_zone, units, stall_days from shop where id = ?")
                .param(shop.id())
                .query((row, n) -> new ShopSettings(
                        row.getString("name"),
                        ZoneId.of(row.getString("time_zone")),
                        ShopSettings.Units.valueOf(row.getString("units")),
                        row.getInt("stall_days")))
                .single());
    }

    public ShopSettings change(ShopSettings wanted) {
        return durably.write(() -> {
            jdbc.sql("update shop set name = ?, time_zone = ?, units = ?, stall_days = ? where id = ?")
                    .params(wanted.name(), wanted.zone().getId(), wanted.units().name(), wanted.stallDays(), shop.id())
                    .update();
            return wanted;
        });
    }
}
