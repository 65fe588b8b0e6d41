package dev.stayfixed.telling.delivery;

import com.github.kagkarlsson.scheduler.SchedulerClient;
import com.github.kagkarlsson.scheduler.exceptions.DbSchedulerException;
import com.github.kagkarlsson.scheduler.task.TaskInstance;
import com.github.kagkarlsson.scheduler.task.TaskInstanceId;
import dev.stayfixed.platform.storage.Durably;
import java.time.Instant;
import java.util.UUID;
import javax.sql.DataSource;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;

/** One alarm clock for each pending delivery, set in the transaction that adds the delivery. */
@Component
class Alarms {

    private static final Logger LOG = LoggerFactory.getLogger(Alarms.class);

    static final String TASK = "deliver";

    private final SchedulerClient client;

    Alarms(DataSource dataSource, Durably durably) {
        this.client =
                SchedulerClient.Builder.create(durably.connections(dataSource)).build();
    }

    void set(UUID deliveryId, Instant at) {
        client.scheduleIfNotExists(new TaskInstance<Void>(TASK, deliveryId.toString()), at);
    }

    /** Only makes it ring earlier; where it is ringing, has rung, or another instance takes it right now, there is nothing to do. */
    void hasten(UUID deliveryId, Instant at) {
        try {
            client.reschedule(TaskInstanceId.of(TASK, deliveryId.toString()), at);
        } catch (DbSchedulerException e) {
            LOG.debug("the alarm of delivery {} needs no hastening: {}", deliveryId, e.getMessage());
        }
    }
}
