/**
 * What the driver of a repaired vehicle is given: a secret link to the page of one job, and the drive to make in plain words. Open
 * {@link dev.stayfixed.customer.DriverLinks} first. May depend on {@code jobs}, {@code intake}, {@code platform} and the pure packages.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.customer;
