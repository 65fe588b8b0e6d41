package dev.stayfixed.learning;

import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import com.github.kagkarlsson.scheduler.task.schedule.FixedDelay;
import dev.stayfixed.jobs.Shops;
import dev.stayfixed.learning.Lesson.Topic;
import dev.stayfixed.platform.CurrentShop;
import dev.stayfixed.platform.storage.Durably;
import dev.stayfixed.telling.delivery.Background;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.springframework.context.annotation.Bean;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * The sums. Whatever is added is a row of its own, so that two who judge at the same time never wait for each other; every now and
 * then the rows are folded into one for each name. A sum is that of all its rows, folded or not.
 */
@Component
class StoredLessons {

    private static final String INSERT =
            "insert into lesson (shop_id, topic, name, folded, repairs, proven, back) values (?, ?, ?, ?, ?, ?, ?)";

    private final JdbcClient jdbc;
    private final JdbcTemplate batches;
    private final CurrentShop shop;
    private final Durably durably;
    private final Shops shops;

    StoredLessons(JdbcClient jdbc, JdbcTemplate batches, CurrentShop shop, Durably durably, Shops shops) {
        this.jdbc = jdbc;
        this.batches = batches;
        this.shop = shop;
        this.durably = durably;
        this.shops = shops;
    }

    @Bean
    Background foldLessons() {
        return new Background(Tasks.recurring("fold-lessons", FixedDelay.ofMinutes(10))
                .execute((instance, context) -> shops.each(this::fold)));
    }

    void add(List<Lesson> lessons) {
        if (!lessons.isEmpty()) {
            batches.batchUpdate(
                    INSERT, lessons.stream().map(lesson -> row(lesson, false)).toList());
        }
    }

    private Object[] row(Lesson lesson, boolean folded) {
        return new Object[] {
            shop.id(), lesson.topic().name(), lesson.name(), folded, lesson.repairs(), lesson.proven(), lesson.back()
        };
    }

    /** All sums of these topics. */
    List<Lesson> of(Collection<Topic> topics) {
        return jdbc.sql("""
                        select topic, name, sum(repairs) repairs, sum(proven) proven, sum(back) back
                        from lesson where shop_id = :shop and topic in (:topics) group by topic, name having sum(repairs) > 0""")
                .param("shop", shop.id())
                .param("topics", topics.stream().map(Enum::name).toList())
                .query(StoredLessons::lesson)
                .list();
    }

    /**
     * The first of the names of a topic.
     *
     * @param left how many more names there are; more than {@link Lessons#COUNTED} stands for any more
     */
    record Leading(List<Lesson> lessons, int left) {}

    /** Those that came back most often; among them, those with the most repairs. */
    Leading leading(Topic topic, int most) {
        int added = jdbc.sql(
                        "select count(distinct name) from lesson where shop_id = ? and topic = ? and folded = false")
                .params(shop.id(), topic.name())
                .query(Integer.class)
                .single();
        // What was added since the last folding can move so many names past others, and no more.
        List<Lesson> candidates = jdbc.sql("""
                        select l.topic, l.name, sum(l.repairs) repairs, sum(l.proven) proven, sum(l.back) back
                        from (select f.name from (select name from lesson where shop_id = :shop and topic = :topic and folded = true
                                                  order by shop_id, topic, folded, back desc, repairs desc, name limit :most) f
                              union select name from lesson where shop_id = :shop and topic = :topic and folded = false) c
                        join lesson l on l.shop_id = :shop and l.topic = :topic and l.name = c.name
                        group by l.topic, l.name""")
                .param("shop", shop.id())
                .param("topic", topic.name())
                .param("most", most + added)
                .query(StoredLessons::lesson)
                .list();
        List<Lesson> leading = candidates.stream()
                .filter(lesson -> lesson.repairs() > 0)
                .sorted(Comparator.comparing((Lesson lesson) -> -lesson.back())
                        .thenComparing(lesson -> -lesson.repairs())
                        .thenComparing(Lesson::name))
                .limit(most)
                .toList();
        return new Leading(leading, names(topic) - leading.size());
    }

    private int names(Topic topic) {
        int folded = jdbc.sql("""
                        select count(*) from (select 1 from lesson where shop_id = ? and topic = ? and folded = true limit ?) n""")
                .params(shop.id(), topic.name(), Lessons.COUNTED + Lessons.LONGEST_LIST + 1)
                .query(Integer.class)
                .single();
        // Of the names to which something was added: those that are new, less those of which nothing is left.
        int moved = jdbc.sql("""
                        select coalesce(sum(case when known = 0 and repairs > 0 then 1 when known > 0 and repairs = 0 then -1 else 0 end), 0)
                        from (select l.name, sum(case when l.folded then 1 else 0 end) known, sum(l.repairs) repairs
                              from (select distinct name from lesson where shop_id = :shop and topic = :topic and folded = false) c
                              join lesson l on l.shop_id = :shop and l.topic = :topic and l.name = c.name
                              group by l.name) n""")
                .param("shop", shop.id())
                .param("topic", topic.name())
                .query(Integer.class)
                .single();
        return folded + moved;
    }

    /** Folds what was added into one row for each name; no sum changes. */
    void fold() {
        durably.write(() -> {
            List<Added> added = jdbc.sql("""
                            select id, topic, name, repairs, proven, back from lesson
                            where shop_id = ? and folded = false order by id for update""")
                    .param(shop.id())
                    .query((row, number) -> new Added(row.getLong("id"), lesson(row, number)))
                    .list();
            Lesson.change(Stream.of(), added.stream().map(Added::lesson)).forEach(this::foldIn);
            batches.batchUpdate(
                    "delete from lesson where shop_id = ? and id = ?",
                    added.stream()
                            .map(row -> new Object[] {shop.id(), row.id()})
                            .toList());
        });
    }

    private record Added(long id, Lesson lesson) {}

    private void foldIn(Lesson lesson) {
        UUID shopId = shop.id();
        int updated = jdbc.sql("""
                        update lesson set repairs = repairs + ?, proven = proven + ?, back = back + ?
                        where shop_id = ? and topic = ? and folded = true and name = ?""")
                .params(lesson.repairs(), lesson.proven(), lesson.back())
                .params(shopId, lesson.topic().name(), lesson.name())
                .update();
        if (updated == 0) {
            batches.update(INSERT, row(lesson, true));
        } else {
            jdbc.sql(
                            "delete from lesson where shop_id = ? and topic = ? and folded = true and name = ? and repairs = 0")
                    .params(shopId, lesson.topic().name(), lesson.name())
                    .update();
        }
    }

    private static Lesson lesson(ResultSet row, int number) throws SQLException {
        return new Lesson(
                Topic.valueOf(row.getString("topic")),
                row.getString("name"),
                row.getInt("repairs"),
                row.getInt("proven"),
                row.getInt("back"));
    }
}
