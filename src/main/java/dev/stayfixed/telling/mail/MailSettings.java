package dev.stayfixed.telling.mail;

import jakarta.validation.constraints.NotBlank;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.validation.annotation.Validated;

/**
 * The mails of the service.
 *
 * @param from whom they come from
 */
@Validated
@ConfigurationProperties("stayfixed.mail")
record MailSettings(@NotBlank String from) {}
