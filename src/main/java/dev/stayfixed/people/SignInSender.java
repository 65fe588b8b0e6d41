package dev.stayfixed.people;

import org.springframework.boot.context.properties.ConfigurationProperties;

/**
 * Whom mails come from that let people in.
 *
 * @param from the address that all mails of the service come from
 */
@ConfigurationProperties("stayfixed.mail")
record SignInSender(String from) {}
