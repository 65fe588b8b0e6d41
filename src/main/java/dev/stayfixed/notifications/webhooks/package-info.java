/**
 * Webhooks: CloudEvents 1.0 in JSON, signed by the Standard Webhooks specification. Open
 * {@link dev.stayfixed.notifications.webhooks.Webhooks} first, then {@code WebhookChannel}. May depend on {@code notifications},
 * {@code notifications.delivery} and {@code platform}.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.notifications.webhooks;
