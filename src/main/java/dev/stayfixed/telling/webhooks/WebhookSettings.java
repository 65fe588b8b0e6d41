package dev.stayfixed.telling.webhooks;

import jakarta.validation.constraints.Min;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;
import org.springframework.validation.annotation.Validated;

/**
 * Where webhooks go, and how long they wait.
 *
 * @param privateTargets whether they may go to private networks, this machine and plain http
 * @param patienceMs ms from the beginning to the end of one post, whatever the receiver does
 */
@Validated
@ConfigurationProperties("stayfixed.webhooks")
record WebhookSettings(
        @DefaultValue("false") boolean privateTargets,
        @DefaultValue("15000") @Min(1) int patienceMs) {}
