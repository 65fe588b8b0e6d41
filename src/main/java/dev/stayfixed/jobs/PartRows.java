package dev.stayfixed.jobs;

import java.util.List;
import java.util.Set;
import java.util.function.Function;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.stereotype.Component;

/** Changes rows of what something is found by, always in the order of the parts, so that two who write do not wait for each other. */
@Component
class PartRows {

    private final JdbcTemplate batches;

    PartRows(JdbcTemplate batches) {
        this.batches = batches;
    }

    /**
     * One statement for each part.
     *
     * @param values what the statement needs of a part
     */
    void change(String sql, List<String> parts, Function<String, Object[]> values) {
        if (!parts.isEmpty()) {
            batches.batchUpdate(sql, parts.stream().map(values).toList());
        }
    }

    /** In order. */
    static List<String> without(Set<String> all, Set<String> some) {
        return all.stream().filter(part -> !some.contains(part)).sorted().toList();
    }
}
