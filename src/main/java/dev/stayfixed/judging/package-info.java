/**
 * What follows from all that is stored of a vehicle: verdicts, proofs, what will prove a fault, the next drive, the inspection, from one
 * reading. Open {@link dev.stayfixed.judging.CaseFile} first. May depend on {@code intake}, {@code jobs}, {@code platform} and the pure
 * packages.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.judging;
