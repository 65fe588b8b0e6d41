/**
 * Every way to say no: RFC 9457 problems, one documented type each. Open {@link dev.stayfixed.platform.problem.ProblemType} first.
 * May depend on Spring only.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.platform.problem;
