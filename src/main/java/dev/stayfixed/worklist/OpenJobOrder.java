package dev.stayfixed.worklist;

import dev.stayfixed.jobs.SearchText;
import dev.stayfixed.platform.storage.StoredTime;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * The open jobs in their order, at one moment. All that need the same are one stretch of an index: the stalled ones that of all that
 * can stall, up to a moment; the others begin there.
 */
final class OpenJobOrder {

    private final JdbcClient jdbc;
    private final UUID shop;
    private final Instant silentSince;

    /** @param silentSince news from before this are too old */
    OpenJobOrder(JdbcClient jdbc, UUID shop, Instant silentSince) {
        this.jdbc = jdbc;
        this.shop = shop;
        this.silentSince = silentSince;
    }

    /** A job and what it needs. */
    record Ranked(UUID id, Attention attention) {}

    /** One part of what was found, as {@link OpenJobs.Part}. */
    record Cut(List<Ranked> jobs, int total, boolean more, int page, int pages) {}

    /** Jobs that a list is made of. */
    interface Found {

        /** More than {@link OpenJobs#COUNTED} stands for any more. */
        Map<Attention, Integer> counts();

        /** Whether there may be more of everything than was counted. */
        default boolean sample() {
            return false;
        }

        /**
         * One part of those that need one of these.
         *
         * @param page from 1; beyond the end it is the last one
         */
        Cut cut(List<Attention> needs, int page, int size);
    }

    Found all() {
        return new All(bounded(), false, "", new SearchText.Stretch("", ""));
    }

    /** These jobs, as far as they are open. */
    Found few(List<UUID> jobs) {
        return new Few(places(jobs));
    }

    /** The jobs in which a text occurs. */
    Found many(SearchText.Stretch text, List<UUID> some) {
        return new All(
                new Few(places(some)).counts(),
                true,
                " and exists (select 1 from job_part p where p.shop_id = :shop and p.job_id = o.job_id and p.part >= :from and p.part < :until)",
                text);
    }

    private List<Few.Place> places(List<UUID> jobs) {
        return jobs.isEmpty()
                ? List.of()
                : jdbc.sql("select job_id, need, news_at from open_job where shop_id = :shop and job_id in (:jobs)")
                        .param("shop", shop)
                        .param("jobs", jobs)
                        .query(this::place)
                        .list();
    }

    private Few.Place place(ResultSet row, int number) throws SQLException {
        Instant news = StoredTime.in(row, "news_at");
        Attention need = Attention.valueOf(row.getString("need")).after(news, silentSince);
        return new Few.Place(new Ranked(row.getObject("job_id", UUID.class), need), news);
    }

    /** So few that they are put in order here. */
    private record Few(List<Place> places) implements Found {

        record Place(Ranked job, Instant news) {
            private static final Comparator<Place> ORDER = Comparator.comparing(
                            (Place place) -> place.job().attention())
                    .thenComparing(Place::news)
                    .thenComparing(place -> place.job().id());
        }

        @Override
        public Map<Attention, Integer> counts() {
            Map<Attention, Integer> counts = new EnumMap<>(Attention.class);
            places.forEach(place -> counts.merge(place.job().attention(), 1, Integer::sum));
            return counts;
        }

        @Override
        public Cut cut(List<Attention> needs, int page, int size) {
            List<Ranked> chosen = places.stream()
                    .filter(place -> needs.contains(place.job().attention()))
                    .sorted(Place.ORDER)
                    .map(Place::job)
                    .toList();
            int pages = pages(chosen.size(), size);
            int shown = Math.min(Math.max(page, 1), pages);
            List<Ranked> part = chosen.subList((shown - 1) * size, Math.min(chosen.size(), shown * size));
            return new Cut(part, chosen.size(), false, shown, pages);
        }
    }

    /** However many: only what is shown is read, and counting stops where nobody needs to know any more. */
    private final class All implements Found {

        private final Map<Attention, Integer> counts;
        private final boolean sample;
        private final String which;
        private final SearchText.Stretch text;

        /** @param which a condition that all jobs fulfil, on {@code :from} and {@code :until} of the text */
        All(Map<Attention, Integer> counts, boolean sample, String which, SearchText.Stretch text) {
            this.counts = counts;
            this.sample = sample;
            this.which = which;
            this.text = text;
        }

        @Override
        public boolean sample() {
            return sample;
        }

        @Override
        public Map<Attention, Integer> counts() {
            return counts;
        }

        @Override
        public Cut cut(List<Attention> needs, int page, int size) {
            int known = needs.stream()
                    .mapToInt(need -> Math.min(count(need), OpenJobs.COUNTED))
                    .sum();
            int pages = pages(known, size);
            if (needs.stream().noneMatch(this::isLong)) {
                int shown = Math.min(Math.max(page, 1), pages);
                return new Cut(read(needs, (shown - 1) * size, size), known, false, shown, pages);
            }
            int shown = Math.max(page, 1);
            List<Ranked> read = read(needs, (shown - 1) * size, size + 1);
            if (read.isEmpty()) {
                int all = needs.stream().mapToInt(this::exactly).sum();
                int last = pages(all, size);
                return new Cut(read(needs, (last - 1) * size, size), all, false, last, last);
            }
            return read.size() > size
                    ? new Cut(read.subList(0, size), known, true, shown, Math.max(pages, shown + 1))
                    : new Cut(read, (shown - 1) * size + read.size(), false, shown, shown);
        }

        private int count(Attention need) {
            return counts.getOrDefault(need, 0);
        }

        private boolean isLong(Attention need) {
            return sample || count(need) > OpenJobs.COUNTED;
        }

        private int exactly(Attention need) {
            return isLong(need) ? number(need) : count(need);
        }

        private List<Ranked> read(List<Attention> needs, int from, int most) {
            List<Ranked> read = new ArrayList<>();
            int skip = from;
            for (Attention need : needs) {
                if (read.size() < most && (isLong(need) || skip < count(need))) {
                    read.addAll(stretch(need, skip, most - read.size()));
                }
                skip = read.isEmpty() && skip > 0 ? skip - exactly(need) : 0;
            }
            return read;
        }

        private List<Ranked> stretch(Attention need, int skip, int most) {
            return with(
                            jdbc.sql("select o.job_id " + of(need) + which + inOrder(need)
                                    + " limit :most offset :skip"),
                            need)
                    .param("most", most)
                    .param("skip", skip)
                    .query(UUID.class)
                    .list()
                    .stream()
                    .map(id -> new Ranked(id, need))
                    .toList();
        }

        private int number(Attention need) {
            return with(jdbc.sql("select count(*) " + of(need) + which), need)
                    .query(Integer.class)
                    .single();
        }

        private JdbcClient.StatementSpec with(JdbcClient.StatementSpec sql, Attention need) {
            return sql.param("shop", shop)
                    .param("since", StoredTime.of(silentSince))
                    .param("need", need.name())
                    .param("from", text.from())
                    .param("until", text.until());
        }
    }

    private static int pages(int jobs, int size) {
        return Math.max(1, (jobs + size - 1) / size);
    }

    private Map<Attention, Integer> bounded() {
        String each = Arrays.stream(Attention.values())
                .map(need -> "select '%s' need, count(*) jobs from (select 1 %s limit %d) n"
                        .formatted(need, of(need).replace(":need", "'" + need + "'"), OpenJobs.COUNTED + 1))
                .collect(Collectors.joining(" union all "));
        Map<Attention, Integer> counts = new EnumMap<>(Attention.class);
        jdbc.sql(each)
                .param("shop", shop)
                .param("since", StoredTime.of(silentSince))
                .query((ResultSet row) -> {
                    if (row.getInt("jobs") > 0) {
                        counts.put(Attention.valueOf(row.getString("need")), row.getInt("jobs"));
                    }
                });
        return counts;
    }

    private static String of(Attention need) {
        String stretch = "from open_job o where o.shop_id = :shop and ";
        if (need == Attention.STALLED) {
            return stretch + "o.can_stall = true and o.news_at < :since";
        }
        return stretch + "o.need = :need" + (need.canStall() ? " and o.news_at >= :since" : "");
    }

    /** The columns of an index in full, so that the rows are read in its order. */
    private static String inOrder(Attention need) {
        return " order by o.shop_id, " + (need == Attention.STALLED ? "o.can_stall" : "o.need")
                + ", o.news_at, o.job_id";
    }
}
