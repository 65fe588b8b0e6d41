/**
 * What a monitor needs before it runs, or a repair before it counts, and whether a recorded drive met it: by how much it was missed,
 * when it held, and which drive would meet it. Pure. Open {@link dev.stayfixed.drive.condition.Condition} first, then {@link
 * dev.stayfixed.drive.condition.ConditionSet} and {@link dev.stayfixed.drive.condition.NextDrive}. May depend on {@code drive}, {@code
 * drive.signal}, {@code obd} and on {@code java.lang}, {@code java.util} and {@code java.time}.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.drive.condition;
