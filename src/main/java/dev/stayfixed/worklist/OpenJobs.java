package dev.stayfixed.worklist;

import dev.stayfixed.jobs.Job;
import dev.stayfixed.jobs.JobSearch;
import dev.stayfixed.jobs.SearchText;
import dev.stayfixed.jobs.Shops;
import dev.stayfixed.platform.CurrentShop;
import dev.stayfixed.platform.storage.Durably;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;

/**
 * The open jobs, those first that need a person most. Reads the places that {@link OpenJobPlaces} keeps: what is needed is a stretch
 * of an index, so that a page costs the same however many jobs are open.
 */
@Service
public class OpenJobs {

    /** So many jobs are counted exactly; beyond, a person only needs to know that there are more. */
    public static final int COUNTED = 1_000;

    private final JdbcClient jdbc;
    private final CurrentShop shop;
    private final Shops shops;
    private final JobSearch search;
    private final OpenJobRows rows;
    private final Durably durably;
    private final Clock clock;

    OpenJobs(
            JdbcClient jdbc,
            CurrentShop shop,
            Shops shops,
            JobSearch search,
            OpenJobRows rows,
            Durably durably,
            Clock clock) {
        this.jdbc = jdbc;
        this.shop = shop;
        this.shops = shops;
        this.search = search;
        this.rows = rows;
        this.durably = durably;
        this.clock = clock;
    }

    /** Those of some jobs that are open. */
    public Set<UUID> openOf(Collection<UUID> jobs) {
        return jobs.isEmpty()
                ? Set.of()
                : durably.read(() ->
                        Set.copyOf(jdbc.sql("select job_id from open_job where shop_id = :shop and job_id in (:jobs)")
                                .param("shop", shop.id())
                                .param("jobs", jobs)
                                .query(UUID.class)
                                .list()));
    }

    /**
     * A part of the list.
     *
     * @param counts how many jobs need what, before the choice of one need; more than {@link #COUNTED} stands for any more
     * @param sample whether the text occurs in so many jobs that not all were counted: there are at least as many as that
     * @param total how many jobs the list has in all its parts, at least
     * @param more whether there may be more than {@code total}
     * @param page from 1
     * @param pages at least 1; where there may be more, those that are known of
     */
    public record Part(
            List<OpenJob> jobs,
            Map<Attention, Integer> counts,
            boolean sample,
            int total,
            boolean more,
            int page,
            int pages) {}

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
        OpenJobOrder order = new OpenJobOrder(jdbc, shop.id(), silentSince);
        List<Attention> needs = only.map(List::of).orElse(List.of(Attention.values()));
        return durably.read(() -> {
            OpenJobOrder.Found found = text.isBlank() ? order.all() : found(order, SearchText.stretch(text));
            OpenJobOrder.Cut cut = found.cut(needs, page, pageSize);
            return new Part(
                    rows.inFull(cut.jobs()),
                    found.counts(),
                    found.sample(),
                    cut.total(),
                    cut.more(),
                    cut.page(),
                    cut.pages());
        });
    }

    private OpenJobOrder.Found found(OpenJobOrder order, SearchText.Stretch text) {
        JobSearch.Matches matches = search.matching(text, Optional.of(Job.State.OPEN));
        return matches.more() ? order.many(text, matches.jobs()) : order.few(matches.jobs());
    }
}
