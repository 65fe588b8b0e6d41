/**
 * What people and programs write of jobs, vehicles, faults and repairs: each thing in one record with its limits, which the REST interface
 * reads from JSON and the pages from forms. Open {@link dev.stayfixed.jobs.entry.RepairEntry} first.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.jobs.entry;
