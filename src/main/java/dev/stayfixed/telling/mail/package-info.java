/**
 * Mail to technicians and drivers, each in their own words, and the link by which it stops. Open
 * {@link dev.stayfixed.telling.mail.MailWording} first, then {@code MailChannel}. May depend on {@code telling},
 * {@code telling.delivery} and {@code platform}.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.telling.mail;
