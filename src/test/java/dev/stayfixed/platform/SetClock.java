package dev.stayfixed.platform;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Primary;

/** In the tests it is always noon of 30 June 2026. */
@TestConfiguration(proxyBeanMethods = false)
public class SetClock {

    public static final Instant NOW = Instant.parse("2026-06-30T12:00:00Z");

    @Bean
    @Primary
    Clock setClock() {
        return Clock.fixed(NOW, ZoneOffset.UTC);
    }
}
