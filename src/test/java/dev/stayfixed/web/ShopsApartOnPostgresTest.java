package dev.stayfixed.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.stayfixed.platform.CurrentShop;
import dev.stayfixed.platform.OnPostgres;
import dev.stayfixed.platform.ShopByHeader;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.context.annotation.Import;
import org.springframework.test.context.TestPropertySource;

/** And by plain SQL over the connections of the service, for every table that there is. */
@OnPostgres
@Import(ShopByHeader.class)
@TestPropertySource(properties = {"stayfixed.webhooks.private-targets=true", "stayfixed.background=false"})
class ShopsApartOnPostgresTest extends ShopsApart {

    private static final CurrentShop SHOP = new CurrentShop();

    /** They say nothing of any shop, or who asks, and so for which one. */
    private static final Set<String> OPEN = Set.of(
            "scheduled_tasks",
            "flyway_schema_history",
            "person",
            "membership",
            "entry_link",
            "api_token",
            "web_session",
            "web_session_attributes");

    @Test
    void noRowOfAnotherIsRead() {
        Set<String> filled = new TreeSet<>();
        for (String table : fenced()) {
            if (count(table) > 0) {
                filled.add(table);
            }
            long theirs = all.sql(
                            "select count(*) from pg_policy where polrelid = cast(? as regclass) and polname = 'of_shop'")
                    .param(table)
                    .query(Long.class)
                    .single();
            assertThat(theirs).as("policies of " + table).isOne();
            long expected = table.equals("shop") ? 1 : 0;
            assertThat(SHOP.in(ShopByHeader.OTHER, () -> seen(table, "of_other")))
                    .as(table)
                    .isEqualTo(expected);
            assertThat(SHOP.in(CurrentShop.NOWHERE, () -> seen(table, "of_nobody")))
                    .as(table)
                    .isZero();
        }
        assertThat(filled).as("tables that hold rows of ours").hasSizeGreaterThan(20);
    }

    /** What the other shop did itself in other stories does not count. */
    private long seen(String table, String name) {
        boolean ofShop = all.sql(
                                "select count(*) from information_schema.columns where table_name = ? and column_name = 'shop_id'")
                        .param(table)
                        .query(Long.class)
                        .single()
                > 0;
        String which = ofShop ? " where shop_id <> '" + ShopByHeader.OTHER + "'" : "";
        return jdbc.sql("select count(*) as " + name + " from " + table + which)
                .query(Long.class)
                .single();
    }

    @Test
    void noRowIsWrittenForAnother() {
        for (String table : fenced()) {
            Optional<String> row = all.sql("select cast(row_to_json(t) as text) from " + table + " t"
                            + (table.equals("shop") ? " where id = '" + CurrentShop.DEFAULT + "'" : "") + " limit 1")
                    .query(String.class)
                    .optional();
            row.ifPresent(ours -> assertThatThrownBy(() -> SHOP.in(
                            ShopByHeader.OTHER,
                            () -> jdbc.sql("insert into " + table + " select * from json_populate_record(null::" + table
                                            + ", cast(? as json))")
                                    .param(ours)
                                    .update()))
                    .as(table)
                    .hasStackTraceContaining("row-level security"));
        }
    }

    @Test
    void noRowIsMovedToAnotherOrDeletedThere() {
        UUID theirs = UUID.randomUUID();
        SHOP.in(
                ShopByHeader.OTHER,
                () -> jdbc.sql("""
                                insert into vehicle (id, shop_id, description, ignition, created_at, version)
                                values (?, ?, 'theirs', 'SPARK', timestamp with time zone '2026-01-02 00:00:00+00:00', 1)""").params(theirs, ShopByHeader.OTHER).update());
        assertThatThrownBy(() -> SHOP.in(
                        ShopByHeader.OTHER,
                        () -> jdbc.sql("update vehicle set shop_id = ? where id = ?")
                                .params(CurrentShop.DEFAULT, theirs)
                                .update()))
                .hasStackTraceContaining("row-level security");
        long before = count("delivery_attempt") + count("job_part") + count("event");
        for (String table : Set.of("delivery_attempt", "job_part", "open_job", "comeback")) {
            assertThat(SHOP.in(
                            ShopByHeader.OTHER,
                            () -> jdbc.sql("delete from " + table).update()))
                    .as(table)
                    .isZero();
        }
        assertThat(count("delivery_attempt") + count("job_part") + count("event"))
                .isEqualTo(before);
        assertThat(SHOP.in(
                        ShopByHeader.OTHER,
                        () -> jdbc.sql("update vehicle set description = 'taken over' where shop_id = ?")
                                .param(CurrentShop.DEFAULT)
                                .update()))
                .isZero();
    }

    @Test
    void theServiceOwnsNothing() {
        assertThat(jdbc.sql("select current_user").query(String.class).single()).isEqualTo("stayfixed_work");
        assertThat(jdbc.sql("""
                                select count(*) from pg_class c join pg_roles r on r.oid = c.relowner
                                where r.rolname = current_user""").query(Long.class).single()).isZero();
        assertThatThrownBy(() -> jdbc.sql("alter table vehicle disable row level security")
                        .update())
                .hasStackTraceContaining("must be owner");
    }

    private Set<String> fenced() {
        Set<String> fenced = new TreeSet<>(tables());
        fenced.removeAll(OPEN);
        return fenced;
    }

    private long count(String table) {
        return all.sql("select count(*) from " + table).query(Long.class).single();
    }
}
