package dev.stayfixed.platform.http;

import jakarta.validation.constraints.Min;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.util.unit.DataSize;
import org.springframework.validation.annotation.Validated;

/**
 * How much the service takes.
 *
 * @param bodyLimit of a JSON body or a form
 * @param logLimit of a recorded log, as sent and unpacked
 * @param keepFree space on the disk below which nothing new is taken
 * @param writesAtOnce requests that write or wait for their turn to
 */
@Validated
@ConfigurationProperties("stayfixed")
public record Limits(
        DataSize bodyLimit,
        DataSize logLimit,
        DataSize keepFree,
        @Min(1) int writesAtOnce) {}
