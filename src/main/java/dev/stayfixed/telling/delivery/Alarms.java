package dev.stayfixed.telling.delivery;

import dev.stayfixed.platform.storage.Durably;
import dev.stayfixed.platform.storage.StoredTime;
import java.time.Instant;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * One alarm clock for each receiver that something waits for, set in the transaction that adds the message. It rings on one instance at
 * a time, which then sends all that is due: so no receiver is written to by two at once.
 */
@Component
class Alarms {

    static final String TASK = "deliver";

    private final JdbcClient jdbc;
    private final Durably durably;

    Alarms(JdbcClient jdbc, Durably durably) {
        this.jdbc = jdbc;
        this.durably = durably;
    }

    /**
     * Makes the receiver's alarm ring by then, where it is not ringing already. Whoever hears it cannot put it away before the running
     * write has ended, so what this write adds is seen.
     */
    void set(Addressee to, Instant at) {
        durably.share(name(to));
        // Not by the client of db-scheduler: there two who set the same alarm at once fail on PostgreSQL.
        int added = jdbc.sql("""
                        insert into scheduled_tasks (task_name, task_instance, execution_time, picked, version)
                        values (?, ?, ?, false, 1) on conflict do nothing""").params(TASK, to.name(), StoredTime.of(at)).update();
        if (added == 0) {
            jdbc.sql("""
                            update scheduled_tasks set execution_time = ?, version = version + 1
                            where task_name = ? and task_instance = ? and not picked and execution_time > ?""")
                    .params(StoredTime.of(at), TASK, to.name(), StoredTime.of(at))
                    .update();
        }
    }

    /** Whether no running write is about to add something for the receiver; none can until the running one has ended. */
    boolean nothingIsAdded(Addressee to) {
        return durably.holdIfFree(name(to));
    }

    private static String name(Addressee to) {
        return "receiver:" + to.name();
    }
}
