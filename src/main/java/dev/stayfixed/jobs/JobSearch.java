package dev.stayfixed.jobs;

import dev.stayfixed.platform.CurrentShop;
import dev.stayfixed.platform.Page;
import dev.stayfixed.platform.storage.StoredTime;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;

/**
 * Finds jobs by a part of what names them or their vehicle. Where it occurs in few jobs, they are taken from the index of parts; where
 * it occurs in many, a list is gone through in its own order until enough are found.
 */
@Service
public class JobSearch {

    /** As many jobs as are taken from the index of parts. */
    public static final int FEW = 1_000;

    /** A part can begin several rows of a job; with more rows than this there are many jobs, as far as it matters. */
    private static final int FEW_ROWS = 2 * FEW;

    private final JdbcClient jdbc;
    private final CurrentShop shop;

    JobSearch(JdbcClient jdbc, CurrentShop shop) {
        this.jdbc = jdbc;
        this.shop = shop;
    }

    /**
     * The jobs in which a text occurs.
     *
     * @param state only jobs in this state; empty for all
     * @return some of them, and whether there may be more
     */
    public Matches matching(SearchText.Stretch text, Optional<Job.State> state) {
        List<String> states = state.map(List::of).orElse(List.of(Job.State.values())).stream()
                .map(Enum::name)
                .toList();
        // One state at a time, as each is a stretch of the index.
        boolean more = false;
        Set<UUID> found = new java.util.LinkedHashSet<>();
        for (String one : states) {
            List<UUID> rows = jdbc.sql("""
                            select job_id from job_part where shop_id = :shop and state = :state and part >= :from and part < :until
                            limit :most""")
                    .param("shop", shop.id())
                    .param("state", one)
                    .param("from", text.from())
                    .param("until", text.until())
                    .param("most", FEW_ROWS + 1)
                    .query(UUID.class)
                    .list();
            more |= rows.size() > FEW_ROWS;
            found.addAll(rows);
        }
        return new Matches(found.stream().limit(FEW).toList(), more || found.size() > FEW);
    }

    /**
     * Jobs that were found.
     *
     * @param jobs at most {@link #FEW}
     * @param more whether there may be others
     */
    public record Matches(List<UUID> jobs, boolean more) {}

    /** Ids of one part of the list, the latest first; one more than wanted where there are that many. */
    List<UUID> page(Optional<Job.State> state, @Nullable String text, Page.Request page) {
        if (text == null || text.isBlank()) {
            return latest(state, page, "", new SearchText.Stretch("", ""), List.of());
        }
        SearchText.Stretch stretch = SearchText.stretch(text);
        Matches matches = matching(stretch, state);
        if (matches.more()) {
            return latest(state, page, """
                     and exists (select 1 from job_part p
                                 where p.shop_id = :shop and p.job_id = j.id and p.part >= :from and p.part < :until)""", stretch, List.of());
        }
        return matches.jobs().isEmpty()
                ? List.of()
                : latest(state, page, " and j.id in (:jobs)", stretch, matches.jobs());
    }

    private List<UUID> latest(
            Optional<Job.State> state, Page.Request page, String which, SearchText.Stretch text, List<UUID> jobs) {
        String inState = state.isPresent() ? " and j.state = :state" : "";
        String order = state.isPresent() ? "j.shop_id, j.state, " : "j.shop_id, ";
        return jdbc.sql("select j.id from job j where j.shop_id = :shop" + inState
                        + " and j.opened_at <= :at and (j.opened_at < :at or j.id < :id)" + which
                        + " order by " + order + "j.opened_at desc, j.id desc limit :most")
                .param("shop", shop.id())
                .param("state", state.map(Enum::name).orElse(""))
                .param("at", StoredTime.of(page.after().at()))
                .param("id", page.after().id())
                .param("from", text.from())
                .param("until", text.until())
                .param("jobs", jobs)
                .param("most", page.limit() + 1)
                .query(UUID.class)
                .list();
    }
}
