/**
 * How long repairs hold, from some that are still being watched. Pure statistics. Open
 * {@link dev.stayfixed.verification.survival.KaplanMeier} first. Depends on java.lang and java.util only.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.verification.survival;
