/**
 * Webhooks: CloudEvents 1.0 in JSON, signed by the Standard Webhooks specification. Open
 * {@link dev.stayfixed.telling.webhooks.Webhooks} first, then {@code WebhookChannel}. May depend on {@code telling},
 * {@code telling.delivery} and {@code platform}.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.telling.webhooks;
