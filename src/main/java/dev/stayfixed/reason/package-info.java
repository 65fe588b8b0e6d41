/**
 * What the rules say, as values: a kind and what it speaks of, with no word of any language. Open
 * {@link dev.stayfixed.reason.Reason} first. Pure; knows nothing of the service. {@code wording} puts words and units on.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.reason;
