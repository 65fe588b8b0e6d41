/**
 * Durable writes: what is acknowledged survives kill -9 and a power cut. Open {@link dev.stayfixed.platform.storage.Durably} first.
 * May depend on Spring and on {@code platform}.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.platform.storage;
