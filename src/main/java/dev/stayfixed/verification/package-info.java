/**
 * The decision: for each repaired fault and each drive one outcome with its reason and evidence, and their fold to where the fault
 * stands. Pure. Open {@link dev.stayfixed.verification.TwoTripRule} first, then
 * {@link dev.stayfixed.verification.VerificationState} and {@link dev.stayfixed.verification.Verification}. May depend on
 * {@code drive} and {@code obd}, and on {@code java.lang}, {@code java.util} and {@code java.time}.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.verification;
