package dev.stayfixed.customer;

import jakarta.validation.constraints.Min;
import java.time.Duration;
import org.hibernate.validator.constraints.time.DurationMin;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;
import org.springframework.validation.annotation.Validated;

/**
 * The driver's link.
 *
 * @param lifetime how long a link opens its page
 * @param requestsPerMinute through one link
 */
@Validated
@ConfigurationProperties("stayfixed.driver-link")
public record LinkSettings(
        @DefaultValue("90d") @DurationMin(minutes = 1) Duration lifetime,
        @DefaultValue("60") @Min(1) int requestsPerMinute) {}
