/**
 * What other programs subscribe to by a secret link. Open {@link dev.stayfixed.telling.feeds.CalendarFeed} first. May depend on
 * {@code telling} and {@code platform}.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.telling.feeds;
