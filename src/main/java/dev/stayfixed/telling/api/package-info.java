/**
 * The REST interface of the inbox, notices, follow-ups and webhooks. Open {@link dev.stayfixed.telling.api.NoticesController} first. A leaf: may know every room, and no room knows it.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.telling.api;
