package dev.stayfixed.reports;

import java.time.Duration;
import org.hibernate.validator.constraints.time.DurationMin;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;
import org.springframework.validation.annotation.Validated;

/**
 * Links to reports.
 *
 * @param lifetime how long a link works
 */
@Validated
@ConfigurationProperties("stayfixed.report-link")
record ReportLinkSettings(
        @DefaultValue("365d") @DurationMin(minutes = 1) Duration lifetime) {}
