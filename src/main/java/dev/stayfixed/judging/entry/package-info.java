/**
 * What people and programs write of what judges a fault: each thing in one record with its limits, which the REST interface reads from JSON
 * and the pages from forms. Open {@link dev.stayfixed.judging.entry.ConditionsEntry} first.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.judging.entry;
