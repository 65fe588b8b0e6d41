/**
 * What every part of the service stands on: the clock, the shop at work, strict JSON. Open {@link dev.stayfixed.platform.CurrentShop} and
 * {@link dev.stayfixed.platform.StrictJson} first; errors are in {@code problem}, durable writes in {@code storage}, checks on every request in {@code http}. May depend on Spring and
 * on its own subpackages, on nothing else of this service.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.platform;
