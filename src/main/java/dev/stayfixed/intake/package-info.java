/**
 * Takes drives in: stores the submission first, recognises what it already has, judges every fault of the vehicle by replaying all
 * that is stored, and keeps where each stands. Open {@link dev.stayfixed.intake.Intake} first, then
 * {@link dev.stayfixed.intake.Logs} for recorded drives. May depend on {@code jobs}, {@code recording}, {@code platform} and the pure
 * packages.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.intake;
