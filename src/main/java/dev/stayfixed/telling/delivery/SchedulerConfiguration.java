package dev.stayfixed.telling.delivery;

import com.github.kagkarlsson.scheduler.Scheduler;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import com.github.kagkarlsson.scheduler.task.schedule.FixedDelay;
import dev.stayfixed.jobs.Shops;
import dev.stayfixed.platform.storage.Durably;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import javax.sql.DataSource;
import org.springframework.boot.autoconfigure.condition.ConditionalOnBooleanProperty;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.event.EventListener;

/** The scheduler, on the service's own clock and on connections that keep the rules of durable writes. */
@Configuration(proxyBeanMethods = false)
class SchedulerConfiguration {

    @Bean
    Background tidyLog(Outbox outbox, Shops shops) {
        return new Background(Tasks.recurring("tidy-delivery-log", FixedDelay.ofHours(24))
                .execute((instance, context) -> shops.each(outbox::tidy)));
    }

    /** An instance that misses its heartbeat four times is taken for dead; no delivery may take that long. */
    @Bean(destroyMethod = "stop")
    @ConditionalOnBooleanProperty(name = "stayfixed.background", matchIfMissing = true)
    Scheduler scheduler(
            DataSource dataSource,
            Durably durably,
            DeliveryTask delivery,
            List<Background> background,
            Clock clock,
            DeliverySettings settings) {
        return Scheduler.create(durably.connections(dataSource), List.of(delivery.task()))
                .startTasks(background.stream().map(Background::task).toList())
                .clock(clock::instant)
                // One for each receiver that is sent to: some slow ones hold nobody up.
                .threads(8)
                .pollingInterval(Duration.ofSeconds(2))
                .heartbeatInterval(settings.heartbeat())
                .missedHeartbeatsLimit(4)
                .shutdownMaxWait(Duration.ofSeconds(25))
                .build();
    }

    /** Starts it when the service serves. */
    @Bean
    @ConditionalOnBooleanProperty(name = "stayfixed.background", matchIfMissing = true)
    Start start(Scheduler scheduler) {
        return new Start(scheduler);
    }

    record Start(Scheduler scheduler) {
        @EventListener(ApplicationReadyEvent.class)
        void start() {
            scheduler.start();
        }
    }
}
