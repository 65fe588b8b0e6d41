/**
 * A drive as a row of samples: which signals there are, how long a value holds, and what happened in the drive. Pure and in constant
 * memory, so that a drive may be of any length. Open {@link dev.stayfixed.drive.signal.SignalFacts} first, then {@link
 * dev.stayfixed.drive.signal.Timeline}. May depend on {@code drive}, {@code obd} and on {@code java.lang} and {@code java.util}.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.drive.signal;
