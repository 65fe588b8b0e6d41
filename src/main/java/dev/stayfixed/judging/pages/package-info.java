/**
 * The pages of verdicts, proofs, conditions, outlooks. Open {@link dev.stayfixed.judging.pages.ConditionsPage} first. A leaf: may know every room, and no room knows it.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.judging.pages;
