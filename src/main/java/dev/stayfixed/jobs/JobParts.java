package dev.stayfixed.jobs;

import dev.stayfixed.platform.CurrentShop;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** What the jobs are found by: the table {@code job_part}, kept by whoever changes what names a job or its vehicle. */
@Component
class JobParts {

    private final JdbcClient jdbc;
    private final JdbcTemplate batches;
    private final CurrentShop shop;

    JobParts(JdbcClient jdbc, JdbcTemplate batches, CurrentShop shop) {
        this.jdbc = jdbc;
        this.batches = batches;
        this.shop = shop;
    }

    /** Makes a job, which is stored, findable under its present names, and under no others. */
    void file(Job job, Vehicle.Details vehicle) {
        Set<String> wanted = parts(job, vehicle);
        Set<String> kept = new HashSet<>(jdbc.sql("select part from job_part where job_id = ?")
                .param(job.id())
                .query(String.class)
                .list());
        write(
                "delete from job_part where job_id = ? and part = ?",
                without(kept, wanted).map(part -> new Object[] {job.id(), part}).toList());
        write(
                "insert into job_part (job_id, part, shop_id, state) values (?, ?, ?, ?)",
                without(wanted, kept)
                        .map(part -> new Object[] {
                            job.id(), part, shop.id(), job.state().name()
                        })
                        .toList());
    }

    /** From now on found among the jobs of this state. */
    void move(UUID jobId, Job.State state) {
        jdbc.sql("update job_part set state = ? where job_id = ?")
                .params(state.name(), jobId)
                .update();
    }

    private void write(String sql, List<Object[]> rows) {
        if (!rows.isEmpty()) {
            batches.batchUpdate(sql, rows);
        }
    }

    private static java.util.stream.Stream<String> without(Set<String> all, Set<String> some) {
        return all.stream().filter(part -> !some.contains(part)).sorted();
    }

    static Set<String> parts(Job job, Vehicle.Details vehicle) {
        List<String> names = new ArrayList<>(List.of(vehicle.description()));
        vehicle.plate().ifPresent(names::add);
        vehicle.vin().ifPresent(vin -> names.add(vin.text()));
        job.labels().reference().ifPresent(names::add);
        job.labels().customer().ifPresent(names::add);
        job.faults().forEach(fault -> names.add(fault.terms().code().text()));
        Set<String> parts = new HashSet<>();
        names.forEach(name -> parts.addAll(SearchText.parts(name)));
        job.labels().complaint().ifPresent(complaint -> parts.addAll(SearchText.words(complaint)));
        return parts;
    }
}
