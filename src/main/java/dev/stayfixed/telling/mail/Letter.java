package dev.stayfixed.telling.mail;

import org.jspecify.annotations.Nullable;

/**
 * A mail as it waits to be sent.
 *
 * @param text to the driver all but its end, which is the link that stops the mails: who reads what waits, or was sent, cannot use it
 * @param stop the address of that link up to the token of the receiver; only drivers have one
 */
record Letter(String subject, String text, @Nullable String stop) {}
