package dev.stayfixed.jobs;

import dev.stayfixed.platform.CurrentShop;
import dev.stayfixed.platform.Page;
import dev.stayfixed.platform.storage.StoredTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** What the vehicles are found by: the table {@code vehicle_part}, kept by whoever changes what names a vehicle. */
@Component
class VehicleParts {

    /** As many rows as are taken from the index; with more, the list is gone through in its own order. */
    private static final int FEW = 1_000;

    private final JdbcClient jdbc;
    private final PartRows rows;
    private final CurrentShop shop;

    VehicleParts(JdbcClient jdbc, PartRows rows, CurrentShop shop) {
        this.jdbc = jdbc;
        this.rows = rows;
        this.shop = shop;
    }

    /** Makes a vehicle, which is stored, findable under its present names, and under no others. */
    void file(UUID id, Vehicle.Details details) {
        Set<String> wanted = new HashSet<>();
        names(details).forEach(name -> wanted.addAll(SearchText.parts(name)));
        Set<String> kept = new HashSet<>(jdbc.sql("select part from vehicle_part where shop_id = ? and vehicle_id = ?")
                .params(shop.id(), id)
                .query(String.class)
                .list());
        rows.change(
                "delete from vehicle_part where shop_id = ? and vehicle_id = ? and part = ?",
                PartRows.without(kept, wanted),
                part -> new Object[] {shop.id(), id, part});
        rows.change(
                "insert into vehicle_part (vehicle_id, part, shop_id) values (?, ?, ?)",
                PartRows.without(wanted, kept),
                part -> new Object[] {id, part, shop.id()});
    }

    /** What a vehicle is called by. */
    static List<String> names(Vehicle.Details details) {
        List<String> names = new ArrayList<>(List.of(details.description()));
        details.plate().ifPresent(names::add);
        details.vin().ifPresent(vin -> names.add(vin.text()));
        return names;
    }

    /** Ids of one part of the list, the latest first; one more than wanted where there are that many. */
    List<UUID> page(@Nullable String text, Page.Request page) {
        if (text == null || text.isBlank()) {
            return latest("", new SearchText.Stretch("", ""), List.of(), page);
        }
        SearchText.Stretch stretch = SearchText.stretch(text);
        List<UUID> found = jdbc.sql("""
                        select vehicle_id from vehicle_part where shop_id = :shop and part >= :from and part < :until limit :most""")
                .param("shop", shop.id())
                .param("from", stretch.from())
                .param("until", stretch.until())
                .param("most", FEW + 1)
                .query(UUID.class)
                .list();
        if (found.isEmpty()) {
            return List.of();
        }
        return found.size() > FEW
                ? latest("""
                         and exists (select 1 from vehicle_part p
                                     where p.shop_id = :shop and p.vehicle_id = v.id and p.part >= :from and p.part < :until)""", stretch, List.of(), page)
                : latest(" and v.id in (:found)", stretch, found, page);
    }

    private List<UUID> latest(String which, SearchText.Stretch text, List<UUID> found, Page.Request page) {
        return jdbc.sql("select v.id from vehicle v where v.shop_id = :shop"
                        + " and v.created_at <= :at and (v.created_at < :at or v.id < :id)" + which
                        + " order by v.shop_id, v.created_at desc, v.id desc limit :most")
                .param("shop", shop.id())
                .param("at", StoredTime.of(page.after().at()))
                .param("id", page.after().id())
                .param("from", text.from())
                .param("until", text.until())
                .param("found", found)
                .param("most", page.limit() + 1)
                .query(UUID.class)
                .list();
    }
}
