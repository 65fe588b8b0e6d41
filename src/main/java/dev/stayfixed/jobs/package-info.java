/**
 * Vehicles, jobs, faults, repairs and bench measurements, and the close-out. Open {@link dev.stayfixed.jobs.Jobs} first. Facts go in
 * and out as records; the rows behind them stay in this package. May depend on {@code platform} and on the pure packages.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.jobs;
