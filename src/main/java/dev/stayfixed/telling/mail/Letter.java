package dev.stayfixed.telling.mail;

import org.jspecify.annotations.Nullable;

/**
 * A mail as it waits to be sent.
 *
 * @param stop the link that stops the mails; only drivers have one
 */
record Letter(String subject, String text, @Nullable String stop) {}
