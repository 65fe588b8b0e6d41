/**
 * What follows from all that is stored of a vehicle: it is judged anew whenever something comes in ({@link dev.stayfixed.judging.Judging}),
 * and read as a whole by whoever shows it ({@link dev.stayfixed.judging.CaseFile}): verdicts, proofs, what will prove a fault, the next
 * drive, the inspection. May depend on {@code archive}, {@code jobs}, {@code platform} and the pure packages.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.judging;
