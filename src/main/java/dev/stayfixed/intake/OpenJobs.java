package dev.stayfixed.intake;

import dev.stayfixed.jobs.SearchText;
import dev.stayfixed.jobs.Shops;
import dev.stayfixed.platform.CurrentShop;
import dev.stayfixed.platform.storage.Durably;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;

/**
 * The open jobs, those first that need a person most. Reads the standings that are kept and judges nothing: one query puts all open
 * jobs in order, a second one reads those of one page.
 */
@Service
public class OpenJobs {

    private static final String ALL_OPEN = """
            select j.id, j.opened_at, f.faults, f.fixed, f.back, f.failed_once, f.contradictory, f.awaiting,
                   (select max(r.performed_at) from repair r where r.job_id = j.id) last_repair,
                   (select max(d.start_at) from drive d where d.vehicle_id = j.vehicle_id) last_drive
            from job j
            join (select job_id,
                         count(*) faults,
                         sum(case when standing_state = 'CONFIRMED_FIXED' then 1 else 0 end) fixed,
                         sum(case when standing_state = 'RECURRED' or standing_comeback then 1 else 0 end) back,
                         sum(case when standing_state = 'FAILED_ONCE' then 1 else 0 end) failed_once,
                         sum(case when standing_contradictory then 1 else 0 end) contradictory,
                         sum(case when standing_state = 'AWAITING_REPAIR' then 1 else 0 end) awaiting
                  from fault where shop_id = :shop group by job_id) f on f.job_id = j.id
            where j.shop_id = :shop and j.state = 'OPEN'
            """;

    private static final String WITH_TEXT = """
              and (lower(j.reference) like :like escape '!' or lower(j.customer) like :like escape '!'
                   or j.vehicle_id in (select v.id from vehicle v where v.shop_id = :shop
                                       and (lower(v.plate) like :like escape '!' or lower(v.vin) like :like escape '!'
                                            or lower(v.description) like :like escape '!'))
                   or j.id in (select c.job_id from fault c where c.shop_id = :shop and lower(c.code) like :like escape '!'))
            """;

    private final JdbcClient jdbc;
    private final CurrentShop shop;
    private final Shops shops;
    private final OpenJobRows rows;
    private final Durably durably;
    private final Clock clock;

    OpenJobs(JdbcClient jdbc, CurrentShop shop, Shops shops, OpenJobRows rows, Durably durably, Clock clock) {
        this.jdbc = jdbc;
        this.shop = shop;
        this.shops = shops;
        this.rows = rows;
        this.durably = durably;
        this.clock = clock;
    }

    /**
     * A part of the list.
     *
     * @param counts how many jobs need what, before the choice of one need
     * @param total how many jobs the list has in all its parts
     * @param page from 1
     * @param pages at least 1
     */
    public record Part(List<OpenJob> jobs, Map<Attention, Integer> counts, int total, int page, int pages) {}

    /**
     * Open jobs in which a text occurs; among those that need the same, the one that has been silent longest comes first.
     *
     * @param text part of a plate, a VIN, a description, a code, a customer's name or a reference; blank for all
     * @param only jobs that need this; empty for all
     * @param page from 1; beyond the end it is the last one
     */
    public Part find(String text, Optional<Attention> only, int page, int pageSize) {
        Instant silentSince =
                clock.instant().minus(Duration.ofDays(shops.settings().stallDays()));
        return durably.read(() -> {
            List<Ranked> all = ranked(text.strip(), silentSince);
            Map<Attention, Integer> counts = new EnumMap<>(Attention.class);
            all.forEach(job -> counts.merge(job.attention(), 1, Integer::sum));
            List<Ranked> chosen = all.stream()
                    .filter(job -> only.isEmpty() || only.get() == job.attention())
                    .sorted()
                    .toList();
            int pages = Math.max(1, (chosen.size() + pageSize - 1) / pageSize);
            int shown = Math.min(Math.max(page, 1), pages);
            List<Ranked> part = chosen.subList((shown - 1) * pageSize, Math.min(chosen.size(), shown * pageSize));
            return new Part(rows.inFull(part), counts, chosen.size(), shown, pages);
        });
    }

    private List<Ranked> ranked(String text, Instant silentSince) {
        JdbcClient.StatementSpec query =
                jdbc.sql(text.isEmpty() ? ALL_OPEN : ALL_OPEN + WITH_TEXT).param("shop", shop.id());
        return (text.isEmpty() ? query : query.param("like", SearchText.like(text)))
                .query((row, n) -> {
                    Instant opened = OpenJobRows.time(row, "opened_at").orElseThrow();
                    Optional<Instant> lastDrive = OpenJobRows.time(row, "last_drive");
                    Instant news = Stream.of(OpenJobRows.time(row, "last_repair"), lastDrive)
                            .flatMap(Optional::stream)
                            .max(Comparator.naturalOrder())
                            .filter(opened::isBefore)
                            .orElse(opened);
                    Attention.Facts facts = new Attention.Facts(
                            row.getInt("faults"),
                            row.getInt("fixed"),
                            row.getInt("back"),
                            row.getInt("failed_once"),
                            row.getInt("contradictory"),
                            row.getInt("awaiting"),
                            news);
                    return new Ranked(
                            row.getObject("id", UUID.class), Attention.of(facts, silentSince), news, lastDrive);
                })
                .list();
    }

    /** A job and its place in the order. */
    record Ranked(UUID id, Attention attention, Instant news, Optional<Instant> lastDrive)
            implements Comparable<Ranked> {

        private static final Comparator<Ranked> ORDER = Comparator.comparing(Ranked::attention)
                .thenComparing(Ranked::news)
                .thenComparing(Ranked::id);

        @Override
        public int compareTo(Ranked other) {
            return ORDER.compare(this, other);
        }
    }
}
