/**
 * The REST interface of verdicts, proofs, conditions, outlooks. Open {@link dev.stayfixed.judging.api.VerdictController} first. A leaf: may know every room, and no room knows it.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.judging.api;
