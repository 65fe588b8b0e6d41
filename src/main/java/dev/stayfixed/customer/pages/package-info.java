/**
 * The driver's page on a phone: opened by a secret link, without an account; works without script and without reception. Open {@link
 * dev.stayfixed.customer.pages.DriverPage} first. A leaf: may know every room, and no room knows it.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.customer.pages;
