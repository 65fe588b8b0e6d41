/**
 * The driver's page on a phone: opened by a secret link, without an account; works without script and without reception. Open {@link
 * dev.stayfixed.customer.pages.DriverPage} first. May depend on {@code driver}, {@code reports}, {@code intake}, {@code jobs}, {@code platform} and the
 * pure packages.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.customer.pages;
