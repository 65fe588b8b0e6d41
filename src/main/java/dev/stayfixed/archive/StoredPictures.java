package dev.stayfixed.archive;

import dev.stayfixed.platform.CurrentShop;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** The pictures of the logs of drives, each of one revision: a cache. Writes need the running transaction. */
@Component
class StoredPictures {

    private final JdbcClient jdbc;
    private final CurrentShop shop;

    StoredPictures(JdbcClient jdbc, CurrentShop shop) {
        this.jdbc = jdbc;
        this.shop = shop;
    }

    void save(UUID driveId, int revision, LogPicture picture) {
        jdbc.sql("delete from drive_picture where drive_id = ?").param(driveId).update();
        jdbc.sql("insert into drive_picture (drive_id, revision, version, content) values (?, ?, ?, ?)")
                .params(driveId, revision, LogPicture.VERSION, picture.bytes())
                .update();
    }

    Optional<LogPicture> find(UUID driveId, int revision) {
        return jdbc.sql("select content from drive_picture where drive_id = ? and revision = ? and version = ?")
                .params(driveId, revision, LogPicture.VERSION)
                .query((row, number) -> LogPicture.read(row.getBytes("content")))
                .optional();
    }

    /** The drives of a vehicle whose picture is that of their latest revision. */
    Set<UUID> kept(UUID vehicleId) {
        return jdbc.sql("""
                        select d.id from drive d join drive_picture p on p.drive_id = d.id and p.revision = d.revision
                        where d.shop_id = ? and d.vehicle_id = ? and p.version = ?""")
                .params(shop.id(), vehicleId, LogPicture.VERSION)
                .query(UUID.class)
                .set();
    }
}
