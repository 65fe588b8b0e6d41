/**
 * Who is told of what. An event is written in the transaction of its cause, with one delivery for each receiver. Open
 * {@link dev.stayfixed.telling.Announcer} first, then {@link dev.stayfixed.telling.Notices} for the settings. May depend on
 * {@code worklist}, {@code jobs}, {@code judging}, {@code platform}, the pure packages and its own subpackages: {@code delivery} gets messages to their
 * receivers, {@code webhooks} and {@code mail} are the ways.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.telling;
