package dev.stayfixed.jobs;

import dev.stayfixed.platform.CurrentShop;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** What the jobs are found by: the table {@code job_part}, kept by whoever changes what names a job or its vehicle. */
@Component
class JobParts {

    private final JdbcClient jdbc;
    private final PartRows rows;
    private final CurrentShop shop;

    JobParts(JdbcClient jdbc, PartRows rows, CurrentShop shop) {
        this.jdbc = jdbc;
        this.rows = rows;
        this.shop = shop;
    }

    /** Makes a job, which is stored, findable under its present names, and under no others. */
    void file(Job job, Vehicle.Details vehicle) {
        Set<String> wanted = parts(job, vehicle);
        Set<String> kept = new HashSet<>(jdbc.sql("select part from job_part where shop_id = ? and job_id = ?")
                .params(shop.id(), job.id())
                .query(String.class)
                .list());
        rows.change(
                "delete from job_part where shop_id = ? and job_id = ? and part = ?",
                PartRows.without(kept, wanted),
                part -> new Object[] {shop.id(), job.id(), part});
        rows.change(
                "insert into job_part (job_id, part, shop_id, state) values (?, ?, ?, ?)",
                PartRows.without(wanted, kept),
                part -> new Object[] {job.id(), part, shop.id(), job.state().name()});
    }

    /** From now on found among the jobs of this state. */
    void move(UUID jobId, Job.State state) {
        jdbc.sql("update job_part set state = ? where shop_id = ? and job_id = ?")
                .params(state.name(), shop.id(), jobId)
                .update();
    }

    static Set<String> parts(Job job, Vehicle.Details vehicle) {
        List<String> names = VehicleParts.names(vehicle);
        job.labels().reference().ifPresent(names::add);
        job.labels().customer().ifPresent(names::add);
        job.faults().forEach(fault -> names.add(fault.terms().code().text()));
        Set<String> parts = new HashSet<>();
        names.forEach(name -> parts.addAll(SearchText.parts(name)));
        job.labels().complaint().ifPresent(complaint -> parts.addAll(SearchText.words(complaint)));
        return parts;
    }
}
