/**
 * What other programs subscribe to by a secret link. Open {@link dev.stayfixed.web.feeds.CalendarFeed} first. May depend on
 * {@code notifications} and {@code platform}.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.web.feeds;
