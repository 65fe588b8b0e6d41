/**
 * A record of one driving cycle, and what happened in it: driving-cycle facts, warm-up, the minimum-conditions cycle, conditions met
 * and missed. Pure. Open {@link dev.stayfixed.drive.DriveRecord} first, then {@link dev.stayfixed.drive.DriveFacts}. May depend on
 * {@code obd} and on {@code java.lang}, {@code java.util} and {@code java.time}.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.drive;
