/**
 * The open jobs by what needs a person. Open {@link dev.stayfixed.worklist.OpenJobs} first. The one reader of other rooms' tables; it
 * keeps what puts the jobs in order. May depend on {@code judging}, {@code jobs}, {@code platform} and the pure packages.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.worklist;
