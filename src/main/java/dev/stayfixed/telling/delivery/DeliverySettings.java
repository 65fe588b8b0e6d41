package dev.stayfixed.telling.delivery;

import java.time.Duration;
import org.hibernate.validator.constraints.time.DurationMin;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;
import org.springframework.validation.annotation.Validated;

/**
 * How instances share the work.
 *
 * @param heartbeat an instance counts as dead when four of them are missing
 */
@Validated
@ConfigurationProperties("stayfixed")
record DeliverySettings(
        @DefaultValue("15s") @DurationMin(millis = 100) Duration heartbeat) {}
