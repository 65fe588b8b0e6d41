/**
 * Takes drives in: refuses what cannot be one of the vehicle, recognises what is already there, has the submission stored and the
 * vehicle judged, and says what that did. Open {@link dev.stayfixed.intake.Intake} first, then {@link dev.stayfixed.intake.Logs} for
 * recorded drives. May depend on {@code judging}, {@code archive}, {@code jobs}, {@code recording}, {@code platform} and the pure
 * packages.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.intake;
