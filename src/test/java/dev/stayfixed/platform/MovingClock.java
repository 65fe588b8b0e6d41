package dev.stayfixed.platform;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Primary;

/** A clock that moves when a test says so. It begins at noon of 30 June 2026. */
public final class MovingClock extends Clock {

    private volatile Instant now = SetClock.NOW;

    /** Gives the service this clock. */
    @TestConfiguration(proxyBeanMethods = false)
    public static class Given {
        @Bean
        @Primary
        MovingClock movingClock() {
            return new MovingClock();
        }
    }

    public void forward(Duration time) {
        now = now.plus(time);
    }

    @Override
    public Instant instant() {
        return now;
    }

    @Override
    public ZoneId getZone() {
        return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
        return this;
    }
}
