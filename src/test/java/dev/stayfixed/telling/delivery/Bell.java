package dev.stayfixed.telling.delivery;

import com.github.kagkarlsson.scheduler.task.Task;
import com.github.kagkarlsson.scheduler.testhelper.ManualScheduler;
import com.github.kagkarlsson.scheduler.testhelper.SettableClock;
import com.github.kagkarlsson.scheduler.testhelper.TestHelper;
import dev.stayfixed.platform.MovingClock;
import dev.stayfixed.platform.storage.Durably;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.sql.DataSource;
import org.springframework.boot.test.context.TestComponent;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Lets the scheduler do what is due, when a test says so. */
@TestComponent
public class Bell {

    private final ManualScheduler scheduler;
    private final SettableClock schedulerClock = new SettableClock();
    private final MovingClock clock;
    private final JdbcClient jdbc;

    Bell(
            DataSource dataSource,
            Durably durably,
            DeliveryTask delivery,
            List<Background> background,
            MovingClock clock,
            JdbcClient jdbc) {
        List<Task<?>> tasks = new ArrayList<>(List.of(delivery.task()));
        this.clock = clock;
        this.jdbc = jdbc;
        this.scheduler = TestHelper.createManualScheduler(durably.connections(dataSource), tasks)
                .clock(schedulerClock)
                .startTasks(background.stream().map(Background::task).toList())
                .build();
        schedulerClock.set(clock.instant());
        scheduler.start();
    }

    /** Everything that is due now, and what becomes due by it. */
    public void ring() {
        schedulerClock.set(clock.instant());
        for (int round = 0; round < 20; round++) {
            scheduler.runAnyDueExecutions();
        }
    }

    /** Moves time to the next alarm of a delivery, and rings; false when there is none. */
    public boolean ringNext() {
        Optional<Instant> next = jdbc.sql("select min(execution_time) from scheduled_tasks where task_name = 'deliver'")
                .query((row, n) -> Optional.ofNullable(row.getObject(1, java.time.OffsetDateTime.class))
                        .map(java.time.OffsetDateTime::toInstant))
                .single();
        next.filter(clock.instant()::isBefore).ifPresent(at -> clock.forward(Duration.between(clock.instant(), at)));
        ring();
        return next.isPresent();
    }
}
