/**
 * The pages of jobs, faults, repairs and vehicles. Open {@link dev.stayfixed.jobs.pages.JobPage} first. A leaf: may know every room, and no room knows it.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.jobs.pages;
