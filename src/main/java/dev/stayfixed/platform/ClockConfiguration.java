package dev.stayfixed.platform;

import java.time.Clock;
import java.time.Duration;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** The one place that reads the system clock. */
@Configuration(proxyBeanMethods = false)
class ClockConfiguration {

    /** UTC in whole milliseconds, which both databases keep exactly. */
    @Bean
    Clock clock() {
        return Clock.tick(Clock.systemUTC(), Duration.ofMillis(1));
    }
}
